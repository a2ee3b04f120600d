using System.Globalization;
using ServiceRunner.Core.Procedures;

namespace ServiceRunner.Core.Jobs;

/// <summary>A question that a step puts to the repairer. Its key is stable: it is how the log knows what was answered.</summary>
/// <param name="Step">Whose question.</param>
/// <param name="Key">Its key within the step.</param>
public abstract record Ask(StepRef Step, string Key)
{
    internal const string ConfirmKey = "confirm", CountKey = "count", EstimateKey = "estimate", ConsentKey = "consent", WitnessKey = "witness", DryKey = "stays-dry";

    internal static string ExamineKey(string spot) => $"examine:{spot}";

    internal static string MeasureKey(string what) => $"measure:{what}";

    internal static string OriginKey(string part) => $"origin:{part}";

    internal static string OilKey(string point) => $"oil:{point}";

    internal static string RateKey(decimal? hours, string position) =>
        $"rate:{hours?.ToString(CultureInfo.InvariantCulture)}:{position}";

    /// <summary>A challenge that wants a value or a state.</summary>
    public sealed record Confirm(StepRef Step, ConfirmFacet Facet) : Ask(Step, ConfirmKey);

    /// <summary>A place to look at.</summary>
    public sealed record Examine(StepRef Step, ExamineFacet Facet) : Ask(Step, ExamineKey(Facet.Spot));

    /// <summary>Something to measure, or to feel.</summary>
    public sealed record Measure(StepRef Step, MeasureFacet Facet) : Ask(Step, MeasureKey(Facet.What));

    /// <summary>Something to count.</summary>
    public sealed record Count(StepRef Step, CountFacet Facet) : Ask(Step, CountKey);

    /// <summary>A rate in one position.</summary>
    public sealed record Rate(StepRef Step, RatesFacet Facet, decimal? AfterHours, string Position) : Ask(Step, RateKey(AfterHours, Position));

    /// <summary>Where the piece comes from that takes an old one's place.</summary>
    public sealed record Renewal(StepRef Step, string Part) : Ask(Step, OriginKey(Part))
    {
        /// <summary>The answers, and what each means.</summary>
        public static readonly IReadOnlyList<(string Word, Origin Origin)> Answers =
            [("supplied", Origin.Supplied), ("made new", Origin.MadeNew), ("from an old movement", Origin.OldStock)];
    }

    /// <summary>A point to serve.</summary>
    public sealed record Oil(StepRef Step, OilingPoint Point) : Ask(Step, OilKey(Point.Id));

    /// <summary>Points that must stay dry, looked at together. It is never answered by a mere yes, nor by going on.</summary>
    public sealed record StaysDry(StepRef Step, IReadOnlyList<OilingPoint> Points) : Ask(Step, DryKey)
    {
        /// <summary>Every one of them is dry.</summary>
        public const string AllDry = "all dry";

        /// <summary>One of them is not.</summary>
        public const string OneIsNot = "one is not";
    }

    /// <summary>An estimate to write down.</summary>
    public sealed record Estimate(StepRef Step, string What) : Ask(Step, EstimateKey);

    /// <summary>The owner's answer to write down.</summary>
    public sealed record Consent(StepRef Step, string What) : Ask(Step, ConsentKey);

    /// <summary>A second person to look.</summary>
    public sealed record Witness(StepRef Step, string What) : Ask(Step, WitnessKey);

    /// <summary>The choices that this question offers; empty if it wants typing.</summary>
    public IReadOnlyList<string> Choices => this switch
    {
        Confirm c => c.Facet.Choices,
        Examine e => [.. e.Facet.Choices.Select(c => c.Value)],
        Measure m => m.Facet.OrFelt,
        Renewal => [.. Renewal.Answers.Select(a => a.Word)],
        StaysDry => [StaysDry.AllDry, StaysDry.OneIsNot],
        _ => [],
    };

    /// <summary>True if an answer may be typed.</summary>
    public bool Typable => this switch
    {
        Examine => true,
        Measure m => m.Facet.Unit.Length > 0,
        Confirm c => c.Facet.Choices.Count == 0,
        Oil or Renewal => false,
        _ => true,
    };

    /// <summary>All questions of a step, in the order in which they are asked.</summary>
    public static IEnumerable<Ask> Of(StepRef at, Step step, Plan plan)
    {
        foreach (ExamineFacet facet in step.Examine) yield return new Examine(at, facet);
        if (step.Confirm is { } confirm) yield return new Confirm(at, confirm);
        foreach (MeasureFacet facet in step.Measure) yield return new Measure(at, facet);
        if (step.Count is { } count) yield return new Count(at, count);
        foreach (string part in step.Replaces.Select(p => p.Value)) yield return new Renewal(at, part);
        foreach (string id in step.Oil.Select(p => p.Value))
            if (plan.Point(id) is { MustStayDry: false } point) yield return new Oil(at, point);
        if (step.StaysDry.Select(p => plan.Point(p)).OfType<OilingPoint>().Where(p => p.MustStayDry).ToList() is { Count: > 0 } dry) yield return new StaysDry(at, dry);
        if (step.Rates is { } rates)
            foreach (decimal? hours in rates.AfterHours.Count == 0 ? [null] : rates.AfterHours.Select(h => (decimal?)h))
                foreach (string position in rates.Positions.Select(p => p.Value))
                    yield return new Rate(at, rates, hours, position);
        if (step.Estimate.Length > 0) yield return new Estimate(at, step.Estimate);
        if (step.Consent.Length > 0) yield return new Consent(at, step.Consent);
        if (step.Witness.Length > 0 && plan.AsksWitness) yield return new Witness(at, step.Witness);
    }

    /// <summary>The questions of a step that are still open, in order.</summary>
    public static IReadOnlyList<Ask> Open(Job job, PlannedStep planned, Plan plan)
    {
        StepRef at = job.At(planned.Key);
        IReadOnlySet<string> answered = job.Steps.GetValueOrDefault(planned.Key)?.Answered ?? [];
        return [.. Of(at, planned.Step, plan).Where(a => !answered.Contains(a.Key))];
    }
}
