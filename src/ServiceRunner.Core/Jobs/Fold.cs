using System.Collections.Immutable;

namespace ServiceRunner.Core.Jobs;

/// <summary>
/// From the log to the state. The fold is total: any order of entries gives a state, so that an action can be taken
/// back whatever came after it.
/// </summary>
public static class Fold
{
    /// <summary>A job from all its entries, or null if there are none. It is the state that <see cref="Next"/> comes to one by one.</summary>
    public static Job? All(string id, IEnumerable<LogEntry> entries)
    {
        ImmutableList<LogEntry> log = [.. entries];
        if (log.IsEmpty) return null;
        ImmutableHashSet<int> gone = [.. log.SelectMany(e => e.Events).OfType<JobEvent.TakenBack>().Select(e => e.Action)];
        return Of(id, log, gone);
    }

    /// <summary>The state after one more entry.</summary>
    public static Job Next(string id, Job? job, LogEntry entry)
    {
        job ??= Fresh(id, entry);
        // Taking back folds all the other entries anew: whatever the action did, nothing of it is left.
        if (entry.Events.OfType<JobEvent.TakenBack>().FirstOrDefault() is { } back) return Of(id, job.Log.Add(entry), job.TakenBack.Add(back.Action));
        return Apply(job, entry) with
        {
            Log = job.Log.Add(entry),
            ActionIds = job.ActionIds.Add(entry.ActionId),
        };
    }

    private static Job Fresh(string id, LogEntry first) => new() { Id = id, Phase = new Phase.Idle(first.At), OpenedAt = first.At };

    private static Job Of(string id, ImmutableList<LogEntry> log, ImmutableHashSet<int> gone)
    {
        Job job = Fresh(id, log[0]);
        foreach (LogEntry entry in log)
            if (!gone.Contains(entry.Number)) job = Apply(job, entry);
        return job with { Log = log, ActionIds = [.. log.Select(e => e.ActionId)], TakenBack = gone };
    }

    private static Job Apply(Job job, LogEntry entry)
    {
        foreach (JobEvent e in entry.Events) job = Apply(job, e, entry);
        return job;
    }

