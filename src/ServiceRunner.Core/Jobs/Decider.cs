using ServiceRunner.Core.Procedures;

namespace ServiceRunner.Core.Jobs;

/// <summary>
/// Decides what an action makes happen. It is a function of the job, the action and the circumstances; nothing is
/// stored here, and what is refused is refused by name.
/// </summary>
public static partial class Decider
{
    /// <summary>The events of an action, or why it is refused. The same action id a second time is accepted with no events.</summary>
    public static Decision Decide(Job? job, JobAction action, Circumstances at)
    {
        if (job is null) return action is JobAction.Open open ? Open(open, at) : Refuse(new Rejection.NoSuchJob(""));
        if (job.ActionIds.Contains(at.ActionId)) return new Decision.Accepted([]);
        if (job.Phase.IsFinal) return Refuse(new Rejection.NotNow(job.Phase));
        return action switch
        {
            JobAction.Open => Refuse(new Rejection.AlreadyOpen(job.Number)),
            JobAction.AnswerFact x => AnswerFact(job, x, at),
            JobAction.NoteIntake x => NoteIntake(job, x, at),
            JobAction.NameOwner x => NameOwner(job, x),
            JobAction.Start => When(job.Phase is Phase.Idle, job, new JobEvent.Started()),
            JobAction.Pause x => When(job.Phase is Phase.Running, job, new JobEvent.Paused(x.Why)),
            JobAction.Resume => When(job.Phase is Phase.Paused, job, new JobEvent.Resumed()),
            JobAction.Hold x => When(job.Phase is Phase.Running or Phase.Paused, job, new JobEvent.Held(x.For, x.Detail, x.Condition, x.Until)),
            JobAction.Restart x => Restart(job, x, at),
            JobAction.Stop x => When(true, job, new JobEvent.Stopped(x.Reason)),
            JobAction.Abort x => When(job.Phase is not Phase.Idle, job, new JobEvent.Aborted(x.Reason)),
            JobAction.MovePart x => job.PlaceOf(x.Part) == x.To ? new Decision.Accepted([]) : Accept(new JobEvent.PartMoved(x.Part, x.To)),
            JobAction.NoteFinding x => Accept(new JobEvent.FindingNoted(at.ActionId, x.Spot, x.Part, x.What, x.Weight, x.Sure)),
            JobAction.NoteDeviation x => x.Reason.Trim().Length == 0
                ? Refuse(new Rejection.NothingTyped())
                : Accept(new JobEvent.DeviationNoted(Deviation.ByOtherMeans, x.Step, "", x.Reason)),
            JobAction.TakeBack x => TakeBack(job, x),
            JobAction.EndSoak x => EndSoak(job, x, at),
            JobAction.LengthenSoak x => LengthenSoak(job, x, at),
            JobAction.AnswerAlarm x => job.Soaks.GetValueOrDefault(x.Step)?.Alarm(at.Now) is { } urgency
                ? Accept(new JobEvent.AlarmAnswered(x.Step, urgency))
                : Refuse(new Rejection.NoAlarm(x.Step)),
            JobAction.Mark x => Accept(new JobEvent.Marked(x.Step)),
            _ when Ledgers(job, action, at) is { } decided => decided,
            _ when job.Phase is not Phase.Running => Refuse(new Rejection.NotNow(job.Phase)),
            JobAction.Complete x => Complete(job, x, at),
            JobAction.Answer x => Answer(job, x, at),
            JobAction.Leave x => Leave(job, x, at),
            JobAction.Do x => Do(job, x, at),
            JobAction.Skip x => Skip(job, x, at),
            JobAction.Again x => job.IsSettled(x.Step)
                ? Accept(new JobEvent.StepBegunAgain(job.At(x.Step) with { Occurrence = job.At(x.Step).Occurrence + 1 }))
                : Refuse(new Rejection.NotSettled(x.Step)),
            JobAction.BeginSoak x => BeginSoak(job, x, at),
            JobAction.EnterAfterwards x => EnterAfterwards(job, x, at),
            _ => throw new InvalidOperationException($"no decision for {action.GetType().Name}"),
        };
    }

    private static Decision Accept(params IEnumerable<JobEvent> events) => new Decision.Accepted([.. events]);

    private static Decision Refuse(Rejection why) => new Decision.Refused(why);

    private static Decision When(bool possible, Job job, JobEvent e) => possible ? Accept(e) : Refuse(new Rejection.NotNow(job.Phase));

