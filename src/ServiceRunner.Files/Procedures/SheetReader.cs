using ServiceRunner.Core.Procedures;
using ServiceRunner.Core.Quantities;
using ServiceRunner.Files.Yaml;

namespace ServiceRunner.Files.Procedures;

/// <summary>Reads the sheet of a part to be made.</summary>
internal static class SheetReader
{
    private static readonly string[] Keys = ["title", "part", "lines"];
    private static readonly string[] LineKeys = ["line", "from", "less"];

    public static PartSheet? Read(ValueReader values, YEntry entry)
    {
        if (values.Map(entry.Value, "sheet") is not { } map) return null;
        string title = "";
        Placed<string>? part = null;
        List<PartSheetLine> lines = [];
        foreach (YEntry inner in map.Entries)
        {
            switch (inner.Key.Value)
            {
                case "title": title = values.Text(inner); break;
                case "part": part = values.PlacedText(inner); break;
                case "lines": Lines(values, inner, lines); break;
                default: values.Unknown(inner, "'sheet'", Keys); break;
            }
        }
        if (map["title"] is null) values.Missing(map.At, "title", "'sheet'");
        if (map["lines"] is null) values.Missing(map.At, "lines", "'sheet'");
        return title.Length > 0 && lines.Count > 0 ? new PartSheet(title, part, lines) : null;
    }

    private static void Lines(ValueReader values, YEntry entry, List<PartSheetLine> lines)
    {
        foreach (YNode item in values.Items(entry))
        {
            if (values.Map(item, "lines") is { } map && Line(values, map) is { } line) lines.Add(line);
        }
    }

    private static PartSheetLine? Line(ValueReader values, YMap map)
    {
        string name = "";
        Placed<string>? from = null, less = null;
        foreach (YEntry entry in map.Entries)
        {
            switch (entry.Key.Value)
            {
                case "line": name = values.Text(entry); break;
                case "from": from = values.PlacedText(entry); break;
                case "less": less = values.PlacedText(entry); break;
                default: values.Unknown(entry, "a line of 'sheet'", LineKeys); break;
            }
        }
        if (map["line"] is null) values.Missing(map.At, "line", "a line of 'sheet'");
        if (map["from"] is null) values.Missing(map.At, "from", "a line of 'sheet'", "It names the 'what' of a measure.");
        return name.Length > 0 && from is { } known ? new PartSheetLine(name, known, less) : null;
    }
}
