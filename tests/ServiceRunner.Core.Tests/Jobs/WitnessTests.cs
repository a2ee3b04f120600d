using ServiceRunner.Core.Jobs;
using ServiceRunner.Core.Procedures;
using ServiceRunner.Core.Workshops;

namespace ServiceRunner.Core.Tests.Jobs;

/// <summary>Whether a second person looks is the workshop's to say.</summary>
public class WitnessTests
{
    private static readonly StepRef Step = new("1", "seen", 1);

    private static readonly JobAction Leave = new JobAction.Leave(Step, "witness");

    private static (Job Job, Circumstances At) Begun(WitnessWish wish, int people)
    {
        Procedure procedure = new() { Id = Sample.P("p"), Title = "P", Revision = "1", Parts = [], Stages = [new Stage(Sample.P("s"), "S", [], [new Step { Id = Sample.P("seen"), Do = "Look", Witness = "The hands" }])] };
        Workshop workshop = Sample.Workshop() with { Witness = wish, People = [.. Sample.Workshop().People.Take(people)] };
        Circumstances at = new(new Plan([new Joined("1", procedure)]) { AsksWitness = wish != WitnessWish.Never }, workshop, Sample.Morning, "AA", "x", new HashSet<string>(), new Dictionary<string, string>());
        Job job = Fold.All("job", [new LogEntry(1, "a", "AA", Sample.Morning, [new JobEvent.Opened("1", "W", ""), new JobEvent.ProcedureJoined("1", "p", "P", "1", [], ""), new JobEvent.Started()])])!;
        return (job, at);
    }

    private static IReadOnlyList<JobEvent> Accepted(Job job, JobAction action, Circumstances at) => Assert.IsType<Decision.Accepted>(Decider.Decide(job, action, at)).Events;

    [Theory]
    [InlineData(WitnessWish.Optional, 2)]
    [InlineData(WitnessWish.Wanted, 1)]
    [InlineData(WitnessWish.Wanted, 2)]
    public void Where_one_is_asked_for_going_on_does_not_leave_it_out(WitnessWish wish, int people)
    {
        (Job job, Circumstances at) = Begun(wish, people);
        Assert.Null(Assert.IsType<Offer.Answer>(Offer.Of(job, at)).Act);
    }

    [Fact]
    public void Where_one_is_optional_leaving_it_is_a_deviation()
    {
        (Job job, Circumstances at) = Begun(WitnessWish.Optional, 2);
        Assert.Equal(Deviation.WitnessLeft, Accepted(job, Leave, at).OfType<JobEvent.DeviationNoted>().Single().Kind);
    }

    [Fact]
    public void Whoever_works_alone_goes_on_without_and_that_is_no_deviation()
    {
        (Job job, Circumstances at) = Begun(WitnessWish.Optional, 1);
        JobAction going = Assert.IsType<JobAction.Leave>(Offer.Of(job, at).Act);
        IReadOnlyList<JobEvent> events = Accepted(job, going, at);
        Assert.Empty(events.OfType<JobEvent.DeviationNoted>());
        Assert.Equal("witness", events.OfType<JobEvent.AskLeft>().Single().Ask);
        Assert.Single(events.OfType<JobEvent.StepDone>());
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    public void Where_one_is_wanted_leaving_it_wants_a_reason(int people)
    {
        (Job job, Circumstances at) = Begun(WitnessWish.Wanted, people);
        Rejection why = Assert.IsType<Decision.Refused>(Decider.Decide(job, Leave, at)).Why;
        Assert.Equal([Deviation.WitnessLeft], Assert.IsType<Rejection.ReasonWanted>(why).Kinds);
        JobEvent.DeviationNoted noted = Accepted(job, new JobAction.Leave(Step, "witness", "nobody was in today"), at).OfType<JobEvent.DeviationNoted>().Single();
        Assert.Equal((Deviation.WitnessLeft, "nobody was in today"), (noted.Kind, noted.Reason));
    }

    [Fact]
    public void Where_none_is_wanted_nobody_is_asked()
    {
        (Job job, Circumstances at) = Begun(WitnessWish.Never, 2);
        Assert.IsType<Offer.Do>(Offer.Of(job, at));
        Assert.IsType<Rejection.NothingAsked>(Assert.IsType<Decision.Refused>(Decider.Decide(job, Leave, at)).Why);
        Assert.Single(Accepted(job, new JobAction.Do(Step), at).OfType<JobEvent.StepDone>());
    }
}
