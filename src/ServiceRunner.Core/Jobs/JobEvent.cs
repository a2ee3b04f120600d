using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Core.Jobs;

/// <summary>
/// What happened in a job. A closed family: each kind has a stored shape that is a contract
/// (ServiceRunner.Files/Events, pinned by files). The person, the moment and the action's id stand beside the events of
/// an action, in its <see cref="LogEntry"/>.
/// </summary>
public abstract partial record JobEvent
{
    private JobEvent() { }

    /// <summary>The job was booked in. <paramref name="Owner"/> is an id: name and address live beside the log.</summary>
    public sealed record Opened(string Number, string What, string Owner) : JobEvent;

    /// <summary>What came in and was agreed. A later one replaces the earlier one; the owner is none of it.</summary>
    public sealed record IntakeNoted(string Serial, string Accessories, DateOnly? Promised, TypedNumber? CostLimit, string Currency, string Condition) : JobEvent;

    /// <summary>The job is this owner's, by the id beside the log; empty if nobody's any more.</summary>
    public sealed record OwnerNamed(string Owner) : JobEvent;

    /// <summary>A procedure came into the job, pinned by the hashes of all texts that it was read from.</summary>
    public sealed record ProcedureJoined(string Instance, string Procedure, string Title, string Revision, IReadOnlyList<PinnedText> Texts, string Because) : JobEvent;

    /// <summary>A fact of the job was answered, or answered anew.</summary>
    public sealed record FactAnswered(string Fact, string Answer) : JobEvent;

    /// <summary>Work began.</summary>
    public sealed record Started : JobEvent;

    /// <summary>The repairer turned away; the place is marked.</summary>
    public sealed record Paused(string Why) : JobEvent;

    /// <summary>The repairer came back.</summary>
    public sealed record Resumed : JobEvent;

    /// <summary>The job waits, for a stated reason, in a stated condition.</summary>
    public sealed record Held(HoldFor For, string Detail, string Condition, DateOnly? Until) : JobEvent;

    /// <summary>The wait is over.</summary>
    public sealed record Restarted : JobEvent;

    /// <summary>The job was ended in order before its end: returned unrepaired.</summary>
    public sealed record Stopped(string Reason) : JobEvent;

    /// <summary>The job was broken off.</summary>
    public sealed record Aborted(string Reason) : JobEvent;

    /// <summary>The job was closed.</summary>
    public sealed record Completed : JobEvent;

    /// <summary>A step was done; <paramref name="Remembered"/> is set if it was entered afterwards, with the time as remembered.</summary>
    public sealed record StepDone(StepRef Step, DateTimeOffset? Remembered) : JobEvent;

    /// <summary>A step was passed over.</summary>
    public sealed record StepSkipped(StepRef Step) : JobEvent;

    /// <summary>A step is to be done once more; <paramref name="Step"/> is the new occurrence.</summary>
    public sealed record StepBegunAgain(StepRef Step) : JobEvent;

    /// <summary>A challenge was answered.</summary>
    public sealed record Confirmed(StepRef Step, string Ask, string Answer) : JobEvent;

    /// <summary>A place was looked at.</summary>
    public sealed record Examined(StepRef Step, string Spot, string Choice) : JobEvent;

    /// <summary>Something was measured as a number; the limits are those of that day.</summary>
    public sealed record Measured(StepRef Step, string What, TypedNumber Value, string Unit, decimal? AtLeast, decimal? AtMost) : JobEvent
    {
        /// <summary>With which instrument, by its id in the workshop file; empty if none was stated.</summary>
        public string Instrument { get; init; } = "";
    }

    /// <summary>Something was felt.</summary>
    public sealed record Felt(StepRef Step, string What, string Choice) : JobEvent;

    /// <summary>Something was counted.</summary>
    public sealed record Counted(StepRef Step, string What, TypedNumber Value, string Unit, decimal? AtLeast, decimal? AtMost) : JobEvent;

    /// <summary>A rate was taken: s/d, amplitude in degrees, beat error in ms. Hours after winding if stated.</summary>
    public sealed record RateTaken(StepRef Step, decimal? AfterHours, string Position, TypedNumber Rate, TypedNumber? Amplitude, TypedNumber? BeatError) : JobEvent;

    /// <summary>A point got a lubricant; the batch is empty if it was not stated.</summary>
    public sealed record PointServed(StepRef Step, string Point, string Role, string Lubricant, string Batch) : JobEvent;

    /// <summary>A question of a step was left without its answer (<paramref name="Ask"/> is the ask's key).</summary>
    public sealed record AskLeft(StepRef Step, string Ask) : JobEvent;

    /// <summary>A clock was started: a stay in a liquid, a spin-off, a drying, a wait. The figures are those of that day.</summary>
    public sealed record SoakBegun(StepRef Step, SoakKind Kind, string Solution, string Jar, IReadOnlyList<string> Parts, Window Window) : JobEvent;

    /// <summary>A clock was stopped, with the length as it was taken then and how sure it is.</summary>
    public sealed record SoakEnded(StepRef Step, TimeSpan Length, bool Certain) : JobEvent;

