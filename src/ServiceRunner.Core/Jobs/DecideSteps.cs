using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Core.Jobs;

public static partial class Decider
{
    private static Decision Do(Job job, JobAction.Do x, Circumstances at)
    {
        if (CannotTouch(job, x.Step, at, out PlannedStep planned) is { } no) return Refuse(no);
        if (ClockFirst(job, planned, x.Step) is { } clock) return Refuse(clock);
        if (Ask.Open(job, planned, at.Plan) is [var ask, ..]) return Refuse(new Rejection.StillAsks(ask));
        List<JobEvent.DeviationNoted> deviations = Ignored(job, planned, x.Step, x.Reason, at);
        if (Explain(deviations, x.Reason, at) is { } wanted) return Refuse(wanted);
        return Accept([.. deviations, .. Settle(job, planned, x.Step, null, at)]);
    }

    private static Decision Skip(Job job, JobAction.Skip x, Circumstances at)
    {
        if (CannotTouch(job, x.Step, at, out PlannedStep planned) is { } no) return Refuse(no);
        if (job.Soaks.GetValueOrDefault(x.Step) is { Ended: null }) return Refuse(new Rejection.ClockRuns(x.Step));
        List<JobEvent.DeviationNoted> deviations = [new(Deviation.Skipped, x.Step, planned.Step.Do, x.Reason)];
        if (Explain(deviations, x.Reason, at) is { } wanted) return Refuse(wanted);
        return Accept([.. deviations, new JobEvent.StepSkipped(x.Step)]);
    }

    private static Decision Answer(Job job, JobAction.Answer x, Circumstances at)
    {
        if (CannotTouch(job, x.Step, at, out PlannedStep planned) is { } no) return Refuse(no);
        if (ClockFirst(job, planned, x.Step) is { } clock) return Refuse(clock);
        IReadOnlyList<Ask> open = Ask.Open(job, planned, at.Plan);
        if (open.FirstOrDefault(a => a.Key == x.Ask) is not { } ask) return Refuse(new Rejection.NothingAsked(x.Step, x.Ask));
        List<JobEvent> events = [];
        List<JobEvent.DeviationNoted> deviations = FirstTouch(job, planned, x.Step) ? Ignored(job, planned, x.Step, x.Reason, at) : [];
        if (Answers.Read(ask, x.Value, x.Reason, at, events, deviations) is { } refused) return Refuse(refused);
        if (Explain(deviations, x.Reason, at) is { } wanted) return Refuse(wanted);
        return Accept([.. deviations, .. events, .. open.Count == 1 ? Settle(job, planned, x.Step, null, at) : []]);
    }

    private static Decision Leave(Job job, JobAction.Leave x, Circumstances at)
    {
        if (CannotTouch(job, x.Step, at, out PlannedStep planned) is { } no) return Refuse(no);
        if (ClockFirst(job, planned, x.Step) is { } clock) return Refuse(clock);
        IReadOnlyList<Ask> open = Ask.Open(job, planned, at.Plan);
        if (open.FirstOrDefault(a => a.Key == x.Ask) is not { } ask) return Refuse(new Rejection.NothingAsked(x.Step, x.Ask));
        List<JobEvent.DeviationNoted> deviations = FirstTouch(job, planned, x.Step) ? Ignored(job, planned, x.Step, x.Reason, at) : [];
        if (ask is not Ask.Witness || !at.Workshop.WorksAlone) deviations.Add(new JobEvent.DeviationNoted(LeftKind(ask), x.Step, ask.Key, x.Reason));
        if (Explain(deviations, x.Reason, at) is { } wanted) return Refuse(wanted);
        return Accept([.. deviations, .. Left(ask), .. open.Count == 1 ? Settle(job, planned, x.Step, null, at) : []]);
    }

    // Also if nobody says where the new piece comes from, it is a new piece.
    private static IEnumerable<JobEvent> Left(Ask ask) => ask is Ask.Renewal renewal
        ? [new JobEvent.AskLeft(ask.Step, ask.Key), new JobEvent.PartRenewed(ask.Step, renewal.Part, Origin.Unsaid, "")]
        : [new JobEvent.AskLeft(ask.Step, ask.Key)];

    private static string LeftKind(Ask ask) => ask switch
    {
        Ask.Oil => Deviation.PointLeft,
        Ask.Measure or Ask.Count or Ask.Rate => Deviation.MeasureLeft,
        Ask.Witness => Deviation.WitnessLeft,
        _ => Deviation.ConfirmLeft,
    };

    // What speaks against a step is judged once, when it is first touched.
    private static bool FirstTouch(Job job, PlannedStep planned, StepRef step) =>
        planned.Step.Clock is null && (job.Steps.GetValueOrDefault(planned.Key) is not { } record || record.Step != step || record.Answered.Count == 0);

