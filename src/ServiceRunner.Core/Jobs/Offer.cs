using ServiceRunner.Core.Procedures;
using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Core.Jobs;

/// <summary>
/// What going on would do now: one thing, found from the job alone, so that the key, the footer, the pedal and the
/// voice can never disagree. <see cref="Act"/> is the action that it takes; null if something must be said first, or
/// if there is nothing to do but wait.
/// </summary>
public abstract record Offer(JobAction? Act)
{
    /// <summary>The step that it is about, or null.</summary>
    public PlannedStep? About => this switch
    {
        Fact x => x.For,
        Answer x => x.Step,
        Begin x => x.Step,
        End x => x.Step,
        Do x => x.Step,
        Wait x => x.Step,
        Stuck x => x.Step,
        _ => null,
    };

    /// <summary>Begin to work on the job.</summary>
    public sealed record Start() : Offer(new JobAction.Start());

    /// <summary>Come back to it after an interruption.</summary>
    public sealed record Resume(Phase.Paused Phase) : Offer(new JobAction.Resume());

    /// <summary>End the wait: never by going on alone.</summary>
    public sealed record Restart(Phase.Held Phase) : Offer((JobAction?)null);

    /// <summary>Answer a fact of the job by one of its answers.</summary>
    public sealed record Fact(JobQuestion Question, PlannedStep For) : Offer((JobAction?)null);

    /// <summary>Answer a step's question; going on takes what one hopes for, if there is such an answer.</summary>
    public sealed record Answer(PlannedStep Step, Ask Ask, int Left, JobAction? Going) : Offer(Going);

    /// <summary>Start a step's clock.</summary>
    public sealed record Begin(PlannedStep Step, ClockFacet Facet, string Jar, bool JarIsTaken, JobAction? Going) : Offer(Going)
    {
        /// <summary>Parts that go in, and parts that its step names and that are left out.</summary>
        public (IReadOnlyList<string> In, IReadOnlyList<string> Out) Basket { get; init; } = ([], []);
    }

    /// <summary>Stop a clock that reached its aim or passed its most.</summary>
    public sealed record End(PlannedStep Step, Soak Soak, Standing Standing) : Offer(new JobAction.EndSoak(Soak.Begun.Step));

    /// <summary>Do a step.</summary>
    public sealed record Do(PlannedStep Step, StepRef At) : Offer(new JobAction.Do(At));

    /// <summary>Nothing else can be done until this clock reaches its aim.</summary>
    public sealed record Wait(PlannedStep Step, Soak Soak) : Offer((JobAction?)null);

    /// <summary>All steps are settled: close the job, never by going on alone.</summary>
    public sealed record Close(Owed Owed) : Offer((JobAction?)null);

    /// <summary>Every step that is left has something against it; this is the first.</summary>
    public sealed record Stuck(PlannedStep Step, IReadOnlyList<Blocker> Blockers) : Offer((JobAction?)null);

    /// <summary>The job is over.</summary>
    public sealed record Over(Phase Phase) : Offer((JobAction?)null);

    /// <summary>
    /// What comes first when several things want an answer: an open challenge, a clock over its most, a clock at its
    /// aim, the step.
    /// </summary>
    public static Offer Of(Job job, Circumstances at)
    {
        switch (job.Phase)
        {
            case Phase.Idle: return new Start();
            case Phase.Paused paused: return new Resume(paused);
            case Phase.Held held: return new Restart(held);
            case { IsFinal: true }: return new Over(job.Phase);
        }
        (PlannedStep? next, IReadOnlyList<Blocker>? firstBlocked, PlannedStep? blockedStep) = Next(job, at.Plan);
        if (next is not null && HalfAnswered(job, next) && Ask.Open(job, next, at.Plan) is [Ask.Confirm, ..]) return OfStep(job, next, at);
        if (Ready(job, at, s => s.Standing(at.Now) == Standing.Over) is { } over) return over;
        if (Ready(job, at, s => s.Standing(at.Now) is Standing.AtAim or Standing.Over) is { } ready) return ready;
        foreach (Soak soak in job.RunningSoaks)
            if (at.Plan.Find(soak.Begun.Step.Key) is { Step.HandsFree: false } held) return new Wait(held, soak);
        if (next is not null) return OfStep(job, next, at);
        if (job.RunningSoaks.MinBy(s => s.Window.Aim - s.Length(at.Now).Length) is { } soonest && at.Plan.Find(soonest.Begun.Step.Key) is { } soaking)
            return new Wait(soaking, soonest);
        return blockedStep is not null ? new Stuck(blockedStep, firstBlocked!) : new Close(Owed.Of(job, at.Plan));
    }

