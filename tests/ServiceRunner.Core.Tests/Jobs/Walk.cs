using ServiceRunner.Core.Jobs;
using ServiceRunner.Core.Quantities;
using ServiceRunner.Core.Workshops;

namespace ServiceRunner.Core.Tests.Jobs;

/// <summary>Given these actions, when this one, then these events: a job that is walked in a test.</summary>
internal sealed class Walk
{
    private int _id;
    private readonly Workshop _workshop;

    public Walk(params string[] reasonsFor)
    {
        _workshop = Sample.Workshop(reasonsFor);
        Then(new JobAction.Open("26-001", "A watch", "", [new JobEvent.ProcedureJoined("1", "small", "Small movement", "1", [], "")], new Dictionary<string, string>()));
    }

    public Job Job { get; private set; } = null!;

    public Moment Now { get; set; } = Sample.Morning;

    public HashSet<string> JarsInUse { get; } = [];

    public Dictionary<string, string> Batches { get; } = new() { ["light"] = "L-1" };

    public static Walk Begun(params string[] reasonsFor)
    {
        Walk walk = new(reasonsFor);
        walk.Then(new JobAction.Start());
        walk.Then(new JobAction.AnswerFact("luminous", "no"));
        return walk;
    }

    public Circumstances At(string? id = null) => new(Sample.Plan, _workshop, Now, "AA", id ?? $"a{++_id}", JarsInUse, Batches);

    public Offer Offer => Core.Jobs.Offer.Of(Job, At("offer"));

    public Decision Decide(JobAction action, string? id = null) => Decider.Decide(Job, action, At(id));

    /// <summary>Acts; the events that came of it.</summary>
    public IReadOnlyList<JobEvent> Then(JobAction action, string? id = null)
    {
        Circumstances at = At(id);
        Decision.Accepted accepted = Assert.IsType<Decision.Accepted>(Decider.Decide(Job, action, at));
        if (accepted.Events.Count > 0) Job = Fold.Next("job", Job, new LogEntry((Job?.Log.Count ?? 0) + 1, at.ActionId, at.By, at.Now, accepted.Events));
        return accepted.Events;
    }

    public T Refused<T>(JobAction action) where T : Rejection => Assert.IsType<T>(Assert.IsType<Decision.Refused>(Decide(action)).Why);

    /// <summary>Goes on with what is offered until the step is at hand; confirms and figures are typed.</summary>
    public Walk To(string step)
    {
        for (int i = 0; i < 100; i++)
        {
            Offer offer = Offer;
            if (Name(offer) == step && offer is not Offer.Wait) return this;
            GoOn(offer);
        }
        throw new InvalidOperationException($"{step} was never offered");
    }

    public Walk ToEnd()
    {
        for (int i = 0; i < 100 && Offer is not (Offer.Close or Offer.Stuck); i++) GoOn(Offer);
        return this;
    }

    private void GoOn(Offer offer)
    {
        switch (offer)
        {
            case Offer.Wait wait: Now = Now.Plus(wait.Soak.Begun.Window.Aim - wait.Soak.Length(Now).Length); break;
            case Offer.Answer { Act: null } a:
                Then(new JobAction.Answer(a.Ask.Step, a.Ask.Key, new AnswerValue.Typed(a.Ask switch { Ask.Count => "6", Ask.Rate => "+4 285", _ => "to the left" })));
                break;
            default: Then(offer.Act ?? throw new InvalidOperationException($"{offer} offers nothing")); break;
        }
    }

    public static string Name(Offer offer) => offer switch
    {
        Offer.Answer x => x.Step.Key.Step,
        Offer.Begin x => x.Step.Key.Step,
        Offer.End x => x.Step.Key.Step,
        Offer.Wait x => x.Step.Key.Step,
        Offer.Do x => x.Step.Key.Step,
        Offer.Fact x => x.For.Key.Step,
        Offer.Stuck x => x.Step.Key.Step,
        _ => "",
    };
}
