using ServiceRunner.Core.Jobs;
using ServiceRunner.Files.Sentences;
using ServiceRunner.Session;

namespace ServiceRunner.Screens;

/// <summary>A screen of one job: what it does, it does through the bench's session, and says what came of it.</summary>
public abstract class JobScreen(Shell shell, OpenJob job) : ScreenModel(shell)
{
    /// <summary>The job.</summary>
    public OpenJob Job { get; } = job;

    /// <summary>Its state.</summary>
    protected Job State => Job.State;

    /// <summary>The bench.</summary>
    public BenchSession Session => Shell.Session;

    /// <summary>Why no work can be done, as a sentence; empty while the job is on the bench.</summary>
    protected string NotRunning => State.Phase is Phase.Running ? "" : RejectionWords.Sentence(new Rejection.NotNow(State.Phase), Job.Plan);

    /// <summary>Why nothing can be written down, as a sentence; empty while the job is open, also while it waits.</summary>
    protected string Over => State.Phase.IsFinal ? NotRunning : "";

    /// <summary>Why nothing can be taken back; empty if something can.</summary>
    protected string NothingToTakeBack => State.LastToTakeBack() is null ? "There is nothing to take back." : "";

    /// <summary>Acts on the job; where the workshop wants a reason, asks for it and acts again.</summary>
    public bool Act(JobAction action, string done)
    {
        ActOutcome outcome = Session.Act(Job, action);
        if (outcome is ActOutcome.Refused { Why: Rejection.ReasonWanted wanted } && WithReason(action) is { } again)
        {
            Shell.Ask(Prompt.Reason(wanted.Kinds, reason => Complaint(Session.Act(Job, again(reason)), done)));
            return false;
        }
        if (outcome.IsDone) Told(outcome, done);
        else Shell.Tell(outcome, Job.Plan, done);
        return outcome.IsDone;
    }

    /// <summary>Acts within a question: what is refused is the complaint that keeps the question open.</summary>
    public string Answer(JobAction action, string done) => Complaint(Session.Act(Job, action), done);

    /// <summary>For a question's answer: done says so, and what is refused keeps the question open.</summary>
    protected string Complaint(ActOutcome outcome, string done)
    {
        if (!outcome.IsDone) return outcome.Sentence(Job.Plan, Session.Folder.Path);
        Told(outcome, done);
        return "";
    }

    // What an answer made besides is said at once: a slip must be seen while it can still be taken back.
    private void Told(ActOutcome outcome, string done)
    {
        IReadOnlyList<JobEvent> events = outcome is ActOutcome.Done x ? x.Events : [];
        List<string> besides =
        [
            .. events.OfType<JobEvent.DeviationNoted>().Select(d => $"{JobWords.DeviationKind(d.Kind)}{(d.Detail.Length > 0 ? $": {JobWords.DeviationDetail(d)}" : "")}"),
            .. events.OfType<JobEvent.FindingNoted>().Select(f => $"a finding: {PartWords.Spot(f, Job.Plan, capital: false)}, {f.What}"),
        ];
        string decide = events.Any(e => e is JobEvent.FindingNoted { Weight: not Weight.Note }) ? " F5 decides it," : "";
        Shell.Say(besides.Count == 0 ? done : $"{done} Written down: {string.Join("; ", besides)}.{decide} u takes it back.".Trim(), refusal: besides.Count > 0);
    }

    private static Func<string, JobAction>? WithReason(JobAction action) => action switch
    {
        JobAction.Answer x => reason => x with { Reason = reason },
        JobAction.Leave x => reason => x with { Reason = reason },
        JobAction.Do x => reason => x with { Reason = reason },
        JobAction.Skip x => reason => x with { Reason = reason },
        JobAction.BeginSoak x => reason => x with { Reason = reason },
        JobAction.EndSoak x => reason => x with { Reason = reason },
        JobAction.Complete x => reason => x with { Reason = reason },
        _ => null,
    };

    /// <summary>Takes the last act back.</summary>
    protected virtual void TakeBack()
    {
        LogEntry entry = State.LastToTakeBack()!;
        Act(new JobAction.TakeBack(entry.Number), $"Taken back: {ActWords.Of(entry, Job.Plan)}.");
    }
}
