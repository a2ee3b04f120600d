using ServiceRunner.Core.Quantities;
using ServiceRunner.Files.Checks;
using ServiceRunner.Files.Checks.Reading;
using YamlDotNet.Core;
using YamlDotNet.Core.Events;

namespace ServiceRunner.Files.Yaml;

/// <summary>
/// Reads one plain document from the parser's events. No types are guessed, no tags obeyed, no anchors followed, and
/// depth and number of values are bounded, so that no text can make it run long or deep.
/// </summary>
public static class YamlReader
{
    /// <summary>How deep values may be nested.</summary>
    public const int MostDepth = 32;

    /// <summary>How many values a file may hold.</summary>
    public const int MostValues = 200_000;

    /// <summary>The document's root, or null if it cannot be read; what is wrong is added to <paramref name="found"/>.</summary>
    public static YNode? Read(string file, string text, List<Diagnostic> found)
    {
        if (text.Length > 0 && text[0] == '\uFEFF') text = text[1..];
        Document document = new(file, new Parser(new Scanner(new StringReader(text), skipComments: true)), found);
        try
        {
            return document.Read();
        }
        catch (Stop)
        {
            return null;
        }
        catch (YamlException e)
        {
            found.Add(YamlSyntax.From(file, text, At(e.Start), e.InnerException?.Message ?? e.Message, document.Opened));
            return null;
        }
        // The parser was written for well-meant text: on some damage it throws whatever comes (an unclosed bracket
        // before a key gives InvalidOperationException). Any of these means that the text cannot be read.
        catch (Exception e) when (e is not OutOfMemoryException)
        {
            found.Add(YamlSyntax.From(file, text, document.Last, "", document.Opened));
            return null;
        }
    }

    private static Place At(Mark mark) => new((int)Math.Min(int.MaxValue, mark.Line), (int)Math.Min(int.MaxValue, mark.Column));

    // The document is refused and what is wrong has been said.
    private sealed class Stop : Exception;

    private sealed class Document(string file, Parser parser, List<Diagnostic> found)
    {
        private readonly Stack<Place> _opened = new();
        private int _values;

        public Place Last { get; private set; } = new(1, 1);

        // The innermost flow list or map that was not closed when reading stopped.
        public Place? Opened => _opened.Count > 0 ? _opened.Peek() : null;

        public YNode? Read()
        {
            parser.Consume<StreamStart>();
            if (!parser.TryConsume<DocumentStart>(out _))
            {
                found.Add(EmptyFile.Of(file));
                return null;
            }
            YNode root = Node(1);
            parser.Consume<DocumentEnd>();
            if (!parser.TryConsume<StreamEnd>(out _))
                found.Add(YamlFeature.SecondDocument(file, At(parser.Current!.Start)));
            if (root is not YText { IsNothing: true }) return root;
            found.Add(EmptyFile.Of(file));
            return null;
        }

        private YNode Node(int depth)
        {
            ParsingEvent next = parser.Current!;
            Place at = Last = At(next.Start);
            if (++_values > MostValues) throw Refused(TooMuch.Values(file, at));
            if (depth > MostDepth) throw Refused(TooMuch.Depth(file, at));
            if (next is AnchorAlias) throw Refused(YamlFeature.Alias(file, at));
            if (next is NodeEvent { Anchor.IsEmpty: false }) throw Refused(YamlFeature.Anchor(file, at));
            if (next is NodeEvent { Tag: { IsEmpty: false, IsNonSpecific: false } }) found.Add(YamlFeature.Tag(file, at));
            return next switch
            {
                Scalar scalar => Text(scalar, at),
                SequenceStart start => List(start, at, depth),
                MappingStart start => Map(start, at, depth),
                _ => throw new InvalidOperationException(),
            };
        }

        private YText Text(Scalar scalar, Place at)
        {
            parser.MoveNext();
            if (ControlCharacter.In(scalar.Value) is { } control) found.Add(ControlCharacter.Of(file, at, control));
            return new YText(at, scalar.Value, scalar.Style is not (ScalarStyle.Plain or ScalarStyle.Any));
        }

        private YList List(SequenceStart start, Place at, int depth)
        {
            bool flow = start.Style == SequenceStyle.Flow;
            if (flow) _opened.Push(at);
            parser.MoveNext();
            List<YNode> items = [];
            while (parser.Current is not SequenceEnd) items.Add(Node(depth + 1));
            parser.MoveNext();
            if (flow) _opened.Pop();
            return new YList(at, items);
        }

        private YMap Map(MappingStart start, Place at, int depth)
        {
            bool flow = start.Style == MappingStyle.Flow;
            if (flow) _opened.Push(at);
            parser.MoveNext();
            List<YEntry> entries = [];
            Dictionary<string, Place>? seen = null;
            while (parser.Current is not MappingEnd)
            {
                if (Node(depth + 1) is not YText key) throw Refused(YamlFeature.KeyNotText(file, Last));
                YNode value = Node(depth + 1);
                if (FirstOf(key, entries, ref seen) is { } first) found.Add(DuplicateKey.Of(file, key.At, key.Value, first));
                else entries.Add(new YEntry(key, value));
            }
            parser.MoveNext();
            if (flow) _opened.Pop();
            return new YMap(at, entries);
        }

        // Most maps have a handful of keys, where looking is faster than hashing; a hostile one may have thousands.
        private static Place? FirstOf(YText key, List<YEntry> entries, ref Dictionary<string, Place>? seen)
        {
            if (seen is null && entries.Count < 12)
            {
                foreach (YEntry entry in entries)
                {
                    if (entry.Key.Value == key.Value) return entry.Key.At;
                }
                return null;
            }
            seen ??= entries.ToDictionary(e => e.Key.Value, e => e.Key.At, StringComparer.Ordinal);
            return seen.TryAdd(key.Value, key.At) ? null : seen[key.Value];
        }

        private Stop Refused(Diagnostic diagnostic)
        {
            found.Add(diagnostic);
            return new Stop();
        }
    }
}
