using ServiceRunner.Core.Procedures;
using ServiceRunner.Core.Quantities;
using ServiceRunner.Files.Yaml;

namespace ServiceRunner.Files.Procedures;

/// <summary>Reads one step and its facets.</summary>
internal static class StepReader
{
    private static readonly string[] Keys =
        ["step", "do", "how", "why", "takes", "hands", "after", "caution", "confirm", "power", "removes", "tries", "fits", "replaces",
         "bath", "spin", "dry", "wait", "brush", "peg", "examine", "if-found", "coat", "oil", "stays-dry", "measure", "count", "demagnetise", "rates",
         "photo", "estimate", "consent", "witness", "uses", "only-if"];

    private static readonly string[] Hands = ["needed", "free"];

    public static Step Read(ValueReader values, YMap map)
    {
        Step step = new() { Id = new("", map.At), Do = "" };
        YEntry? clock = null, ifFound = null;
        foreach (YEntry entry in map.Entries)
        {
            switch (entry.Key.Value)
            {
                case "bath" or "spin" or "dry" or "wait":
                    if (clock is not null) values.Add(Checks.Reading.SeveralClocks.Of(values.File, entry.Key.At, entry.Key.Value, clock.Key.Value));
                    ClockFacet? read = ClockReader.Read(values, entry);
                    if (clock is null) step = step with { Clock = read };
                    clock ??= entry;
                    break;
                case "if-found": ifFound = entry; break;
                default: step = Words(values, entry, step) ?? Parts(values, entry, step) ?? Work(values, entry, step) ?? Unknown(values, entry, step); break;
            }
        }
        if (ifFound is not null) step = step with { IfFound = FindingReader.IfFound(values, ifFound, step) };
        if (map["step"] is null) values.Missing(map.At, "step", "a step");
        if (map["do"] is null) values.Missing(step.Id.At, "do", "a step");
        return step;
    }

    private static Step? Words(ValueReader values, YEntry entry, Step step) => entry.Key.Value switch
    {
        "step" => step with { Id = values.Name(entry) ?? step.Id },
        "do" => step with { Do = values.Text(entry) },
        "how" => step with { How = values.Text(entry) },
        "why" => step with { Why = values.Text(entry) },
        "takes" => step with { Takes = values.Duration(entry) },
        "hands" => step with { HandsFree = values.Word(entry, Hands)?.Value == "free" },
        "after" => step with { After = values.Texts(entry) },
        "caution" => step with { Cautions = values.WordsOf(entry, Vocabulary.Cautions) },
        "photo" => step with { Photo = values.Text(entry) },
        "estimate" => step with { Estimate = values.Text(entry) },
        "consent" => step with { Consent = values.Text(entry) },
        "witness" => step with { Witness = values.Text(entry) },
        "uses" => step with { Uses = values.Texts(entry) },
        "only-if" => step with { OnlyIf = FindingReader.OnlyIf(values, entry) },
        _ => null,
    };

    private static Step? Parts(ValueReader values, YEntry entry, Step step) => entry.Key.Value switch
    {
        "removes" => step with { Removes = values.Texts(entry) },
        "tries" => step with { Tries = values.Texts(entry) },
        "fits" => step with { Fits = values.Texts(entry) },
        "replaces" => step with { Replaces = values.Texts(entry) },
        "oil" => step with { Oil = values.Texts(entry) },
        "stays-dry" => step with { StaysDry = values.Texts(entry) },
        _ => null,
    };

    private static Step? Work(ValueReader values, YEntry entry, Step step) => entry.Key.Value switch
    {
        "confirm" => step with { Confirm = WorkReader.Confirm(values, entry) },
        "power" => step with { Power = WorkReader.Power(values, entry) },
        "brush" => step with { Brush = WorkReader.Brush(values, entry) },
        "peg" => step with { Peg = WorkReader.Peg(values, entry) },
        "coat" => step with { Coat = WorkReader.Coat(values, entry) },
        "demagnetise" => step with { Demagnetise = values.Yes(entry) },
        "examine" => step with { Examine = FindingReader.Examine(values, entry) },
        "measure" => step with { Measure = MeasureReader.Measure(values, entry) },
        "count" => step with { Count = MeasureReader.Count(values, entry) },
        "rates" => step with { Rates = MeasureReader.Rates(values, entry) },
        _ => null,
    };

    private static Step Unknown(ValueReader values, YEntry entry, Step step)
    {
        values.Unknown(entry, "a step", Keys);
        return step;
    }
}
