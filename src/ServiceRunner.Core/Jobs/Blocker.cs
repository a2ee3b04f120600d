using ServiceRunner.Core.Procedures;

namespace ServiceRunner.Core.Jobs;

/// <summary>Why a step should not be done yet. What is done all the same becomes a deviation of <see cref="Kind"/>.</summary>
public abstract record Blocker
{
    private Blocker(string kind) => Kind = kind;

    /// <summary>The kind of deviation that ignoring it makes.</summary>
    public string Kind { get; }

    /// <summary>Another step comes first.</summary>
    public sealed record StepFirst(StepKey Step) : Blocker(Deviation.OutOfOrder);

    /// <summary>A stage has steps left.</summary>
    public sealed record StageFirst(string Stage, int Left) : Blocker(Deviation.OutOfOrder);

    /// <summary>The part is still in a soak.</summary>
    public sealed record InSoak(string Part, StepRef Soak) : Blocker(Deviation.OutOfOrder);

    /// <summary>The part is already off.</summary>
    public sealed record AlreadyOff(string Part) : Blocker(Deviation.PartNotAsWritten);

    /// <summary>The part is already on.</summary>
    public sealed record AlreadyOn(string Part) : Blocker(Deviation.PartNotAsWritten);

    /// <summary>The part is not at hand: lost, sent out, set aside.</summary>
    public sealed record NotAtHand(string Part, PartPlace Place) : Blocker(Deviation.PartNotAsWritten);

    /// <summary>Something still lies over the part, or holds it.</summary>
    public sealed record Covered(string Part, string By) : Blocker(Deviation.PartNotAsWritten);

    /// <summary>What the screw holds is not on.</summary>
    public sealed record SeatEmpty(string Part, string Seat) : Blocker(Deviation.PartNotAsWritten);

    /// <summary>The part would cover one that is still off.</summary>
    public sealed record WouldCover(string Part, string Under) : Blocker(Deviation.PartNotAsWritten);

    /// <summary>The part is under power, and the power is not off.</summary>
    public sealed record PowerIsOn(string Part) : Blocker(Deviation.PowerOn);

    /// <summary>The part was not cleaned.</summary>
    public sealed record NotCleaned(string Part) : Blocker(Deviation.PartNotReady);

    /// <summary>The part came out of a liquid and was not dried.</summary>
    public sealed record StillWet(string Part) : Blocker(Deviation.PartNotReady);

    /// <summary>The part was not looked over.</summary>
    public sealed record NotInspected(string Part) : Blocker(Deviation.PartNotReady);

    /// <summary>The part is in a repair that is not at its end.</summary>
    public sealed record RepairFirst(string Part, string Instance, int Left) : Blocker(Deviation.RepairOpen);

    /// <summary>A finding stops the work until it is decided. The part is empty if it stops everything.</summary>
    public sealed record FindingStops(string Finding, string Part, string What) : Blocker(Deviation.OverFinding);

    /// <summary>The repair costs, and the owner has not agreed.</summary>
    public sealed record NoConsent(string Instance, string Finding) : Blocker(Deviation.WithoutConsent);

    /// <summary>The facts of it in stored words, for the record of a deviation.</summary>
    public string Brief(Plan plan) => this switch
    {
        StepFirst b => $"before {b.Step.Step}",
        StageFirst b => $"before stage {b.Stage}",
        InSoak b => $"{plan.NameOf(b.Part)}: in {b.Soak.Step}",
        AlreadyOff b => $"{plan.NameOf(b.Part)}: already off",
        AlreadyOn b => $"{plan.NameOf(b.Part)}: already on",
        NotAtHand b => $"{plan.NameOf(b.Part)}: not at hand",
        Covered b => $"{plan.NameOf(b.Part)}: under {plan.NameOf(b.By)}",
        SeatEmpty b => $"{plan.NameOf(b.Part)}: {plan.NameOf(b.Seat)} is off",
        WouldCover b => $"{plan.NameOf(b.Part)}: over {plan.NameOf(b.Under)}, which is off",
        PowerIsOn b => $"{plan.NameOf(b.Part)}: power on",
        NotCleaned b => $"{plan.NameOf(b.Part)}: not cleaned",
        StillWet b => $"{plan.NameOf(b.Part)}: not dried",
        NotInspected b => $"{plan.NameOf(b.Part)}: not looked over",
        RepairFirst b => $"{plan.NameOf(b.Part)}: in '{plan.TitleOf(b.Instance)}'",
        FindingStops b => $"over the finding: {b.What}",
        NoConsent b => $"'{plan.TitleOf(b.Instance)}' without the owner's word",
        _ => throw new InvalidOperationException($"no words for {GetType().Name}"),
    };

    /// <summary>All that speaks against doing a step now; empty if it may be done.</summary>
    public static IReadOnlyList<Blocker> Of(Job job, PlannedStep planned, Plan plan) => Of(job, planned, plan, Holding.Of(job, plan));

