namespace ServiceRunner.Files.Procedures;

/// <summary>
/// A place where procedures are found: a folder, or texts in memory. Each file is read once; make a new source to see
/// what was changed on the disk.
/// </summary>
public sealed class ProcedureSource
{
    private readonly Lock _loading = new();
    private readonly Func<List<LoadedFile>> _load;
    private List<LoadedFile>? _files;
    private Dictionary<string, LoadedFile>? _byId, _byShown;

    private ProcedureSource(string label, Func<List<LoadedFile>> load) => (Label, _load) = (label, load);

    /// <summary>What the place is called: <c>own</c>, <c>shipped</c>, <c>beside</c>, <c>pinned</c>.</summary>
    public string Label { get; }

    /// <summary>The YAML files of a folder, not of folders in it. A missing folder is an empty one.</summary>
    public static ProcedureSource Folder(string path, string label = "own") =>
        new(label, () => [.. FilesOf(path).Select(f => LoadedFile.OfPath(f, f))]);

    /// <summary>Texts with their names.</summary>
    public static ProcedureSource Texts(IEnumerable<(string Name, string Text)> texts, string label = "shipped") =>
        new(label, () => [.. texts.Select(t => LoadedFile.OfText(t.Name, t.Name, t.Text))]);

    /// <summary>The texts that a job has pinned.</summary>
    public static ProcedureSource Pinned(IEnumerable<SourceText> texts) => Texts(texts.Select(t => (t.Name, t.Text)), "pinned");

    internal IReadOnlyList<LoadedFile> Files
    {
        get
        {
            lock (_loading) return _files ??= _load();
        }
    }

    internal LoadedFile? At(string shownAs)
    {
        lock (_loading)
        {
            if (_byShown is null)
            {
                _byShown = new Dictionary<string, LoadedFile>(StringComparer.Ordinal);
                foreach (LoadedFile file in Files) _byShown.TryAdd(file.ShownAs, file);
            }
            return _byShown.GetValueOrDefault(shownAs);
        }
    }

    internal LoadedFile? Find(string id)
    {
        lock (_loading)
        {
            // Two files of one id in one place: the first by name counts; the check names the other.
            if (_byId is null)
            {
                _byId = new Dictionary<string, LoadedFile>(StringComparer.Ordinal);
                foreach (LoadedFile file in Files)
                {
                    if (file.DeclaredId is { } declared) _byId.TryAdd(declared, file);
                }
            }
            return _byId.GetValueOrDefault(id);
        }
    }

    internal IEnumerable<string> Ids
    {
        get
        {
            Find("");
            return _byId!.Keys;
        }
    }

    internal static IEnumerable<string> FilesOf(string folder, bool inFoldersToo = false)
    {
        if (!Directory.Exists(folder)) return [];
        EnumerationOptions options = new() { RecurseSubdirectories = inFoldersToo, IgnoreInaccessible = true, MaxRecursionDepth = 32 };
        return Directory.EnumerateFiles(folder, "*", options)
            .Where(f => f.EndsWith(".yaml", StringComparison.OrdinalIgnoreCase) || f.EndsWith(".yml", StringComparison.OrdinalIgnoreCase))
            .Order(StringComparer.Ordinal);
    }
}
