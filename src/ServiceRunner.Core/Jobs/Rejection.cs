using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Core.Jobs;

/// <summary>Why an action was refused, as data; ServiceRunner.Files.Sentences makes the sentence.</summary>
public abstract record Rejection
{
    private Rejection() { }

    /// <summary>There is no such job.</summary>
    public sealed record NoSuchJob(string Job) : Rejection;

    /// <summary>The job is there already.</summary>
    public sealed record AlreadyOpen(string Number) : Rejection;

    /// <summary>Not while the job stands where it stands.</summary>
    public sealed record NotNow(Phase Phase) : Rejection;

    /// <summary>No procedure of the job has this step.</summary>
    public sealed record NoSuchStep(StepRef Step) : Rejection;

    /// <summary>The step is settled already.</summary>
    public sealed record AlreadySettled(StepRef Step) : Rejection;

    /// <summary>The step was not settled yet, so it cannot be done again.</summary>
    public sealed record NotSettled(StepKey Step) : Rejection;

    /// <summary>The step still asks something.</summary>
    public sealed record StillAsks(Ask Ask) : Rejection;

    /// <summary>The step asks no such thing now.</summary>
    public sealed record NothingAsked(StepRef Step, string Ask) : Rejection;

    /// <summary>The answer is not one of the choices.</summary>
    public sealed record NotAChoice(Ask Ask, string Answer) : Rejection;

    /// <summary>"Yes" says nothing about what was seen.</summary>
    public sealed record OnlyYes(Ask Ask, string Answer) : Rejection;

    /// <summary>Nothing was typed.</summary>
    public sealed record NothingTyped : Rejection;

    /// <summary>The text is no number.</summary>
    public sealed record NotANumber(Ask Ask, string Text, TypedNumber.Fault Fault) : Rejection;

    /// <summary>A negative length, a count below nought.</summary>
    public sealed record NumberOutOfSense(Ask Ask, string Text) : Rejection;

    /// <summary>The workshop wants a reason for these kinds of deviation.</summary>
    public sealed record ReasonWanted(IReadOnlyList<string> Kinds) : Rejection;

    /// <summary>The step has no clock.</summary>
    public sealed record NoClock(StepRef Step) : Rejection;

    /// <summary>The step's clock runs: end it first.</summary>
    public sealed record ClockRuns(StepRef Step) : Rejection;

    /// <summary>The step's clock does not run.</summary>
    public sealed record ClockDoesNotRun(StepRef Step) : Rejection;

    /// <summary>No alarm of this clock wants an answer.</summary>
    public sealed record NoAlarm(StepRef Step) : Rejection;

    /// <summary>More time than nothing is wanted.</summary>
    public sealed record NoTime : Rejection;

    /// <summary>The jar is in use.</summary>
    public sealed record JarInUse(string Jar) : Rejection;

    /// <summary>The shelf has no such lubricant.</summary>
    public sealed record NoSuchLubricant(string Lubricant) : Rejection;

    /// <summary>There is nothing to take back.</summary>
    public sealed record NothingToTakeBack : Rejection;

    /// <summary>This action cannot be taken back.</summary>
    public sealed record CannotTakeBack(int Action) : Rejection;

    /// <summary>The fact has no such answer.</summary>
    public sealed record NoSuchAnswer(string Fact, string Answer) : Rejection;

    /// <summary>A time that lies in the future.</summary>
    public sealed record InTheFuture(DateTimeOffset When) : Rejection;

    /// <summary>These parts are off the movement, and nobody compared the tray with the ledger yet.</summary>
    public sealed record TrayUnchecked(IReadOnlyList<string> Off) : Rejection;

    /// <summary>The job has no such part.</summary>
    public sealed record NoSuchPart(string Part) : Rejection;

    /// <summary>The job has no such finding.</summary>
    public sealed record NoSuchFinding(string Finding) : Rejection;

    /// <summary>This repair for this finding is in the job already, and not at its end.</summary>
    public sealed record RepairAlreadyIn(string Title) : Rejection;

    /// <summary>The job has no such repair, or it is at its end.</summary>
    public sealed record NoSuchRepair(string Instance) : Rejection;

    /// <summary>There is nothing to tell the owner: no finding waits for an answer.</summary>
    public sealed record NothingToEstimate : Rejection;

    /// <summary>Money or time below nought.</summary>
    public sealed record BelowNought : Rejection;

    /// <summary>No bath, spin-off or drying of this job left the part out.</summary>
    public sealed record NothingToWash(string Part) : Rejection;

    /// <summary>The witness is the repairer.</summary>
    public sealed record SamePerson(string Initials) : Rejection;
}

/// <summary>What came of an action.</summary>
public abstract record Decision
{
    private Decision() { }

    /// <summary>What happened; empty if this very action was taken before.</summary>
    public sealed record Accepted(IReadOnlyList<JobEvent> Events) : Decision;

    /// <summary>Refused, and why.</summary>
    public sealed record Refused(Rejection Why) : Decision;
}
