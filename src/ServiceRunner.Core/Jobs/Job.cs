using System.Collections.Immutable;
using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Core.Jobs;

/// <summary>
/// A job as folded from its log. Nothing here is stored: the log is, and this follows from it. See <see cref="Fold"/>.
/// </summary>
public sealed record Job
{
    /// <summary>Opaque id.</summary>
    public required string Id { get; init; }

    /// <summary>The workshop's own number.</summary>
    public string Number { get; init; } = "";

    /// <summary>What it is.</summary>
    public string What { get; init; } = "";

    /// <summary>The owner's id beside the log; empty if none was given.</summary>
    public string Owner { get; init; } = "";

    /// <summary>What was noted as it came in, and agreed.</summary>
    public Intake Intake { get; init; } = Intake.None;

    /// <summary>Where it stands.</summary>
    public required Phase Phase { get; init; }

    /// <summary>When it was booked in.</summary>
    public required Moment OpenedAt { get; init; }

    /// <summary>The procedures in it, in the order they came.</summary>
    public ImmutableList<JobEvent.ProcedureJoined> Procedures { get; init; } = [];

    /// <summary>Answered facts.</summary>
    public ImmutableDictionary<string, string> Facts { get; init; } = ImmutableDictionary<string, string>.Empty;

    /// <summary>What was done of each step that was touched, by its latest occurrence.</summary>
    public ImmutableDictionary<StepKey, StepRecord> Steps { get; init; } = ImmutableDictionary<StepKey, StepRecord>.Empty;

    /// <summary>Earlier occurrences of steps that were done again, in order.</summary>
    public ImmutableList<StepRecord> EarlierSteps { get; init; } = [];

    /// <summary>Where parts are that were moved; a part that is not here is where it was on arrival: on the movement.</summary>
    public ImmutableDictionary<string, PartPlace> Parts { get; init; } = ImmutableDictionary<string, PartPlace>.Empty;

    /// <summary>Points served.</summary>
    public ImmutableDictionary<string, Serving> Points { get; init; } = ImmutableDictionary<string, Serving>.Empty;

    /// <summary>Points that must stay dry, by the last look at them.</summary>
    public ImmutableDictionary<string, Noted<JobEvent.DrynessSeen>> Dry { get; init; } = ImmutableDictionary<string, Noted<JobEvent.DrynessSeen>>.Empty;

    /// <summary>Clocks, running and stopped, by their step.</summary>
    public ImmutableDictionary<StepRef, Soak> Soaks { get; init; } = ImmutableDictionary<StepRef, Soak>.Empty;

    /// <summary>Findings in the order noted.</summary>
    public ImmutableList<Noted<JobEvent.FindingNoted>> Findings { get; init; } = [];

    /// <summary>Deviations in the order noted.</summary>
    public ImmutableList<Noted<JobEvent.DeviationNoted>> Deviations { get; init; } = [];

    /// <summary>Moments that were marked.</summary>
    public ImmutableList<Noted<JobEvent.Marked>> Marks { get; init; } = [];

    /// <summary>Parts that no procedure names.</summary>
    public ImmutableList<JobEvent.PartAdded> AddedParts { get; init; } = [];

    /// <summary>Pieces that took the place of old ones, in order; each old one is kept for the owner.</summary>
    public ImmutableList<Noted<JobEvent.PartRenewed>> Renewals { get; init; } = [];

    /// <summary>What was done to parts since they came off.</summary>
    public ImmutableDictionary<string, PartCare> Care { get; init; } = ImmutableDictionary<string, PartCare>.Empty;

    /// <summary>Baths, spin-offs and dryings that only some parts go through, because they were left out before.</summary>
    public ImmutableDictionary<StepRef, ImmutableList<string>> Alone { get; init; } = ImmutableDictionary<StepRef, ImmutableList<string>>.Empty;

    /// <summary>What became of findings, by their id; see <see cref="FindingsLedger"/>.</summary>
    public ImmutableDictionary<string, FindingFate> Fates { get; init; } = ImmutableDictionary<string, FindingFate>.Empty;

    /// <summary>Joined procedures that are repairs.</summary>
    public ImmutableList<JobEvent.RepairJoined> Repairs { get; init; } = [];

    /// <summary>Repairs that were given up, by their instances.</summary>
    public ImmutableHashSet<string> GivenUp { get; init; } = [];

    /// <summary>What the owner was told.</summary>
    public ImmutableList<Noted<JobEvent.EstimateGiven>> Estimates { get; init; } = [];

    /// <summary>What the owner answered.</summary>
    public ImmutableList<Noted<JobEvent.OwnerAnswered>> OwnerAnswers { get; init; } = [];

