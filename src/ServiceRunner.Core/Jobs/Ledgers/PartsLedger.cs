using ServiceRunner.Core.Procedures;

namespace ServiceRunner.Core.Jobs;

/// <summary>What is known of the parts beyond their places: what goes into a basket, what is ready to be fitted, how many jewels there are.</summary>
public static class PartsLedger
{
    /// <summary>
    /// Which of a clock's parts go in now, and which are left out: in another jar, away, in a repair, or not meant where
    /// the step was taken up again for some of them.
    /// </summary>
    public static (IReadOnlyList<string> In, IReadOnlyList<string> Out) Basket(Job job, Plan plan, PlannedStep planned) => Basket(job, planned, Holding.Of(job, plan));

    internal static (IReadOnlyList<string> In, IReadOnlyList<string> Out) Basket(Job job, PlannedStep planned, Holding holding)
    {
        if (planned.Step.Clock is not { Parts.Count: > 0 } clock) return ([], []);
        List<string> parts = [.. clock.Parts.Select(p => p.Value)];
        IReadOnlyList<string> meant = job.Alone.GetValueOrDefault(job.At(planned.Key)) as IReadOnlyList<string> ?? parts;
        List<string> ready = [.. parts.Where(p => meant.Contains(p) && !IsAway(job, p) && holding.Elsewhere(p, planned.Key.Instance) is null && (job.SoakOf(p) is not { } soak || soak.Begun.Step.Key == planned.Key))];
        return (ready, [.. parts.Except(ready)]);
    }

    /// <summary>
    /// The baths, spin-offs and dryings that a part must go through by itself, from the first that it was left out of;
    /// empty if it was left out of none. Those still to come take it with the others.
    /// </summary>
    public static IReadOnlyList<StepRef> LeftOutOf(Job job, Plan plan, string part) =>
        [.. plan.BathsOf(part).Where(s => s.BelongsTo(job) == Belonging.Yes && job.WasSettled(s.Key))
            .SkipWhile(s => WasIn(job, s.Key, part) || job.Alone.GetValueOrDefault(job.At(s.Key))?.Contains(part) == true)
            .Select(s => job.IsSettled(s.Key) || job.Soaks.ContainsKey(job.At(s.Key)) ? job.At(s.Key) with { Occurrence = job.At(s.Key).Occurrence + 1 } : job.At(s.Key))];

    /// <summary>Why a part should not be fitted for good yet: not cleaned, not dry, not looked over, where its procedure wants that.</summary>
    public static IEnumerable<Blocker> NotReady(Job job, Plan plan, PlannedStep fitting, string part)
    {
        // The piece that took an old one's place has its own way in: its repair, or the bag it came in.
        if (job.Renewals.Any(r => r.Event.Part == part)) yield break;
        PartCare care = job.CareOf(part);
        List<PlannedStep> before = [.. plan.BathsOf(part).Where(s => s.Index < fitting.Index && s.BelongsTo(job) == Belonging.Yes)];
        PlannedStep? bath = before.FirstOrDefault(s => s.Step.Clock is ClockFacet.Bath);
        if (bath is not null && !care.Cleaned) yield return new Blocker.NotCleaned(part);
        else if (care.Wet && before.Any(s => s.Step.Clock is ClockFacet.Dry)) yield return new Blocker.StillWet(part);
        if (care.Inspected) yield break;
        List<(PlannedStep Step, string Ask, ExamineFacet Facet)> looks = [.. plan.LooksAt(part).Where(l => l.Step.Index < fitting.Index && l.Step.BelongsTo(job) == Belonging.Yes)];
        // Once it is clean it is looked at again, if the procedure does so at all.
        if (looks.Where(l => l.Step.Index > bath?.Index).ToList() is { Count: > 0 } again) looks = again;
        if (looks.Count > 0 && !looks.Any(l => job.Steps.GetValueOrDefault(l.Step.Key) is { } record && (record.Step.Occurrence > 1 || record.Answered.Contains(l.Ask))))
            yield return new Blocker.NotInspected(part);
    }

    /// <summary>Parts that lie in the tray, by their ids in order.</summary>
    public static IReadOnlyList<string> InTray(Job job) => [.. job.Parts.Where(p => p.Value is PartPlace.InTray).Select(p => p.Key).Order(StringComparer.Ordinal)];

    /// <summary>
    /// Jewels that the movement's parts carry, and how many of them are where nobody knows. What a repair calls a part of
    /// its own sits in one of those already.
    /// </summary>
    public static (int Total, int Missing) Jewels(Job job, Plan plan)
    {
        List<Part> own = [.. plan.Parts.Where(p => ApartId.Split(p.Id).Instance.Length == 0)];
        return (own.Sum(p => p.Jewels), own.Where(p => job.PlaceOf(p.Id) is PartPlace.Lost).Sum(p => p.Jewels));
    }

    private static bool IsAway(Job job, string part) => job.PlaceOf(part) is PartPlace.Lost or PartPlace.SentOut or PartPlace.SetAside;

    private static bool WasIn(Job job, StepKey step, string part)
    {
        for (int n = job.At(step).Occurrence; n >= 1; n--)
            if (job.Soaks.GetValueOrDefault(new StepRef(step.Instance, step.Step, n)) is { } soak && soak.Begun.Parts.Contains(part)) return true;
        return false;
    }
}
