using ServiceRunner.Core.Procedures;
using ServiceRunner.Core.Quantities;
using ServiceRunner.Files.Yaml;

namespace ServiceRunner.Files.Procedures;

/// <summary>Reads what is measured, counted and timed.</summary>
internal static class MeasureReader
{
    private static readonly string[] MeasureKeys = ["what", "unit", "between", "at-least", "at-most", "or-felt"];
    private static readonly string[] CountKeys = ["what", "unit", "is", "between"];
    private static readonly string[] RatesKeys = ["positions", "settle", "after-hours", "lift-angle", "accept"];
    private static readonly string[] AcceptKeys = ["mean", "greatest-difference", "amplitude"];

    public static List<MeasureFacet> Measure(ValueReader values, YEntry entry)
    {
        List<MeasureFacet> measured = [];
        foreach (YNode item in values.Items(entry))
        {
            if (values.Map(item, "measure") is { } map) measured.Add(One(values, map));
        }
        return measured;
    }

    private static MeasureFacet One(ValueReader values, YMap map)
    {
        MeasureFacet facet = new(new Placed<string>("", map.At), "", null, null, []);
        foreach (YEntry entry in map.Entries)
        {
            switch (entry.Key.Value)
            {
                case "what": facet = facet with { What = values.PlacedText(entry) ?? facet.What }; break;
                case "unit": facet = facet with { Unit = values.Text(entry) }; break;
                case "between" when values.Limits(entry) is var (low, high): facet = facet with { AtLeast = low, AtMost = high }; break;
                case "between": break;
                case "at-least": facet = facet with { AtLeast = values.Number(entry) }; break;
                case "at-most": facet = facet with { AtMost = values.Number(entry) }; break;
                case "or-felt": facet = facet with { OrFelt = [.. values.Texts(entry).Select(f => f.Value)] }; break;
                default: values.Unknown(entry, "'measure'", MeasureKeys); break;
            }
        }
        if (map["what"] is null) values.Missing(map.At, "what", "'measure'");
        bool limited = map["between"] is not null || map["at-least"] is not null || map["at-most"] is not null;
        if (map["unit"] is null && (limited || map["or-felt"] is null)) values.Missing(map.At, "unit", "'measure'");
        if (map["at-least"] is not null && facet.AtLeast > facet.AtMost) values.Add(Checks.Reading.WindowOrder.Limits(values.File, map["at-least"]!.At, "measure"));
        return facet;
    }

    public static CountFacet? Count(ValueReader values, YEntry entry)
    {
        if (values.Map(entry.Value, "count") is not { } map) return null;
        CountFacet facet = new(new Placed<string>("", map.At), "", null, null);
        foreach (YEntry inner in map.Entries)
        {
            switch (inner.Key.Value)
            {
                case "what": facet = facet with { What = values.PlacedText(inner) ?? facet.What }; break;
                case "unit": facet = facet with { Unit = values.Text(inner) }; break;
                case "is" when values.Number(inner) is { } number: facet = facet with { AtLeast = number, AtMost = number }; break;
                case "is": break;
                case "between" when values.Limits(inner) is var (low, high): facet = facet with { AtLeast = low, AtMost = high }; break;
                case "between": break;
                default: values.Unknown(inner, "'count'", CountKeys); break;
            }
        }
        if (map["what"] is null) values.Missing(map.At, "what", "'count'");
        return facet;
    }

    public static RatesFacet? Rates(ValueReader values, YEntry entry)
    {
        if (values.Map(entry.Value, "rates") is not { } map) return null;
        RatesFacet facet = new() { Positions = [] };
        foreach (YEntry inner in map.Entries)
        {
            switch (inner.Key.Value)
            {
                case "positions": facet = facet with { Positions = values.WordsOf(inner, Vocabulary.Positions) }; break;
                case "settle": facet = facet with { Settle = values.Duration(inner) }; break;
                case "after-hours": facet = facet with { AfterHours = values.Numbers(inner, 0, "") ?? [] }; break;
                case "lift-angle": facet = facet with { LiftAngle = values.Number(inner) }; break;
                case "accept": facet = Accept(values, inner, facet); break;
                default: values.Unknown(inner, "'rates'", RatesKeys); break;
            }
        }
        if (map["positions"] is null) values.Missing(map.At, "positions", "'rates'");
        return facet;
    }

    private static RatesFacet Accept(ValueReader values, YEntry entry, RatesFacet facet)
    {
        if (values.Map(entry.Value, "accept") is not { } map) return facet;
        foreach (YEntry inner in map.Entries)
        {
            switch (inner.Key.Value)
            {
                case "mean": facet = facet with { Mean = values.Limits(inner) }; break;
                case "greatest-difference": facet = facet with { GreatestDifference = values.Number(inner) }; break;
                case "amplitude": facet = facet with { Amplitude = values.Limits(inner) }; break;
                default: values.Unknown(inner, "'accept'", AcceptKeys); break;
            }
        }
        return facet;
    }
}
