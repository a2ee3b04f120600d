using ServiceRunner.Core.Jobs;
using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Core.Tests.Jobs;

/// <summary>What comes first when several things want an answer.</summary>
public class OfferTests
{
    [Fact]
    public void A_booked_in_job_offers_its_beginning() => Assert.IsType<Offer.Start>(new Walk().Offer);

    [Fact]
    public void A_fact_is_asked_when_a_step_first_needs_it()
    {
        Walk walk = new();
        walk.Then(new JobAction.Start());
        Offer.Fact fact = Assert.IsType<Offer.Fact>(walk.Offer);
        Assert.Equal("luminous", fact.Question.Fact);
        Assert.Null(fact.Act);
    }

    [Fact]
    public void A_clock_at_its_aim_comes_before_the_step_and_one_over_its_most_before_that()
    {
        Walk walk = Walk.Begun().To("wash");
        walk.Then(walk.Offer.Act!);
        walk.Then(walk.Offer.Act!);
        Assert.Equal(2, walk.Job.RunningSoaks.Count);
        Assert.IsType<Offer.Wait>(walk.Offer);
        walk.Now = walk.Now.Plus(TimeSpan.FromMinutes(1.5));
        Assert.Equal(("balance-rinse", Standing.AtAim), (Walk.Name(walk.Offer), Assert.IsType<Offer.End>(walk.Offer).Standing));
        walk.Now = walk.Now.Plus(TimeSpan.FromMinutes(4));
        Assert.Equal(("balance-rinse", Standing.Over), (Walk.Name(walk.Offer), Assert.IsType<Offer.End>(walk.Offer).Standing));
        walk.Then(walk.Offer.Act!);
        Assert.Equal(("wash", Standing.AtAim), (Walk.Name(walk.Offer), Assert.IsType<Offer.End>(walk.Offer).Standing));
    }

    [Fact]
    public void Going_on_with_a_look_takes_what_one_hopes_for()
    {
        Walk walk = Walk.Begun().To("look");
        Assert.Equal([new JobEvent.Examined(Sample.Step("look"), "balance", "free")], walk.Then(walk.Offer.Act!));
    }

    [Fact]
    public void A_challenge_offers_nothing_by_itself()
    {
        Walk walk = Walk.Begun().To("let-down");
        Assert.Null(Assert.IsType<Offer.Answer>(walk.Offer).Act);
    }

    [Fact]
    public void A_whole_job_can_be_walked_by_its_offers_and_owes_nothing()
    {
        Walk walk = Walk.Begun().ToEnd();
        Assert.True(Assert.IsType<Offer.Close>(walk.Offer).Owed.IsNothing);
        Assert.Empty(walk.Job.Deviations);
        walk.Then(new JobAction.Complete(""));
        Assert.IsType<Phase.Complete>(walk.Job.Phase);
        Assert.IsType<Offer.Over>(walk.Offer);
    }

    [Fact]
    public void A_paused_job_offers_to_come_back_and_a_held_one_nothing()
    {
        Walk walk = Walk.Begun();
        walk.Then(new JobAction.Pause("the telephone"));
        Assert.IsType<Offer.Resume>(walk.Offer);
        walk.Then(new JobAction.Hold(HoldFor.Part, "a wheel", "covered", null));
        Assert.Null(Assert.IsType<Offer.Restart>(walk.Offer).Act);
    }
}