    /// <summary>Pictures kept.</summary>
    public ImmutableList<Noted<JobEvent.PhotoKept>> Photos { get; init; } = [];

    /// <summary>The joined procedure in which a step was touched last: the thread of the work. Empty before the first.</summary>
    public string Thread { get; init; } = "";

    /// <summary>What drives the train.</summary>
    public Power Power { get; init; } = Power.Unknown;

    /// <summary>Turns of set-up written down, or null.</summary>
    public decimal? SetUpTurns { get; init; }

    /// <summary>All actions, in order; those taken back too.</summary>
    public ImmutableList<LogEntry> Log { get; init; } = [];

    /// <summary>Numbers of the actions that were taken back.</summary>
    public ImmutableHashSet<int> TakenBack { get; init; } = [];

    /// <summary>Ids of the actions in the log.</summary>
    public ImmutableHashSet<string> ActionIds { get; init; } = [];

    /// <summary>What was done to a part.</summary>
    public PartCare CareOf(string part) => Care.GetValueOrDefault(part) ?? PartCare.None;

    /// <summary>What became of a finding.</summary>
    public FindingFate FateOf(string finding) => Fates.GetValueOrDefault(finding) ?? FindingFate.None;

    /// <summary>Where a part is.</summary>
    public PartPlace PlaceOf(string part) => Parts.GetValueOrDefault(part) ?? new PartPlace.OnMovement();

    /// <summary>The running soak that a part is in, or null.</summary>
    public Soak? SoakOf(string part) => RunningSoaks.FirstOrDefault(s => s.Begun.Kind != SoakKind.Wait && s.Begun.Parts.Contains(part));

    /// <summary>Clocks that run, in the order begun.</summary>
    public ImmutableList<Soak> RunningSoaks { get; init; } = [];

    /// <summary>The occurrence of a step that is at hand.</summary>
    public StepRef At(StepKey step) => Steps.GetValueOrDefault(step)?.Step ?? new StepRef(step.Instance, step.Step, 1);

    /// <summary>True if a step was done or passed over.</summary>
    public bool IsSettled(StepKey step) => Steps.GetValueOrDefault(step)?.End is not null;

    /// <summary>True if a step was settled once, also if it was taken up again since: what waited for it need not wait anew.</summary>
    public bool WasSettled(StepKey step) => Steps.GetValueOrDefault(step) is { } record && (record.End is not null || record.Step.Occurrence > 1);
}

/// <summary>What was done of one occurrence of a step.</summary>
/// <param name="Step">Which.</param>
/// <param name="Answered">Keys of the asks that were answered or left.</param>
/// <param name="End">How it was settled, or null.</param>
public sealed record StepRecord(StepRef Step, ImmutableHashSet<string> Answered, StepEnd? End);

/// <summary>How a step was settled.</summary>
/// <param name="Done">True if done, false if passed over.</param>
/// <param name="At">When it was written down.</param>
/// <param name="By">By whom.</param>
/// <param name="Remembered">The time as remembered, if it was entered afterwards.</param>
public sealed record StepEnd(bool Done, Moment At, string By, DateTimeOffset? Remembered);

/// <summary>A point as served.</summary>
public sealed record Serving(JobEvent.PointServed Event, Moment At, string By, int Action);

/// <summary>A clock.</summary>
public sealed record Soak(JobEvent.SoakBegun Begun, Moment BegunAt, string By, JobEvent.SoakEnded? Ended, Moment? EndedAt)
{
    /// <summary>The window, with an aim that may have been moved since it began.</summary>
    public Window Window { get; init; } = Begun.Window;

    /// <summary>The most urgent alarm of it that was answered, or null.</summary>
    public Urgency? Answered { get; init; }

    /// <summary>How long it has run at a moment, or ran.</summary>
    public Elapsed Length(Moment now) => Ended is { } e ? new Elapsed(e.Length, e.Certain) : BegunAt.Until(now);

    /// <summary>Where it stands in its window.</summary>
    public Standing Standing(Moment now) => Window.Of(Length(now).Length);

    /// <summary>The alarm that wants an answer now, or null: an aim reached, a most passed. Later ones follow from the time alone.</summary>
    public Urgency? Alarm(Moment now) => Ended is not null ? null : Standing(now) switch
    {
        Quantities.Standing.Over when Answered is not Urgency.High => Urgency.High,
        Quantities.Standing.AtAim when Answered is null or Urgency.Low => Urgency.Medium,
        _ => null,
    };
}

/// <summary>An event with who and when.</summary>
public sealed record Noted<T>(T Event, Moment At, string By, int Action) where T : JobEvent;
