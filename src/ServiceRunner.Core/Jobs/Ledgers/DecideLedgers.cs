using System.Globalization;

namespace ServiceRunner.Core.Jobs;

public static partial class Decider
{
    // The ledgers are kept while the work rests too: an owner answers when an owner answers.
    private static Decision? Ledgers(Job job, JobAction action, Circumstances at) => action switch
    {
        JobAction.AddPart x => AddPart(job, x),
        JobAction.RenewPart x => Part(x.Part, at) ?? Accept(new JobEvent.PartRenewed(null, x.Part, x.Origin, x.Detail.Trim())),
        JobAction.TendPart x => Part(x.Part, at) ?? Accept(new JobEvent.PartTended(x.Part, x.What)),
        JobAction.WashAgain x => WashAgain(job, x, at),
        JobAction.WeighFinding x => Finding(job, x.Finding) ?? Accept(new JobEvent.FindingWeighed(x.Finding, x.Weight, x.Sure)),
        JobAction.DecideFinding x => Finding(job, x.Finding) ?? Accept(new JobEvent.FindingDecided(x.Finding, x.Verdict, x.Detail.Trim())),
        JobAction.PriceFinding x => Finding(job, x.Finding) ?? (x.Cost is { Value: < 0 } || x.Time < TimeSpan.Zero
            ? Refuse(new Rejection.BelowNought())
            : Accept(new JobEvent.FindingPriced(x.Finding, x.Cost, x.Time, at.Workshop.Currency))),
        JobAction.SettleFinding x => Finding(job, x.Finding) ?? (x.How.Trim().Length == 0 ? Refuse(new Rejection.NothingTyped()) : Accept(new JobEvent.FindingSettled(x.Finding, x.How.Trim()))),
        JobAction.KeepPhoto x => (x.Finding.Length > 0 ? Finding(job, x.Finding) : null) ?? Accept(new JobEvent.PhotoKept(x.Finding, x.Step, x.Name, x.Hash, x.Caption.Trim())),
        JobAction.BringIn x => BringIn(job, x, at),
        JobAction.GiveUpRepair x => GiveUp(job, x, at),
        JobAction.GiveEstimate x => FindingsLedger.ToEstimate(job, at.Plan) is { Count: > 0 } lines
            ? Accept(new JobEvent.EstimateGiven([.. lines.Select(f => new EstimateLine(f.Id, f.Fate.Cost, f.Fate.Time))], x.Currency))
            : Refuse(new Rejection.NothingToEstimate()),
        JobAction.TakeAnswer x => TakeAnswer(job, x, at),
        _ => null,
    };

    private static Decision? Part(string part, Circumstances at) => at.Plan.Part(part) is null ? Refuse(new Rejection.NoSuchPart(part)) : null;

    private static Decision? Finding(Job job, string finding) => job.Findings.Any(f => f.Event.Finding == finding) ? null : Refuse(new Rejection.NoSuchFinding(finding));

    // The number of the entry that it comes with is the part's for ever, whatever is taken back.
    private static Decision AddPart(Job job, JobAction.AddPart x) =>
        x.Name.Trim().Length == 0 ? Refuse(new Rejection.NothingTyped())
        : x.Count < 1 || x.Jewels < 0 ? Refuse(new Rejection.BelowNought())
        : Accept(new JobEvent.PartAdded(string.Create(CultureInfo.InvariantCulture, $"added-{job.Log.Count + 1}"), x.Name.Trim(), x.Compartment.Trim(), x.Count, x.Jewels));

    private static Decision WashAgain(Job job, JobAction.WashAgain x, Circumstances at)
    {
        if (Part(x.Part, at) is { } no) return no;
        IReadOnlyList<StepRef> missed = PartsLedger.LeftOutOf(job, at.Plan, x.Part);
        return missed.Count == 0 ? Refuse(new Rejection.NothingToWash(x.Part)) : Accept(new JobEvent.WashBegunAgain(x.Part, missed));
    }