    private static Job Apply(Job job, JobEvent e, LogEntry entry) => e switch
    {
        JobEvent.Opened x => job with { Number = x.Number, What = x.What, Owner = x.Owner },
        JobEvent.IntakeNoted x => job with { Intake = IntakeOf(x) },
        JobEvent.OwnerNamed x => job with { Owner = x.Owner },
        JobEvent.ProcedureJoined x => job with { Procedures = job.Procedures.Add(x) },
        JobEvent.FactAnswered x => job with { Facts = job.Facts.SetItem(x.Fact, x.Answer) },
        JobEvent.Started or JobEvent.Resumed or JobEvent.Restarted => job with { Phase = new Phase.Running(entry.At) },
        JobEvent.Paused x => job with { Phase = new Phase.Paused(entry.At, x.Why) },
        JobEvent.Held x => job with { Phase = new Phase.Held(entry.At, x.For, x.Detail, x.Condition, x.Until) },
        JobEvent.Stopped x => job with { Phase = new Phase.Stopped(entry.At, x.Reason) },
        JobEvent.Aborted x => job with { Phase = new Phase.Aborted(entry.At, x.Reason) },
        JobEvent.Completed => job with
        {
            Phase = new Phase.Complete(entry.At, entry.Events.Any(o => o is JobEvent.DeviationNoted { Kind: Deviation.ClosedWithOwed })),
        },
        JobEvent.StepDone x => Settled(job, x.Step, new StepEnd(true, entry.At, entry.By, x.Remembered)),
        JobEvent.StepSkipped x => Settled(job, x.Step, new StepEnd(false, entry.At, entry.By, null)),
        JobEvent.StepBegunAgain x => BegunAgain(job, x.Step),
        JobEvent.Confirmed x => Answered(job, x.Step, Ask.ConfirmKey),
        JobEvent.Examined x => Answered(job, x.Step, Ask.ExamineKey(x.Spot)),
        JobEvent.Measured x => Answered(job, x.Step, Ask.MeasureKey(x.What)),
        JobEvent.Felt x => Answered(job, x.Step, Ask.MeasureKey(x.What)),
        JobEvent.Counted x => Answered(job, x.Step, Ask.CountKey),
        JobEvent.RateTaken x => Answered(job, x.Step, Ask.RateKey(x.AfterHours, x.Position)),
        JobEvent.PointServed x => Answered(job, x.Step, Ask.OilKey(x.Point)) with
        {
            Points = job.Points.SetItem(x.Point, new Serving(x, entry.At, entry.By, entry.Number)),
        },
        JobEvent.DrynessSeen x => Answered(job, x.Step, Ask.DryKey) with { Dry = job.Dry.SetItems(x.Points.Select(p => KeyValuePair.Create(p, new Noted<JobEvent.DrynessSeen>(x, entry.At, entry.By, entry.Number)))) },
        JobEvent.EstimateNoted x => Answered(job, x.Step, Ask.EstimateKey),
        JobEvent.ConsentNoted x => Answered(job, x.Step, Ask.ConsentKey),
        JobEvent.PartAdded x => LedgerFold.Added(job, x),
        JobEvent.PartRenewed x => LedgerFold.Renewed(x.Step is { } step ? Answered(job, step, Ask.OriginKey(x.Part)) : job, x, entry),
        JobEvent.PartTended x => LedgerFold.Tended(job, x),
        JobEvent.WashBegunAgain x => x.Steps.Aggregate(job, (j, step) => (step == j.At(step.Key) ? j : BegunAgain(j, step)) is var begun
            ? begun with { Alone = begun.Alone.SetItem(step, (begun.Alone.GetValueOrDefault(step) ?? []).Add(x.Part)) } : j),
        JobEvent.FindingWeighed x => LedgerFold.OfFate(job, x.Finding, f => f with { Weight = x.Weight, Sure = x.Sure }),
        JobEvent.FindingDecided x => LedgerFold.OfFate(job, x.Finding, f => f with { Verdict = x.Verdict, Detail = x.Detail, Settled = "" }),
        JobEvent.FindingPriced x => LedgerFold.OfFate(job, x.Finding, f => f with { Cost = x.Cost, Time = x.Time, Currency = x.Currency }),
        JobEvent.FindingSettled x => LedgerFold.OfFate(job, x.Finding, f => f with { Settled = x.How }),
        JobEvent.PhotoKept x => job with { Photos = job.Photos.Add(new(x, entry.At, entry.By, entry.Number)) },
        JobEvent.RepairJoined x => job with { Repairs = job.Repairs.Add(x) },
        JobEvent.RepairGivenUp x => job with { GivenUp = job.GivenUp.Add(x.Instance) },
        JobEvent.EstimateGiven x => job with { Estimates = job.Estimates.Add(new(x, entry.At, entry.By, entry.Number)) },
        JobEvent.OwnerAnswered x => LedgerFold.Answered(job, x, entry),
        JobEvent.TrayChecked => job,
        JobEvent.Witnessed x => Answered(job, x.Step, Ask.WitnessKey),
        JobEvent.AskLeft x => Answered(job, x.Step, x.Ask),
        JobEvent.SoakBegun x => WithSoak(job, new Soak(x, entry.At, entry.By, null, null)),
        JobEvent.SoakEnded x => LedgerFold.Soaked(OfSoak(job, x.Step, s => s with { Ended = x, EndedAt = entry.At }), x.Step),
        JobEvent.SoakLengthened x => OfSoak(job, x.Step, s => s with { Window = s.Window with { Aim = x.Aim }, Answered = null }),
        JobEvent.AlarmAnswered x => OfSoak(job, x.Step, s => s with { Answered = x.Urgency }),
        JobEvent.Marked x => job with { Marks = job.Marks.Add(new(x, entry.At, entry.By, entry.Number)) },
        JobEvent.PartMoved x => job with { Parts = job.Parts.SetItem(x.Part, x.To) },
        JobEvent.PowerChanged x => job with { Power = x.Power, SetUpTurns = x.Turns ?? job.SetUpTurns },
        JobEvent.FindingNoted x => job with { Findings = job.Findings.Add(new(x, entry.At, entry.By, entry.Number)) },
        JobEvent.DeviationNoted x => job with { Deviations = job.Deviations.Add(new(x, entry.At, entry.By, entry.Number)) },
        JobEvent.TakenBack => job,
        _ => throw new InvalidOperationException($"no fold for {e.GetType().Name}"),
    };

    internal static Intake IntakeOf(JobEvent.IntakeNoted x) => new(x.Serial, x.Accessories, x.Promised, x.CostLimit, x.Currency, x.Condition);

    private static Job OfSoak(Job job, StepRef step, Func<Soak, Soak> change) =>
        job.Soaks.GetValueOrDefault(step) is { } soak ? WithSoak(job, change(soak)) : job;

    private static Job WithSoak(Job job, Soak soak)
    {
        StepRef step = soak.Begun.Step;
        int at = job.RunningSoaks.FindIndex(s => s.Begun.Step == step);
        return job with
        {
            Soaks = job.Soaks.SetItem(step, soak),
            RunningSoaks = soak.Ended is not null ? at < 0 ? job.RunningSoaks : job.RunningSoaks.RemoveAt(at)
                : at < 0 ? job.RunningSoaks.Add(soak)
                : job.RunningSoaks.SetItem(at, soak),
        };
    }

    private static StepRecord Record(Job job, StepRef step) =>
        job.Steps.GetValueOrDefault(step.Key) is { } r && r.Step == step ? r : new StepRecord(step, [], null);

    private static Job Answered(Job job, StepRef step, string key)
    {
        StepRecord record = Record(job, step);
        return job with { Steps = job.Steps.SetItem(step.Key, record with { Answered = record.Answered.Add(key) }), Thread = step.Instance };
    }

    private static Job Settled(Job job, StepRef step, StepEnd end) =>
        job with { Steps = job.Steps.SetItem(step.Key, Record(job, step) with { End = end }), Thread = step.Instance };

    private static Job BegunAgain(Job job, StepRef step) => job with
    {
        EarlierSteps = job.Steps.GetValueOrDefault(step.Key) is { } earlier ? job.EarlierSteps.Add(earlier) : job.EarlierSteps,
        Steps = job.Steps.SetItem(step.Key, new StepRecord(step, [], null)),
    };
}
