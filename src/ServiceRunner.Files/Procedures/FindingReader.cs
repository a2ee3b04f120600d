using ServiceRunner.Core.Procedures;
using ServiceRunner.Core.Quantities;
using ServiceRunner.Files.Checks.Reading;
using ServiceRunner.Files.Yaml;

namespace ServiceRunner.Files.Procedures;

/// <summary>Reads what is looked at, what a finding brings in, and on which facts of the job a step depends.</summary>
internal static class FindingReader
{
    private static readonly string[] ExamineKeys = ["place", "for", "part"];

    public static List<ExamineFacet> Examine(ValueReader values, YEntry entry)
    {
        List<ExamineFacet> examined = [];
        foreach (YNode item in values.Items(entry))
        {
            if (values.Map(item, "examine") is { } map && Place(values, map) is { } place) examined.Add(place);
        }
        return examined;
    }

    private static ExamineFacet? Place(ValueReader values, YMap map)
    {
        Placed<string>? spot = null, part = null;
        List<Placed<string>> choices = [];
        foreach (YEntry entry in map.Entries)
        {
            switch (entry.Key.Value)
            {
                case "place": spot = values.PlacedText(entry); break;
                case "for": choices = values.Texts(entry); break;
                case "part": part = values.PlacedText(entry); break;
                default: values.Unknown(entry, "'examine'", ExamineKeys); break;
            }
        }
        if (map["place"] is null) values.Missing(map.At, "place", "'examine'");
        if (map["for"] is null) values.Missing(map.At, "for", "'examine'", "The first choice is what one hopes for: for: [sound, worn].");
        return spot is { } known && choices.Count > 0 ? new ExamineFacet(known, choices, part) : null;
    }

    public static List<IfFound> IfFound(ValueReader values, YEntry entry, Step step)
    {
        List<IfFound> found = [];
        if (values.Map(entry.Value, "if-found") is not { } map) return found;
        HashSet<string> choices = [.. step.Examine.SelectMany(e => e.Choices).Select(c => c.Value), .. step.Measure.SelectMany(m => m.OrFelt)];
        HashSet<string> spots = [.. step.Examine.Select(e => e.Spot.Value), .. step.Measure.Select(m => m.What.Value)];
        foreach (YEntry inner in map.Entries)
        {
            if (values.Name(inner) is not { } procedure) continue;
            (string spot, string choice) = Parted(inner.Key.Value, spots, choices);
            found.Add(new IfFound(spot, new Placed<string>(choice, inner.Key.At), procedure));
        }
        return found;
    }

    // balance-pivots.broken names a place and what is seen there; a place or a choice may itself have a point in it.
    private static (string Spot, string Choice) Parted(string key, HashSet<string> spots, HashSet<string> choices)
    {
        if (choices.Contains(key)) return ("", key);
        int first = key.IndexOf('.', StringComparison.Ordinal);
        for (int point = first; point >= 0; point = key.IndexOf('.', point + 1))
        {
            if (spots.Contains(key[..point])) return (key[..point], key[(point + 1)..]);
        }
        return first < 0 ? ("", key) : (key[..first], key[(first + 1)..]);
    }

    public static List<Condition> OnlyIf(ValueReader values, YEntry entry)
    {
        List<Condition> conditions = [];
        foreach (YNode item in entry.Value is YList list ? list.Items : [entry.Value])
        {
            if (item is YMap map)
            {
                foreach (YEntry fact in map.Entries)
                    conditions.Add(new Condition(new Placed<string>(fact.Key.Value, fact.Key.At), [.. values.Texts(fact).Select(a => a.Value)]));
            }
            else if (values.Single(item, "only-if", "a fact, or facts with their answers") is { } text)
            {
                conditions.Add(new Condition(new Placed<string>(text.Value, text.At), ["yes"]));
            }
        }
        return conditions;
    }
}