    private static Decision AnswerFact(Job job, JobAction.AnswerFact x, Circumstances at)
    {
        if (at.Plan.Question(x.Fact) is not { } question || !question.Answers.Contains(x.Choice)) return Refuse(new Rejection.NoSuchAnswer(x.Fact, x.Choice));
        return job.Facts.GetValueOrDefault(x.Fact) == x.Choice ? new Decision.Accepted([]) : Accept(new JobEvent.FactAnswered(x.Fact, x.Choice));
    }

    private static Decision TakeBack(Job job, JobAction.TakeBack x)
    {
        LogEntry? entry = x.Action is { } number ? job.Log.FirstOrDefault(e => e.Number == number) : job.LastToTakeBack();
        if (entry is null) return Refuse(new Rejection.NothingToTakeBack());
        return job.CanTakeBack(entry) ? Accept(new JobEvent.TakenBack(entry.Number)) : Refuse(new Rejection.CannotTakeBack(entry.Number));
    }

    private static Decision Complete(Job job, JobAction.Complete x, Circumstances at)
    {
        Owed owed = Owed.Of(job, at.Plan);
        if (owed.IsNothing) return Accept(new JobEvent.Completed());
        if (x.Reason.Trim().Length == 0) return Refuse(new Rejection.ReasonWanted([Deviation.ClosedWithOwed]));
        return Accept(new JobEvent.DeviationNoted(Deviation.ClosedWithOwed, null, owed.Brief, x.Reason), new JobEvent.Completed());
    }

    // The step as it stands, or why it cannot be worked on.
    private static Rejection? CannotTouch(Job job, StepRef step, Circumstances at, out PlannedStep planned)
    {
        planned = at.Plan.Find(step.Key)!;
        if (planned is null || planned.BelongsTo(job) == Belonging.No) return new Rejection.NoSuchStep(step);
        StepRef current = job.At(step.Key);
        if (step.Occurrence < current.Occurrence) return new Rejection.AlreadySettled(step);
        if (step != current) return new Rejection.NoSuchStep(step);
        return job.IsSettled(step.Key) ? new Rejection.AlreadySettled(step) : null;
    }

    // Deviations that an act makes, or the refusal if the workshop wants a reason for one of them and none was given.
    private static Rejection? Explain(List<JobEvent.DeviationNoted> deviations, string reason, Circumstances at)
    {
        if (reason.Trim().Length > 0) return null;
        List<string> wanted = [.. deviations.Select(d => d.Kind).Distinct().Where(k => at.Workshop.ReasonsFor.Any(r => r.Value == k)
            || (k == Deviation.WitnessLeft && at.Workshop.Witness == Workshops.WitnessWish.Wanted))];
        return wanted.Count > 0 ? new Rejection.ReasonWanted(wanted) : null;
    }

    private static List<JobEvent.DeviationNoted> Ignored(Job job, PlannedStep planned, StepRef step, string reason, Circumstances at) =>
        [.. Blocker.Of(job, planned, at.Plan).GroupBy(b => b.Kind)
            .Select(g => new JobEvent.DeviationNoted(g.Key, step, string.Join("; ", g.Select(b => b.Brief(at.Plan))), reason))];

    private static IEnumerable<JobEvent> Effects(Job job, Step step, Circumstances at)
    {
        foreach (string part in step.Removes.Select(p => p.Value))
            if (job.PlaceOf(part) is not PartPlace.InTray) yield return new JobEvent.PartMoved(part, new PartPlace.InTray(at.Plan.Part(part)?.Compartment ?? ""));
        foreach (string part in step.Tries.Select(p => p.Value)) yield return new JobEvent.PartMoved(part, new PartPlace.TriedDry());
        foreach (string part in step.Fits.Select(p => p.Value)) yield return new JobEvent.PartMoved(part, new PartPlace.OnMovement());
        if (step.Power is { } power)
            yield return power switch
            {
                PowerFacet.LetsDown => new JobEvent.PowerChanged(Power.Off, null),
                PowerFacet.SetUp setUp => new JobEvent.PowerChanged(Power.On, setUp.Turns),
                _ => new JobEvent.PowerChanged(Power.On, null),
            };
    }

    private static IEnumerable<JobEvent> Settle(Job job, PlannedStep planned, StepRef step, DateTimeOffset? remembered, Circumstances at) =>
        [new JobEvent.StepDone(step, remembered), .. Effects(job, planned.Step, at)];
}
