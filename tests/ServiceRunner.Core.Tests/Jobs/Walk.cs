using ServiceRunner.Core.Jobs;
using ServiceRunner.Core.Quantities;
using ServiceRunner.Core.Workshops;

namespace ServiceRunner.Core.Tests.Jobs;

/// <summary>Given these actions, when this one, then these events: a job that is walked in a test.</summary>
internal sealed class Walk
{
    private int _id;

    public Walk(params string[] reasonsFor)
    {
        Workshop = Sample.Workshop(reasonsFor);
        Then(new JobAction.Open("26-001", "A watch", "", [new JobEvent.ProcedureJoined("1", "small", "Small movement", "1", [], "")], new Dictionary<string, string>()));
    }

    /// <summary>What stands in the workshop, and how it works; a test may change it on the way.</summary>
    public Workshop Workshop { get; set; }

    /// <summary>The instrument in use for each unit.</summary>
    public Dictionary<string, string> Instruments { get; } = [];

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

    public Plan Plan { get; private set; } = Sample.Plan;

    public Circumstances At(string? id = null) => new(Plan, Workshop, Now, "AA", id ?? $"a{++_id}", JarsInUse, Batches) { Instruments = Instruments };

    public Offer Offer => Core.Jobs.Offer.Of(Job, At("offer"));

    public Decision Decide(JobAction action, string? id = null) => Decider.Decide(Job, action, At(id));

    /// <summary>Acts; the events that came of it.</summary>
    public IReadOnlyList<JobEvent> Then(JobAction action, string? id = null)
    {
        Circumstances at = At(id);
        Decision.Accepted accepted = Assert.IsType<Decision.Accepted>(Decider.Decide(Job, action, at));
        if (accepted.Events.Count > 0) Job = Fold.Next("job", Job, new LogEntry((Job?.Log.Count ?? 0) + 1, at.ActionId, at.By, at.Now, accepted.Events));
        if (Job is not null) Plan = PlanOf(Job);
        return accepted.Events;
    }

    /// <summary>The plan of a job from what was brought into it, as the program makes it.</summary>
    public static Plan PlanOf(Job job) => new(
        job.Procedures.Select(p => new Joined(p.Instance, p.Procedure == "small" ? Sample.Procedure : Sample.Repair, job.Repairs.FirstOrDefault(r => r.Instance == p.Instance)?.Part ?? "")),
        job.AddedParts.Select(a => new Core.Procedures.Part { Id = Sample.P(a.Part), Name = a.Name, Compartment = a.Compartment, Jewels = a.Jewels }));

    /// <summary>Notes a finding on a part; its id.</summary>
    public string Find(string part, string what, Weight weight = Weight.Service) =>
        Then(new JobAction.NoteFinding(part, part, what, weight, Sureness.Seen)).OfType<JobEvent.FindingNoted>().Single().Finding;

    /// <summary>Brings the sample's repair in for a finding; its instance.</summary>
    public string BringIn(string finding, string part) =>
        Then(new JobAction.BringIn(finding, part, Repair, new Dictionary<string, string> { ["hard"] = "no" })).OfType<JobEvent.RepairJoined>().Single().Instance;

    public static readonly JobEvent.ProcedureJoined Repair = new("?", "new-pivot", "New pivot", "1", [], "");

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
                Then(new JobAction.Answer(a.Ask.Step, a.Ask.Key, a.Ask.Choices is [var first, ..] ? new AnswerValue.Chosen(first) : new AnswerValue.Typed(a.Ask switch { Ask.Count => "6", Ask.Rate => "+4 285", _ => "to the left" })));
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
