using ServiceRunner.Core.Procedures;

namespace ServiceRunner.Core.Jobs;

/// <summary>Where a finding stands.</summary>
public enum FindingStanding
{
    /// <summary>Nobody decided yet.</summary>
    Undecided,

    /// <summary>The owner is to be asked, or was asked and has not answered.</summary>
    WaitsForOwner,

    /// <summary>It is to be mended or replaced; nothing was brought in for it yet.</summary>
    ToBeMended,

    /// <summary>Its repair is in the job and not at its end.</summary>
    InRepair,

    /// <summary>It is with somebody else.</summary>
    SentOut,

    /// <summary>Nothing more is to be done about it.</summary>
    Settled,
}

/// <summary>A finding with all that became of it.</summary>
/// <param name="Noted">As noted.</param>
/// <param name="Fate">What became of it.</param>
/// <param name="Repairs">Repairs brought in for it.</param>
/// <param name="Suggested">The repair that the step at which it was seen names for it; empty if none.</param>
public sealed record FindingEntry(Noted<JobEvent.FindingNoted> Noted, FindingFate Fate, IReadOnlyList<Repair> Repairs, string Suggested)
{
    /// <summary>Its id.</summary>
    public string Id => Noted.Event.Finding;

    /// <summary>How much it weighs.</summary>
    public Weight Weight => Fate.Weight ?? Noted.Event.Weight;

    /// <summary>How sure it is.</summary>
    public Sureness Sure => Fate.Sure ?? Noted.Event.Sure;

    /// <summary>True if another piece took the part's place since.</summary>
    public bool Renewed { get; init; }

    /// <summary>True if its cost and all others together stay within what the owner agreed to as the piece came in.</summary>
    public bool WithinLimit { get; init; }

    /// <summary>Where it stands.</summary>
    public FindingStanding Standing => Fate switch
    {
        { Settled.Length: > 0 } or { Agreed: false } or { Verdict: Verdict.Accept } => FindingStanding.Settled,
        _ when Repairs.Any(r => !r.IsFinished) => Fate is { Cost.Value: > 0, Agreed: null } && !WithinLimit ? FindingStanding.WaitsForOwner : FindingStanding.InRepair,
        _ when Repairs.Any(r => !r.IsGivenUp) => FindingStanding.Settled,
        { Verdict: null } => Weight == Weight.Note ? FindingStanding.Settled : FindingStanding.Undecided,
        { Verdict: Verdict.AskOwner, Agreed: null } => FindingStanding.WaitsForOwner,
        { Verdict: Verdict.SendOut } => FindingStanding.SentOut,
        _ => Renewed ? FindingStanding.Settled : FindingStanding.ToBeMended,
    };

    /// <summary>True if nothing more is to be done about it.</summary>
    public bool IsSettled => Standing == FindingStanding.Settled;
}

/// <summary>The findings of a job: what each became, what each holds back, what the owner must still say.</summary>
public static class FindingsLedger
{
    /// <summary>All findings in the order noted.</summary>
    public static IReadOnlyList<FindingEntry> Of(Job job, Plan plan)
    {
        bool within = AgreedLimit.Of(job) is { IsKept: true };
        ILookup<string, Repair> repairs = Repair.AllOf(job, plan).ToLookup(r => r.Finding);
        return [.. job.Findings.Select(f => new FindingEntry(f, job.FateOf(f.Event.Finding), [.. repairs[f.Event.Finding]], Suggested(job, plan, f))
        {
            WithinLimit = within,
            Renewed = f.Event.Part.Length > 0 && job.Renewals.Any(r => r.Event.Part == f.Event.Part && r.Action > f.Action),
        })];
    }

    /// <summary>One finding, or null.</summary>
    public static FindingEntry? Find(Job job, Plan plan, string finding) =>
        job.Findings.Any(f => f.Event.Finding == finding) ? Of(job, plan).First(f => f.Id == finding) : null;

    /// <summary>Findings that the work cannot go on over, as long as nobody has decided them.</summary>
    public static IEnumerable<JobEvent.FindingNoted> Stopping(Job job) => job.Findings.Select(f => f.Event).Where(f =>
        job.FateOf(f.Finding) is { Settled: "" } fate && (fate.Weight ?? f.Weight) == Weight.StopsTheWork
        && (fate.Verdict is null || fate is { Verdict: Verdict.AskOwner, Agreed: null }));

    /// <summary>Findings that an estimate would name: to be mended, sent out or asked about, without the owner's answer.</summary>
    public static IReadOnlyList<FindingEntry> ToEstimate(Job job, Plan plan) =>
        [.. Of(job, plan).Where(f => !f.IsSettled && f.Fate is { Agreed: null, Verdict: not (null or Verdict.Accept) })];

    /// <summary>
    /// True if mending it costs and the owner has not agreed to that: neither to this, nor as the piece came in to all
    /// that it may cost. Whoever declined it is asked again, however little it costs.
    /// </summary>
    public static bool WantsConsent(Job job, string finding) =>
        job.FateOf(finding) is { Cost.Value: > 0, Agreed: not true } fate && !(fate.Agreed is null && AgreedLimit.Of(job) is { IsKept: true });

    private static string Suggested(Job job, Plan plan, Noted<JobEvent.FindingNoted> finding)
    {
        foreach (JobEvent e in job.Log[finding.Action - 1].Events)
        {
            (StepRef step, string spot, string choice) = e switch
            {
                JobEvent.Examined x => (x.Step, x.Spot, x.Choice),
                JobEvent.Felt x => (x.Step, x.What, x.Choice),
                _ => default,
            };
            if (spot is null || plan.Find(step.Key) is not { } planned) continue;
            if (planned.Step.IfFound.FirstOrDefault(i => i.Choice.Value == choice && (i.Spot.Length == 0 || i.Spot == spot)) is { } found) return found.Procedure;
        }
        return "";
    }
}