    /// <summary>What going on would do with one step, whatever else there is.</summary>
    public static Offer OfStep(Job job, PlannedStep step, Circumstances at)
    {
        if (at.Plan.OpenQuestion(step, job) is { } question) return new Fact(question, step);
        StepRef here = job.At(step.Key);
        if (step.Step.Clock is { } clock)
        {
            if (job.Soaks.GetValueOrDefault(here) is not { } soak)
            {
                string jar = clock is ClockFacet.Bath bath ? at.JarFor(bath.Solution, bath.Jar) ?? "" : "";
                bool taken = jar.Length > 0 && at.JarsInUse.Contains(jar);
                return new Begin(step, clock, jar, taken, taken ? null : new JobAction.BeginSoak(here, jar)) { Basket = PartsLedger.Basket(job, at.Plan, step) };
            }
            if (soak.Ended is null)
                return soak.Standing(at.Now) is Standing.AtAim or Standing.Over ? new End(step, soak, soak.Standing(at.Now)) : new Wait(step, soak);
        }
        IReadOnlyList<Ask> open = Ask.Open(job, step, at.Plan);
        return open.Count == 0 ? new Do(step, here) : new Answer(step, open[0], open.Count, Hoped(open[0], at));
    }

    private static JobAction? Hoped(Ask ask, Circumstances at) => ask switch
    {
        Ask.Examine e => (JobAction)new JobAction.Answer(ask.Step, ask.Key, new AnswerValue.Chosen(e.Facet.Choices[0])),
        Ask.Measure { Facet.OrFelt: [var felt, ..] } => new JobAction.Answer(ask.Step, ask.Key, new AnswerValue.Chosen(felt)),
        Ask.Oil o => new JobAction.Answer(ask.Step, ask.Key, at.LubricantFor(o.Point.Role) is { } lubricant
            ? new AnswerValue.Served(lubricant.Id, at.BatchOf(lubricant.Id))
            : new AnswerValue.Served(o.Point.Role, "")),
        // Whoever works alone has nobody to ask.
        Ask.Witness when at.Workshop.WorksAlone => new JobAction.Leave(ask.Step, ask.Key),
        _ => null,
    };

    private static bool HalfAnswered(Job job, PlannedStep step) => job.Steps.GetValueOrDefault(step.Key) is { End: null, Answered.Count: > 0 };

    // The most overdue of the clocks that fit.
    private static End? Ready(Job job, Circumstances at, Func<Soak, bool> fits) =>
        job.RunningSoaks.Where(fits).OrderByDescending(s => s.Length(at.Now).Length - s.Window.Aim)
            .Select(s => at.Plan.Find(s.Begun.Step.Key) is { } step ? new End(step, s, s.Standing(at.Now)) : null).FirstOrDefault(e => e is not null);

    // The first step that may be done now; else the first that has something against it.
    private static (PlannedStep? Next, IReadOnlyList<Blocker>? Why, PlannedStep? Blocked) Next(Job job, Plan plan)
    {
        (IReadOnlyList<Blocker>? why, PlannedStep? blocked) = (null, null);
        Holding holding = Holding.Of(job, plan);
        // A repair that was taken up is gone on with, as far as it may: the thread of the work is not lost.
        IEnumerable<PlannedStep> thread = job.Repairs.Any(r => r.Instance == job.Thread) ? plan.Steps.Where(s => s.Key.Instance == job.Thread) : [];
        foreach (PlannedStep step in thread.Concat(plan.Steps))
        {
            if (job.IsSettled(step.Key) || step.BelongsTo(job) == Belonging.No) continue;
            if (job.Soaks.GetValueOrDefault(job.At(step.Key)) is { Ended: null }) continue;
            IReadOnlyList<Blocker> against = Blocker.Of(job, step, plan, holding);
            if (against.Count == 0) return (step, null, null);
            if (blocked is null) (why, blocked) = (against, step);
        }
        return (null, why, blocked);
    }
}