    private static Decision BringIn(Job job, JobAction.BringIn x, Circumstances at)
    {
        if (Finding(job, x.Finding) is { } no) return no;
        if (x.Part.Length > 0 && Part(x.Part, at) is { } nowhere) return nowhere;
        if (FindingsLedger.Find(job, at.Plan, x.Finding)!.Repairs.Any(r => !r.IsFinished && job.Procedures.Any(p => p.Instance == r.Instance && p.Procedure == x.Joined.Procedure)))
            return Refuse(new Rejection.RepairAlreadyIn(x.Joined.Title));
        // Those taken back count: what was done in them is still in the log under their name.
        int number = job.Log.Sum(e => e.Events.Count(o => o is JobEvent.ProcedureJoined)) + 1;
        string instance = number.ToString(CultureInfo.InvariantCulture);
        return Accept([
            x.Joined with { Instance = instance },
            new JobEvent.RepairJoined(instance, x.Finding, x.Part),
            .. x.Facts.Select(f => new JobEvent.FactAnswered(Procedures.ApartId.Of(instance, f.Key), f.Value)),
            .. job.FateOf(x.Finding).Verdict is Verdict.RepairHere or Verdict.Replace ? Array.Empty<JobEvent>() : [new JobEvent.FindingDecided(x.Finding, Verdict.RepairHere, "")]]);
    }

    private static Decision GiveUp(Job job, JobAction.GiveUpRepair x, Circumstances at)
    {
        List<PlannedStep> left = [.. at.Plan.InForce(job).Where(s => s.Key.Instance == x.Instance && !job.IsSettled(s.Key))];
        if (left.Count == 0 || !job.Repairs.Any(r => r.Instance == x.Instance)) return Refuse(new Rejection.NoSuchRepair(x.Instance));
        if (job.RunningSoaks.FirstOrDefault(s => s.Begun.Step.Instance == x.Instance) is { } soak) return Refuse(new Rejection.ClockRuns(soak.Begun.Step));
        if (x.Reason.Trim().Length == 0) return Refuse(new Rejection.NothingTyped());
        return Accept([
            new JobEvent.DeviationNoted(Deviation.Skipped, job.At(left[0].Key), at.Plan.TitleOf(x.Instance), x.Reason.Trim()),
            new JobEvent.RepairGivenUp(x.Instance),
            .. left.Select(s => new JobEvent.StepSkipped(job.At(s.Key)))]);
    }

    private static Decision TakeAnswer(Job job, JobAction.TakeAnswer x, Circumstances at)
    {
        foreach (string finding in x.Agreed.Concat(x.Declined))
            if (Finding(job, finding) is { } no) return no;
        if (x.Agreed.Count + x.Declined.Count == 0) return Refuse(new Rejection.NothingToEstimate());
        if (x.On > at.Now.Day) return Refuse(new Rejection.InTheFuture(new DateTimeOffset(x.On.ToDateTime(TimeOnly.MinValue), at.Now.Wall.Offset)));
        return Accept(new JobEvent.OwnerAnswered(x.Agreed, x.Declined, x.How, x.On, x.Words.Trim()));
    }

    // Three weeks later nobody remembers what lay where: the ledger is read against the tray before the work goes on.
    private static Decision Restart(Job job, JobAction.Restart x, Circumstances at)
    {
        if (job.Phase is not Phase.Held) return Refuse(new Rejection.NotNow(job.Phase));
        IReadOnlyList<string> off = PartsLedger.InTray(job);
        if (off.Count == 0) return Accept(new JobEvent.Restarted());
        if (x.Missing is null) return Refuse(new Rejection.TrayUnchecked(off));
        if (x.Missing.FirstOrDefault(m => !off.Contains(m)) is { } stranger) return Refuse(new Rejection.NoSuchPart(stranger));
        return Accept([
            new JobEvent.TrayChecked(off.Count - x.Missing.Count, x.Missing),
            .. x.Missing.Select(m => new JobEvent.PartMoved(m, new PartPlace.Lost())),
            .. x.Missing.Select((m, i) => new JobEvent.FindingNoted($"{at.ActionId}/{i + 1}", m, m, "not in the tray after the wait", Weight.Service, Sureness.Seen)),
            new JobEvent.Restarted()]);
    }
}
