using ServiceRunner.Core.Quantities;
using ServiceRunner.Files.Checks;
using ServiceRunner.Files.Checks.Reading;
using ServiceRunner.Files.Yaml;

namespace ServiceRunner.Files.Procedures;

/// <summary>What a file is, by its keys at the top.</summary>
internal enum FileKind
{
    Procedure,
    Workshop,
    Both,
    Neither,
    NotKeys,
}

/// <summary>A file whose text, nodes and procedure are read when they are first asked for, and once.</summary>
internal sealed class LoadedFile(string name, string shownAs, Func<List<Diagnostic>, string?> open)
{
    private readonly Lock _reading = new();
    private readonly List<Diagnostic> _found = [];
    private bool _opened, _parsed, _read;
    private string? _text;
    private YNode? _root;
    private FileKind? _kind;
    private ProcedureFile? _procedure;
    private SourceText? _source;

    public static LoadedFile OfText(string name, string shownAs, string text) =>
        new(name, shownAs, found => TooLong(shownAs, text, found) ? null : text);

    public static LoadedFile OfPath(string path, string shownAs) => new(Path.GetFileName(path), shownAs, found => TextFile.Read(path, shownAs, found));

    public string Name => name;

    public string ShownAs => shownAs;

    public string? Text
    {
        get
        {
            lock (_reading)
            {
                if (!_opened) _text = open(_found);
                _opened = true;
                return _text;
            }
        }
    }

    public SourceText? Source
    {
        get
        {
            lock (_reading) return Text is null ? null : _source ??= SourceText.Of(name, Text);
        }
    }

    /// <summary>What the file is, by its keys at the top; null if its text cannot be read.</summary>
    public FileKind? Kind
    {
        get
        {
            lock (_reading)
            {
                if (_parsed) return _kind;
                _parsed = true;
                if (Text is not { } text || YamlReader.Read(shownAs, text, _found) is not { } root) return null;
                _root = root;
                return _kind = KindOf(root);
            }
        }
    }

    /// <summary>Where the text begins.</summary>
    public Place Begin { get; private set; }

    /// <summary>
    /// The nodes, for the one reader that makes something of them. They are let go then: a thousand files' nodes kept
    /// alive cost more time than reading them.
    /// </summary>
    public YMap? TakeRoot()
    {
        lock (_reading)
        {
            if (Kind is null) return null;
            YNode? root = _root;
            _root = null;
            if (root is YMap map) return map;
            if (root is not null) _found.Add(NeitherKind.NotKeys(shownAs, root.At, root.Kind));
            return null;
        }
    }

    /// <summary>The file read as a procedure, or null if it cannot be one.</summary>
    public ProcedureFile? Procedure
    {
        get
        {
            lock (_reading)
            {
                if (_read) return _procedure;
                _read = true;
                return _procedure = TakeRoot() is { } map ? HeadReader.Read(shownAs, map, _found) : null;
            }
        }
    }

    /// <summary>What was found on the way so far.</summary>
    public IReadOnlyList<Diagnostic> Found => _found;

    /// <summary>The id under the key at the top, found without reading the rest; null if there is none.</summary>
    public string? DeclaredId
    {
        get
        {
            const string key = "procedure:";
            foreach (ReadOnlySpan<char> line in Text.AsSpan().EnumerateLines())
            {
                if (!line.StartsWith(key, StringComparison.Ordinal)) continue;
                ReadOnlySpan<char> value = line[key.Length..];
                int comment = value.IndexOf(" #", StringComparison.Ordinal);
                if (comment >= 0) value = value[..comment];
                return value.Trim().Trim("'\"").ToString();
            }
            return null;
        }
    }

    private FileKind KindOf(YNode root)
    {
        Begin = root.At;
        if (root is not YMap map) return FileKind.NotKeys;
        bool procedure = map["procedure"] is not null, workshop = map["workshop"] is not null;
        return procedure && workshop ? FileKind.Both : procedure ? FileKind.Procedure : workshop ? FileKind.Workshop : FileKind.Neither;
    }

    // A text given in memory is bounded like a file.
    private static bool TooLong(string shownAs, string text, List<Diagnostic> found)
    {
        if (text.Length <= TextFile.MostBytes) return false;
        found.Add(FileTooBig.Of(shownAs, text.Length));
        return true;
    }
}
