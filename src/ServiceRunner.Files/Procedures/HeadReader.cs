using ServiceRunner.Core.Procedures;
using ServiceRunner.Core.Quantities;
using ServiceRunner.Files.Checks;
using ServiceRunner.Files.Checks.Reading;
using ServiceRunner.Files.Yaml;

namespace ServiceRunner.Files.Procedures;

/// <summary>Reads the keys at the top of a procedure file and hands each list to its own reader.</summary>
internal static class HeadReader
{
    private static readonly string[] Keys =
        ["procedure", "format", "title", "revision", "covers", "sources", "notes", "asks", "parts", "groups", "wants-groups", "mends", "sheet", "oiling-points", "map", "stages"];

    private static readonly string[] Needed = ["procedure", "format", "title", "revision", "stages"];

    public static ProcedureFile Read(string file, YMap root, List<Diagnostic> found)
    {
        ValueReader values = new(file, found);
        ProcedureFile read = new() { File = file };
        foreach (YEntry entry in root.Entries) Read(values, entry, read);
        foreach (string key in Needed)
        {
            if (root[key] is null) values.Missing(root.At, key, "a procedure", key == "format" ? "This version writes format: 1." : "");
        }
        return read;
    }

    private static void Read(ValueReader values, YEntry entry, ProcedureFile read)
    {
        switch (entry.Key.Value)
        {
            case "procedure": read.Id = values.Name(entry) ?? default; break;
            case "format": Format(values, entry); break;
            case "title": read.Title = values.Text(entry); break;
            case "revision": read.Revision = values.Text(entry); break;
            case "covers": read.Covers = values.Text(entry); break;
            case "sources": read.Sources = [.. values.Texts(entry).Select(t => t.Value)]; break;
            case "notes": values.Text(entry); break;
            case "asks": Asks(values, entry, read.Asks); break;
            case "parts": PartReader.Read(values, entry, read.Parts); break;
            case "groups": Groups(values, entry, read.Groups); break;
            case "wants-groups": read.WantsGroups = values.Texts(entry); break;
            case "mends": read.Mends = values.PlacedText(entry); break;
            case "sheet": read.Sheet = SheetReader.Read(values, entry); break;
            case "oiling-points": PointReader.Read(values, entry, read.Points); break;
            case "map": read.Map = Map(values, entry); break;
            case "stages": StageReader.Read(values, entry, read.Stages); break;
            default: values.Unknown(entry, "a procedure", Keys); break;
        }
    }

    internal static void Format(ValueReader values, YEntry entry)
    {
        if (values.Single(entry) is { } text && text.Value != "1") values.Add(UnknownFormat.Of(values.File, text.At, text.Value));
    }

    internal static void Groups(ValueReader values, YEntry entry, List<PartGroup> groups)
    {
        if (values.Map(entry.Value, entry.Key.Value) is not { } map) return;
        foreach (YEntry group in map.Entries)
            groups.Add(new PartGroup(values.Name(group.Key, entry.Key.Value), values.Texts(group)));
    }

    private static MapSize? Map(ValueReader values, YEntry entry)
    {
        if (values.Map(entry.Value, "map") is not { } map) return null;
        decimal? width = null, height = null;
        foreach (YEntry side in map.Entries)
        {
            switch (side.Key.Value)
            {
                case "width": width = Side(values, side); break;
                case "height": height = Side(values, side); break;
                default: values.Unknown(side, "'map'", ["width", "height"]); break;
            }
        }
        if (map["width"] is null) values.Missing(map.At, "width", "'map'");
        if (map["height"] is null) values.Missing(map.At, "height", "'map'");
        return width is { } w && height is { } h ? new MapSize(w, h) : null;
    }

    private static decimal? Side(ValueReader values, YEntry entry)
    {
        if (values.Number(entry) is not { } side) return null;
        if (side is > 0 and <= 10_000) return side;
        values.Add(NotANumber.Range(values.File, entry.Value.At, entry.Key.Value, ((YText)entry.Value).Value, "more than 0 and at most 10000 mm"));
        return null;
    }

    private static void Asks(ValueReader values, YEntry entry, List<JobQuestion> asks)
    {
        if (values.Map(entry.Value, "asks") is not { } map) return;
        foreach (YEntry fact in map.Entries)
        {
            Placed<string> name = values.Name(fact.Key, "asks");
            asks.Add(fact.Value is YMap described ? Question(values, name, described) : new JobQuestion(name, values.Text(fact), ["yes", "no"]));
        }
    }

    private static JobQuestion Question(ValueReader values, Placed<string> name, YMap map)
    {
        string ask = "";
        IReadOnlyList<string> answers = ["yes", "no"];
        foreach (YEntry entry in map.Entries)
        {
            switch (entry.Key.Value)
            {
                case "ask": ask = values.Text(entry); break;
                case "answers": answers = [.. values.Texts(entry).Select(t => t.Value).Distinct()]; break;
                default: values.Unknown(entry, "a question", ["ask", "answers"]); break;
            }
        }
        if (map["ask"] is null) values.Missing(map.At, "ask", "a question");
        return new JobQuestion(name, ask, answers);
    }
}
