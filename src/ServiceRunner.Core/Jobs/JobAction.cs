using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Core.Jobs;

/// <summary>What a repairer does with a job. Each becomes events, or is refused by name; see <see cref="Decider"/>.</summary>
public abstract partial record JobAction
{
    private JobAction() { }

    /// <summary>Books a job in, with what was noted at the counter.</summary>
    public sealed record Open(string Number, string What, string Owner, IReadOnlyList<JobEvent.ProcedureJoined> Procedures, IReadOnlyDictionary<string, string> Facts, NoteIntake? Intake = null) : JobAction;

    /// <summary>Notes what came in and was agreed, or changes it: all of it anew. The currency is the workshop's.</summary>
    public sealed record NoteIntake(string Serial, string Accessories, DateOnly? Promised, TypedNumber? CostLimit, string Condition) : JobAction;

    /// <summary>Says whose it is, by the id beside the log.</summary>
    public sealed record NameOwner(string Owner) : JobAction;

    /// <summary>Answers a fact of the job.</summary>
    public sealed record AnswerFact(string Fact, string Choice) : JobAction;

    /// <summary>Begins to work on it.</summary>
    public sealed record Start : JobAction;

    /// <summary>Turns away from it; the place is marked.</summary>
    public sealed record Pause(string Why) : JobAction;

    /// <summary>Comes back to it.</summary>
    public sealed record Resume : JobAction;

    /// <summary>Lets it wait.</summary>
    public sealed record Hold(HoldFor For, string Detail, string Condition, DateOnly? Until) : JobAction;

    /// <summary>
    /// Ends the wait. With parts off the movement the tray is compared with the ledger first: <paramref name="Missing"/>
    /// are the parts that did not lie where they should; null if nobody looked.
    /// </summary>
    public sealed record Restart(IReadOnlyList<string>? Missing = null) : JobAction;

    /// <summary>Ends it in order, unrepaired.</summary>
    public sealed record Stop(string Reason) : JobAction;

    /// <summary>Breaks it off.</summary>
    public sealed record Abort(string Reason) : JobAction;

    /// <summary>Closes it; with something owed a reason is wanted.</summary>
    public sealed record Complete(string Reason) : JobAction;

    /// <summary>Answers a question of a step. The last answer settles the step.</summary>
    public sealed record Answer(StepRef Step, string Ask, AnswerValue Value, string Reason = "") : JobAction;

    /// <summary>Leaves a question of a step without its answer.</summary>
    public sealed record Leave(StepRef Step, string Ask, string Reason = "") : JobAction;

    /// <summary>Does a step that asks nothing more.</summary>
    public sealed record Do(StepRef Step, string Reason = "") : JobAction;

    /// <summary>Passes over a step.</summary>
    public sealed record Skip(StepRef Step, string Reason = "") : JobAction;

    /// <summary>Takes a settled step up once more.</summary>
    public sealed record Again(StepKey Step) : JobAction;

    /// <summary>Starts a step's clock. The jar is empty for a clock without one.</summary>
    public sealed record BeginSoak(StepRef Step, string Jar, string Reason = "") : JobAction;

    /// <summary>Stops a step's clock; settles the step if it asks nothing more.</summary>
    public sealed record EndSoak(StepRef Step, string Reason = "") : JobAction;

    /// <summary>Gives a running clock more time: its aim moves this far past now, or past itself if it is not reached yet.</summary>
    public sealed record LengthenSoak(StepRef Step, TimeSpan By) : JobAction;

    /// <summary>Answers the alarm of a clock.</summary>
    public sealed record AnswerAlarm(StepRef Step) : JobAction;

    /// <summary>Marks the moment.</summary>
    public sealed record Mark(StepRef? Step) : JobAction;

    /// <summary>Enters steps that were done away from the screen, with the time as remembered.</summary>
    public sealed record EnterAfterwards(IReadOnlyList<StepRef> Steps, DateTimeOffset When) : JobAction;

    /// <summary>Says where a part is.</summary>
    public sealed record MovePart(string Part, PartPlace To) : JobAction;

    /// <summary>Notes a finding.</summary>
    public sealed record NoteFinding(string Spot, string Part, string What, Weight Weight, Sureness Sure) : JobAction;

    /// <summary>Notes that something was done in another way.</summary>
    public sealed record NoteDeviation(StepRef? Step, string Reason) : JobAction;

    /// <summary>Takes an action back: the last one that can be, or the one named.</summary>
    public sealed record TakeBack(int? Action = null) : JobAction;
}

/// <summary>What was answered.</summary>
public abstract record AnswerValue
{
    private AnswerValue() { }

    /// <summary>One of the choices.</summary>
    public sealed record Chosen(string Choice) : AnswerValue;

    /// <summary>As typed.</summary>
    public sealed record Typed(string Text) : AnswerValue;

    /// <summary>A lubricant by its id, from a batch (empty if not stated).</summary>
    public sealed record Served(string Lubricant, string Batch) : AnswerValue;
}