    /// <summary>A running clock was given more time: its aim is now this long after its start. Its most stays.</summary>
    public sealed record SoakLengthened(StepRef Step, TimeSpan Aim) : JobEvent;

    /// <summary>An alarm of a clock was answered: that it reached its aim, or passed its most.</summary>
    public sealed record AlarmAnswered(StepRef Step, Urgency Urgency) : JobEvent;

    /// <summary>The moment was marked, to be looked at when the hands are free.</summary>
    public sealed record Marked(StepRef? Step) : JobEvent;

    /// <summary>A part is somewhere else now.</summary>
    public sealed record PartMoved(string Part, PartPlace To) : JobEvent;

    /// <summary>The power of the movement changed.</summary>
    public sealed record PowerChanged(Power Power, decimal? Turns) : JobEvent;

    /// <summary>Points that must stay dry were looked at: all dry, or one was not (a finding of the same action says what).</summary>
    public sealed record DrynessSeen(StepRef Step, IReadOnlyList<string> Points, bool AllDry) : JobEvent;

    /// <summary>What it will cost was written down.</summary>
    public sealed record EstimateNoted(StepRef Step, string Text) : JobEvent;

    /// <summary>What the owner said was written down.</summary>
    public sealed record ConsentNoted(StepRef Step, string Text) : JobEvent;

    /// <summary>A second person looked.</summary>
    public sealed record Witnessed(StepRef Step, string Initials) : JobEvent;

    /// <summary>Something was seen to be wrong or unusual. The part is empty if the place is no part.</summary>
    public sealed record FindingNoted(string Finding, string Spot, string Part, string What, Weight Weight, Sureness Sure) : JobEvent;

    /// <summary>Something was done other than as written. The step is null if it concerns none.</summary>
    public sealed record DeviationNoted(string Kind, StepRef? Step, string Detail, string Reason) : JobEvent;

    /// <summary>An earlier action (by its number in the job) was taken back: the record keeps it, the state forgets it.</summary>
    public sealed record TakenBack(int Action) : JobEvent;
}

/// <summary>A text kept by its content: its file's name and the SHA-256 of its bytes, in hex.</summary>
public sealed record PinnedText(string Name, string Hash);

/// <summary>What a hold waits for.</summary>
public enum HoldFor
{
    /// <summary>The owner's word.</summary>
    Owner,

    /// <summary>A part.</summary>
    Part,

    /// <summary>A day.</summary>
    Day,

    /// <summary>Something else, in words.</summary>
    Other,
}

/// <summary>What drives the train.</summary>
public enum Power
{
    /// <summary>Nobody has said yet: taken as wound.</summary>
    Unknown,

    /// <summary>Wound.</summary>
    On,

    /// <summary>Let down.</summary>
    Off,
}

/// <summary>How much a finding weighs.</summary>
public enum Weight
{
    /// <summary>Worth a line.</summary>
    Note,

    /// <summary>Belongs to the service.</summary>
    Service,

    /// <summary>The work cannot go on over it.</summary>
    StopsTheWork,
}

/// <summary>How sure a finding is.</summary>
public enum Sureness
{
    /// <summary>Seen.</summary>
    Seen,

    /// <summary>Inferred from something else.</summary>
    Inferred,

    /// <summary>Not known.</summary>
    Unknown,
}

/// <summary>What kind of clock runs.</summary>
public enum SoakKind
{
    /// <summary>A stay in a liquid.</summary>
    Bath,

    /// <summary>Spin-off.</summary>
    Spin,

    /// <summary>Drying.</summary>
    Dry,

    /// <summary>A wait without a jar.</summary>
    Wait,
}

/// <summary>How urgent an alarm of a clock is.</summary>
public enum Urgency
{
    /// <summary>The least is reached: silent unless the workshop wants it.</summary>
    Low,

    /// <summary>The aim is reached.</summary>
    Medium,

    /// <summary>The most is passed: repeated until it is answered.</summary>
    High,
}

/// <summary>Where a part is. A part in a running soak is there besides; see <see cref="Job.SoakOf"/>.</summary>
public abstract record PartPlace
{
    private PartPlace() { }

    /// <summary>On the movement, for good.</summary>
    public sealed record OnMovement : PartPlace;

    /// <summary>On the movement to try it dry.</summary>
    public sealed record TriedDry : PartPlace;

    /// <summary>Off, in a compartment of the tray (empty: in the tray somewhere).</summary>
    public sealed record InTray(string Compartment) : PartPlace;

    /// <summary>Laid apart, with the reason.</summary>
    public sealed record SetAside(string Why) : PartPlace;

    /// <summary>Away from the workshop.</summary>
    public sealed record SentOut(string To) : PartPlace;

    /// <summary>Not to be found.</summary>
    public sealed record Lost : PartPlace;

    /// <summary>Another one stands for it; the old one is kept for the owner.</summary>
    public sealed record Replaced(string By) : PartPlace;

    /// <summary>True if it is on the movement, for good or to try.</summary>
    public bool IsOn => this is OnMovement or TriedDry;
}