    /// <summary>The same, for whoever asks about many steps and knows what is held back.</summary>
    public static IReadOnlyList<Blocker> Of(Job job, PlannedStep planned, Plan plan, Holding holding)
    {
        List<Blocker> found = [];
        Step step = planned.Step;
        foreach (string after in step.After.Select(a => a.Value))
        {
            StepKey key = new(planned.Key.Instance, after);
            if (plan.Find(key) is { } earlier && earlier.BelongsTo(job) != Belonging.No && !job.WasSettled(key)) found.Add(new StepFirst(key));
        }
        foreach (string stage in planned.Stage.OpensAfter.Select(s => s.Value))
        {
            int left = plan.StepsOf(planned.Key.Instance, stage).Count(s => s.BelongsTo(job) != Belonging.No && !job.WasSettled(s.Key) && !holding.IsAside(s.Key));
            if (left > 0) found.Add(new StageFirst(stage, left));
        }
        foreach (string part in step.Removes.Select(p => p.Value)) Removing(job, step, part, plan, found);
        foreach (string part in step.Fits.Select(p => p.Value)) Fitting(job, planned, part, plan, found);
        foreach (string part in step.Tries.Select(p => p.Value)) AtHand(job, part, found);
        if (step.Clock is { Parts.Count: > 0 }) Soaking(job, planned, plan, holding, found);
        Findings(job, planned, plan, holding, found);
        return found;
    }

    private static void Removing(Job job, Step step, string part, Plan plan, List<Blocker> found)
    {
        if (!job.PlaceOf(part).IsOn)
        {
            found.Add(new AlreadyOff(part));
            return;
        }
        foreach (string cover in (plan.Part(part)?.Under.Select(u => u.Value) ?? []).Concat(plan.HoldersOf(part)).Distinct())
            if (plan.Part(cover) is { Stays: false } && job.PlaceOf(cover).IsOn && !Names(step.Removes, cover)) found.Add(new Covered(part, cover));
        if (plan.Part(part) is { UnderPower: true } && job.Power != Power.Off) found.Add(new PowerIsOn(part));
    }

    // A basket goes in without the parts that are elsewhere; only an empty one does not.
    private static void Soaking(Job job, PlannedStep planned, Plan plan, Holding holding, List<Blocker> found)
    {
        (IReadOnlyList<string> inside, IReadOnlyList<string> left) = PartsLedger.Basket(job, planned, holding);
        foreach (string part in left)
            if (job.SoakOf(part) is { } soak) found.Add(new InSoak(part, soak.Begun.Step));
            else if (inside.Count > 0) continue;
            else if (holding.Elsewhere(part, planned.Key.Instance) is null) AtHand(job, part, found);
    }

    // What truly depends on a part in repair waits for it; everything else may go on.
    private static void Findings(Job job, PlannedStep planned, Plan plan, Holding holding, List<Blocker> found)
    {
        string instance = planned.Key.Instance;
        List<string> touched = [.. planned.Step.Fits.Concat(planned.Step.Tries).Select(p => p.Value)];
        foreach (JobEvent.RepairJoined joined in job.Repairs)
        {
            if (joined.Instance == instance && FindingsLedger.WantsConsent(job, joined.Finding)) found.Add(new NoConsent(instance, joined.Finding));
            // What stays is what everything else is fitted onto.
            bool needs = touched.Contains(joined.Part) || touched.Count > 0 && plan.Part(joined.Part) is { Stays: true };
            if (needs && holding.Elsewhere(joined.Part, instance) is { } repair && repair.Instance == joined.Instance) found.Add(new RepairFirst(joined.Part, repair.Instance, repair.Left));
        }
        if (touched.Count == 0 && holding.Whole(planned) is { } whole) found.Add(new RepairFirst(whole.Part, whole.Instance, whole.Left));
        foreach (JobEvent.FindingNoted stop in FindingsLedger.Stopping(job))
            if (stop.Part.Length == 0 || touched.Contains(stop.Part) || Names(planned.Step.Removes, stop.Part)) found.Add(new FindingStops(stop.Finding, stop.Part, stop.What));
    }

    private static void Fitting(Job job, PlannedStep planned, string part, Plan plan, List<Blocker> found)
    {
        Step step = planned.Step;
        if (job.PlaceOf(part) is PartPlace.OnMovement)
        {
            found.Add(new AlreadyOn(part));
            return;
        }
        AtHand(job, part, found);
        if (plan.Part(part)?.Seat is { } seat && !job.PlaceOf(seat.Value).IsOn && !Names(step.Fits, seat.Value)) found.Add(new SeatEmpty(part, seat));
        foreach (string under in plan.CoveredBy(part))
            if (job.PlaceOf(under) is PartPlace.InTray && !Names(step.Fits, under)) found.Add(new WouldCover(part, under));
        found.AddRange(PartsLedger.NotReady(job, plan, planned, part));
    }

    private static void AtHand(Job job, string part, List<Blocker> found)
    {
        if (job.SoakOf(part) is { } soak) found.Add(new InSoak(part, soak.Begun.Step));
        else if (job.PlaceOf(part) is PartPlace.Lost or PartPlace.SentOut or PartPlace.SetAside) found.Add(new NotAtHand(part, job.PlaceOf(part)));
    }

    private static bool Names(IReadOnlyList<Quantities.Placed<string>> parts, string part) => parts.Any(p => p.Value == part);
}