    private static Decision EnterAfterwards(Job job, JobAction.EnterAfterwards x, Circumstances at)
    {
        if (x.When > at.Now.Wall) return Refuse(new Rejection.InTheFuture(x.When));
        List<JobEvent> events = [];
        Job running = job;
        foreach (StepRef step in x.Steps)
        {
            if (CannotTouch(running, step, at, out PlannedStep planned) is { } no) return Refuse(no);
            if (running.Soaks.GetValueOrDefault(step) is { Ended: null }) return Refuse(new Rejection.ClockRuns(step));
            List<JobEvent> own = [];
            foreach (Ask ask in Ask.Open(running, planned, at.Plan))
                own.AddRange(ask is Ask.Oil oil && at.LubricantFor(oil.Point.Role) is { } lubricant ? Answers.ServedAfterwards(oil, lubricant, x.When, at) : Left(ask));
            own.AddRange(Settle(running, planned, step, x.When, at));
            events.AddRange(own);
            running = Fold.Next(running.Id, running, new LogEntry(running.Log.Count + 1, $"{at.ActionId}/{step}", at.By, at.Now, own));
        }
        return Accept(events);
    }

    private static Rejection? ClockFirst(Job job, PlannedStep planned, StepRef step) =>
        planned.Step.Clock is null ? null
        : job.Soaks.GetValueOrDefault(step) is not { } soak ? new Rejection.ClockDoesNotRun(step)
        : soak.Ended is null ? new Rejection.ClockRuns(step)
        : null;

    private static Decision BeginSoak(Job job, JobAction.BeginSoak x, Circumstances at)
    {
        if (CannotTouch(job, x.Step, at, out PlannedStep planned) is { } no) return Refuse(no);
        if (planned.Step.Clock is not { } clock) return Refuse(new Rejection.NoClock(x.Step));
        if (job.Soaks.ContainsKey(x.Step)) return Refuse(new Rejection.ClockRuns(x.Step));
        if (x.Jar.Length > 0 && at.JarsInUse.Contains(x.Jar)) return Refuse(new Rejection.JarInUse(x.Jar));
        List<JobEvent.DeviationNoted> deviations = Ignored(job, planned, x.Step, x.Reason, at);
        if (Explain(deviations, x.Reason, at) is { } wanted) return Refuse(wanted);
        (SoakKind kind, string solution) = clock switch
        {
            Procedures.ClockFacet.Bath b => (SoakKind.Bath, b.Solution.Value),
            Procedures.ClockFacet.Spin => (SoakKind.Spin, ""),
            Procedures.ClockFacet.Dry d => (SoakKind.Dry, d.By.Value),
            Procedures.ClockFacet.Wait w => (SoakKind.Wait, w.For),
            _ => throw new InvalidOperationException("unknown clock"),
        };
        return Accept([.. deviations, new JobEvent.SoakBegun(x.Step, kind, solution, x.Jar, PartsLedger.Basket(job, at.Plan, planned).In, clock.Window)]);
    }

    private static Decision EndSoak(Job job, JobAction.EndSoak x, Circumstances at)
    {
        if (job.Phase is Phase.Idle) return Refuse(new Rejection.NotNow(job.Phase));
        if (job.Soaks.GetValueOrDefault(x.Step) is not { Ended: null } soak || at.Plan.Find(x.Step.Key) is not { } planned)
            return Refuse(new Rejection.ClockDoesNotRun(x.Step));
        Elapsed length = soak.Length(at.Now);
        List<JobEvent.DeviationNoted> deviations = soak.Begun.Window.Of(length.Length) switch
        {
            Standing.Under => [new(Deviation.SoakShort, x.Step, Lengths(length, soak.Begun.Window.Least), x.Reason)],
            Standing.Over => [new(Deviation.SoakLong, x.Step, Lengths(length, soak.Begun.Window.Most!.Value), x.Reason)],
            _ => [],
        };
        if (Explain(deviations, x.Reason, at) is { } wanted) return Refuse(wanted);
        return Accept([
            .. deviations,
            new JobEvent.SoakEnded(x.Step, length.Length, length.Certain),
            .. Ask.Open(job, planned, at.Plan).Count == 0 ? Settle(job, planned, x.Step, null, at) : []]);
    }

    private static Decision LengthenSoak(Job job, JobAction.LengthenSoak x, Circumstances at)
    {
        if (job.Soaks.GetValueOrDefault(x.Step) is not { Ended: null } soak) return Refuse(new Rejection.ClockDoesNotRun(x.Step));
        if (x.By <= TimeSpan.Zero) return Refuse(new Rejection.NoTime());
        TimeSpan length = soak.Length(at.Now).Length;
        return Accept(new JobEvent.SoakLengthened(x.Step, (length > soak.Window.Aim ? length : soak.Window.Aim) + x.By));
    }

    // Both figures as they were compared, in seconds: "182 s, least 300 s".
    private static string Lengths(Elapsed length, TimeSpan limit) =>
        string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{length.Length.TotalSeconds:0} s against {limit.TotalSeconds:0} s");
}
