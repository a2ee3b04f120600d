using ServiceRunner.Core.Procedures;
using ServiceRunner.Core.Quantities;
using ServiceRunner.Files.Checks.Reading;
using ServiceRunner.Files.Yaml;

namespace ServiceRunner.Files.Procedures;

/// <summary>Reads the facets of hand work: confirming, power, brushing, pegging, coating.</summary>
internal static class WorkReader
{
    public static ConfirmFacet? Confirm(ValueReader values, YEntry entry)
    {
        if (entry.Value is not YMap map) return values.Text(entry) is { Length: > 0 } question ? new ConfirmFacet(question, []) : null;
        string ask = "";
        IReadOnlyList<string> choices = [];
        foreach (YEntry inner in map.Entries)
        {
            switch (inner.Key.Value)
            {
                case "ask": ask = values.Text(inner); break;
                case "choices":
                    choices = [.. values.Texts(inner).Select(c => c.Value)];
                    if (ConfirmYes.IsYesOrNo(choices)) values.Add(ConfirmYes.Of(values.File, inner.Value.At));
                    break;
                default: values.Unknown(inner, "'confirm'", ["ask", "choices"]); break;
            }
        }
        if (map["ask"] is null) values.Missing(map.At, "ask", "'confirm'");
        return new ConfirmFacet(ask, choices);
    }

    public static PowerFacet? Power(ValueReader values, YEntry entry)
    {
        if (entry.Value is YMap map)
        {
            foreach (YEntry inner in map.Entries)
            {
                if (inner.Key.Value != "set-up") values.Unknown(inner, "'power'", ["set-up"]);
                else if (values.Quantity(inner, "1.5 turns", "turns", "turn") is { } turns) return new PowerFacet.SetUp(turns);
            }
            if (map["set-up"] is null) values.Missing(map.At, "set-up", "'power'");
            return null;
        }
        return values.Word(entry, ["off", "on"])?.Value switch
        {
            "off" => new PowerFacet.LetsDown(),
            "on" => new PowerFacet.Winds(),
            _ => null,
        };
    }

    public static BrushFacet? Brush(ValueReader values, YEntry entry) =>
        PartsWith(values, entry) is var (parts, with) ? new BrushFacet(parts, with) : null;

    public static CoatFacet? Coat(ValueReader values, YEntry entry) =>
        PartsWith(values, entry) is var (parts, with) ? new CoatFacet(parts, with) : null;

    public static PegFacet Peg(ValueReader values, YEntry entry)
    {
        if (entry.Value is not YMap map) return new PegFacet([.. values.Texts(entry).Select(p => p.Value)], "");
        IReadOnlyList<string> places = [];
        string with = "";
        foreach (YEntry inner in map.Entries)
        {
            switch (inner.Key.Value)
            {
                case "places": places = [.. values.Texts(inner).Select(p => p.Value)]; break;
                case "with": with = values.Text(inner); break;
                default: values.Unknown(inner, "'peg'", ["places", "with"]); break;
            }
        }
        if (map["places"] is null) values.Missing(map.At, "places", "'peg'");
        return new PegFacet(places, with);
    }

    private static (List<Placed<string>> Parts, string With)? PartsWith(ValueReader values, YEntry entry)
    {
        if (values.Map(entry.Value, entry.Key.Value) is not { } map) return null;
        List<Placed<string>> parts = [];
        string with = "";
        foreach (YEntry inner in map.Entries)
        {
            switch (inner.Key.Value)
            {
                case "parts": parts = values.Texts(inner); break;
                case "with": with = values.Text(inner); break;
                default: values.Unknown(inner, $"'{entry.Key.Value}'", ["parts", "with"]); break;
            }
        }
        if (map["parts"] is null) values.Missing(map.At, "parts", $"'{entry.Key.Value}'");
        return (parts, with);
    }
}
