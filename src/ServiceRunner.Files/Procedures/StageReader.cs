using ServiceRunner.Core.Procedures;
using ServiceRunner.Core.Quantities;
using ServiceRunner.Files.Checks;
using ServiceRunner.Files.Yaml;
using ServiceRunner.Files.Sentences;

namespace ServiceRunner.Files.Procedures;

/// <summary>Reads the stages and what stands in their lists: steps, and files to take in.</summary>
internal static class StageReader
{
    private static readonly string[] Keys = ["stage", "title", "opens-after", "steps"];
    private static readonly string[] TakeInKeys = ["take-in", "as", "with", "only-if", "after"];

    public static void Read(ValueReader values, YEntry entry, List<FileStage> stages)
    {
        foreach (YNode item in values.Items(entry))
        {
            if (values.Map(item, "stages") is { } map) stages.Add(One(values, map));
        }
    }

    private static FileStage One(ValueReader values, YMap map)
    {
        Placed<string> id = new("", map.At);
        string title = "";
        IReadOnlyList<Placed<string>> opensAfter = [];
        List<FileItem> items = [];
        foreach (YEntry entry in map.Entries)
        {
            switch (entry.Key.Value)
            {
                case "stage": id = values.Name(entry) ?? id; break;
                case "title": title = values.Text(entry); break;
                case "opens-after": opensAfter = values.Texts(entry); break;
                case "steps": Items(values, entry, items); break;
                default: values.Unknown(entry, "a stage", Keys); break;
            }
        }
        if (map["stage"] is null) values.Missing(map.At, "stage", "a stage");
        if (map["steps"] is null) values.Missing(map.At, "steps", "a stage");
        if (title.Length == 0) title = Title(values, map, id);
        return new FileStage(id, title, opensAfter, items);
    }

    // A stage that everybody knows needs no title; one of the procedure's own does.
    private static string Title(ValueReader values, YMap map, Placed<string> id)
    {
        if (id.Value.Length == 0) return "";
        if (map["title"] is null && !Vocabulary.Stages.Contains(id.Value))
        {
            string near = Words.Nearest(id.Value, Vocabulary.Stages) is { } known ? $" Did you mean '{known}'?" : "";
            values.Missing(id.At, "title", "a stage of your own", $"The stages known by name are {Words.And(Vocabulary.Stages)}.{near}");
        }
        return AskWords.Spoken(id.Value);
    }

    private static void Items(ValueReader values, YEntry entry, List<FileItem> items)
    {
        foreach (YNode item in values.Items(entry))
        {
            if (values.Map(item, "steps") is not { } map) continue;
            if (map["take-in"] is null) items.Add(new FileItem.Written(StepReader.Read(values, map)));
            else if (TakeIn(values, map) is { } taken) items.Add(taken);
        }
    }

    private static FileItem.TakenIn? TakeIn(ValueReader values, YMap map)
    {
        Placed<string>? id = null, alias = null;
        List<PartGroup> with = [];
        IReadOnlyList<Placed<string>> after = [];
        IReadOnlyList<Condition> onlyIf = [];
        foreach (YEntry entry in map.Entries)
        {
            switch (entry.Key.Value)
            {
                case "take-in": id = values.Name(entry); break;
                case "as": alias = values.Name(entry); break;
                case "with": HeadReader.Groups(values, entry, with); break;
                case "after": after = values.Texts(entry); break;
                case "only-if": onlyIf = FindingReader.OnlyIf(values, entry); break;
                default: values.Unknown(entry, "a file to take in", TakeInKeys); break;
            }
        }
        return id is { } known ? new FileItem.TakenIn(known, alias ?? known, with, after, onlyIf) : null;
    }
}
