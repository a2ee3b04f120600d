using ServiceRunner.Core.Quantities;
using ServiceRunner.Core.Workshops;
using ServiceRunner.Files.Checks.Reading;
using ServiceRunner.Files.Yaml;

namespace ServiceRunner.Files.Workshops;

/// <summary>Reads liquids, the jars that hold them and the machines that the jars belong to.</summary>
internal static class LiquidReader
{
    private static readonly string[] LiquidKeys = ["liquid", "name", "solution", "contains", "hazards", "flammable", "water"];
    private static readonly string[] JarKeys = ["jar", "name", "holds", "volume", "opening", "life"];
    private static readonly string[] MachineKeys = ["machine", "name", "kind", "jars", "heated", "rated-for-flammables"];

    public static List<Liquid> Liquids(ValueReader values, YEntry entry)
    {
        List<Liquid> liquids = [];
        foreach (YNode item in values.Items(entry))
        {
            if (values.Map(item, "liquids") is not { } map) continue;
            Liquid liquid = new() { Id = new("", map.At), Name = "", Solution = new("", map.At) };
            foreach (YEntry inner in map.Entries)
            {
                switch (inner.Key.Value)
                {
                    case "liquid": liquid = liquid with { Id = values.Name(inner) ?? liquid.Id }; break;
                    case "name": liquid = liquid with { Name = values.Text(inner) }; break;
                    case "solution": liquid = liquid with { Solution = values.Name(inner) ?? liquid.Solution }; break;
                    case "contains": liquid = liquid with { Contains = Shares(values, inner) }; break;
                    case "hazards": liquid = liquid with { Hazards = Hazards(values, inner) }; break;
                    case "flammable": liquid = liquid with { Flammable = values.Yes(inner) }; break;
                    case "water": liquid = liquid with { Water = values.Yes(inner) }; break;
                    default: values.Unknown(inner, "a liquid", LiquidKeys); break;
                }
            }
            Need(values, map, "a liquid", "liquid", "name", "solution");
            liquids.Add(liquid);
        }
        return liquids;
    }

    public static List<Jar> Jars(ValueReader values, YEntry entry)
    {
        List<Jar> jars = [];
        foreach (YNode item in values.Items(entry))
        {
            if (values.Map(item, "jars") is not { } map) continue;
            Jar jar = new() { Id = new("", map.At), Name = "", Holds = new("", map.At) };
            foreach (YEntry inner in map.Entries)
            {
                switch (inner.Key.Value)
                {
                    case "jar": jar = jar with { Id = values.PlacedText(inner) ?? jar.Id }; break;
                    case "name": jar = jar with { Name = values.Text(inner) }; break;
                    case "holds": jar = jar with { Holds = values.Name(inner) ?? jar.Holds }; break;
                    case "volume": jar = jar with { Millilitres = Millilitres(values, inner) }; break;
                    case "opening": jar = jar with { OpeningMillimetres = values.Quantity(inner, "80 mm", "mm") }; break;
                    case "life": jar = Life(values, inner, jar); break;
                    default: values.Unknown(inner, "a jar", JarKeys); break;
                }
            }
            Need(values, map, "a jar", "jar", "holds");
            jars.Add(jar.Name.Length == 0 ? jar with { Name = jar.Id.Value } : jar);
        }
        return jars;
    }

    public static List<Core.Workshops.Machine> Machines(ValueReader values, YEntry entry)
    {
        List<Core.Workshops.Machine> machines = [];
        foreach (YNode item in values.Items(entry))
        {
            if (values.Map(item, "machines") is not { } map) continue;
            Core.Workshops.Machine machine = new(new("", map.At), "", new("", map.At), [], false, false);
            foreach (YEntry inner in map.Entries)
            {
                switch (inner.Key.Value)
                {
                    case "machine": machine = machine with { Id = values.Name(inner) ?? machine.Id }; break;
                    case "name": machine = machine with { Name = values.Text(inner) }; break;
                    case "kind": machine = machine with { Kind = values.Word(inner, Core.Workshops.Machine.Kinds) ?? machine.Kind }; break;
                    case "jars": machine = machine with { Jars = values.Texts(inner) }; break;
                    case "heated": machine = machine with { Heated = values.Yes(inner) }; break;
                    case "rated-for-flammables": machine = machine with { RatedForFlammables = values.Yes(inner) }; break;
                    default: values.Unknown(inner, "a machine", MachineKeys); break;
                }
            }
            Need(values, map, "a machine", "machine", "name", "kind");
            machines.Add(machine);
        }
        return machines;
    }

    internal static void Need(ValueReader values, YMap map, string owner, params ReadOnlySpan<string> keys)
    {
        foreach (string key in keys)
        {
            if (map[key] is null) values.Missing(map.At, key, owner);
        }
    }

    private static List<Share> Shares(ValueReader values, YEntry entry)
    {
        List<Share> shares = [];
        foreach (YNode item in values.Items(entry))
        {
            if (values.Map(item, "contains") is not { } map) continue;
            Placed<string>? substance = null;
            decimal? percent = null;
            foreach (YEntry inner in map.Entries)
            {
                switch (inner.Key.Value)
                {
                    case "substance": substance = values.Name(inner); break;
                    case "share": percent = Percent(values, inner); break;
                    default: values.Unknown(inner, "'contains'", ["substance", "share"]); break;
                }
            }
            Need(values, map, "'contains'", "substance", "share");
            if (substance is { } known && percent is { } share) shares.Add(new Share(known, share));
        }
        return shares;
    }

    private static decimal? Percent(ValueReader values, YEntry entry)
    {
        if (values.Quantity(entry, "70 %", "%") is not { } percent) return null;
        if (percent is > 0 and <= 100) return percent;
        values.Add(NotANumber.Range(values.File, entry.Value.At, "share", ((YText)entry.Value).Value, "more than 0 % and at most 100 %"));
        return null;
    }

    private static List<Placed<string>> Hazards(ValueReader values, YEntry entry)
    {
        List<Placed<string>> hazards = values.Texts(entry);
        foreach (Placed<string> hazard in hazards)
        {
            string digits = hazard.Value.StartsWith("EUH", StringComparison.Ordinal) ? hazard.Value[3..] : hazard.Value.StartsWith('H') ? hazard.Value[1..] : "";
            bool sound = digits.Length is >= 3 and <= 5 && digits[..3].All(char.IsAsciiDigit) && digits[3..].All(char.IsAsciiLetter);
            if (!sound) values.Add(WrongForm.Of(values.File, hazard.At, "hazards", hazard.Value, "with the codes of the safety data sheet: H225, EUH066"));
        }
        return hazards;
    }

    private static decimal? Millilitres(ValueReader values, YEntry entry)
    {
        bool litres = entry.Value is YText { Value: var text } && (text.EndsWith(" L", StringComparison.Ordinal) || text.EndsWith(" l", StringComparison.Ordinal));
        return litres ? values.Quantity(entry, "250 mL", "L", "l") * 1000 : values.Quantity(entry, "250 mL", "mL", "ml");
    }

    private static Jar Life(ValueReader values, YEntry entry, Jar jar)
    {
        if (values.Map(entry.Value, "life") is not { } map) return jar;
        foreach (YEntry inner in map.Entries)
        {
            switch (inner.Key.Value)
            {
                case "baskets": jar = jar with { LifeBaskets = values.Whole(inner) }; break;
                case "days": jar = jar with { LifeDays = values.Whole(inner) }; break;
                default: values.Unknown(inner, "'life'", ["baskets", "days"]); break;
            }
        }
        return jar;
    }
}
