using ServiceRunner.Core.Jobs;
using static ServiceRunner.Core.Tests.Jobs.Sample;

namespace ServiceRunner.Core.Tests.Jobs;

public class TakingBackTests
{
    [Fact]
    public void Taking_back_leaves_nothing_of_the_act_in_the_state_and_all_of_it_in_the_log()
    {
        Walk walk = Walk.Begun().To("balance-off");
        Job before = walk.Job;
        walk.Then(new JobAction.Do(Step("balance-off")));
        int done = walk.Job.Log.Count;
        Assert.Equal([new JobEvent.TakenBack(done)], walk.Then(new JobAction.TakeBack()));
        Assert.Equal(before.PlaceOf("balance"), walk.Job.PlaceOf("balance"));
        Assert.False(walk.Job.IsSettled(new StepKey("1", "balance-off")));
        Assert.Equal(done + 1, walk.Job.Log.Count);
    }

    [Fact]
    public void Taking_back_the_end_of_a_soak_lets_it_count_on_from_its_beginning()
    {
        Walk walk = Walk.Begun().To("wash");
        walk.Then(walk.Offer.Act!);
        walk.Now = walk.Now.Plus(TimeSpan.FromMinutes(4));
        walk.Then(new JobAction.EndSoak(Step("wash")));
        walk.Then(new JobAction.TakeBack());
        walk.Now = walk.Now.Plus(TimeSpan.FromMinutes(1));
        Assert.Equal(TimeSpan.FromMinutes(5), Assert.Single(walk.Job.RunningSoaks).Length(walk.Now).Length);
    }

    [Fact]
    public void Again_and_again_it_takes_back_the_one_before()
    {
        Walk walk = Walk.Begun().To("balance-off");
        walk.Then(new JobAction.TakeBack());
        walk.Then(new JobAction.TakeBack());
        Assert.Equal("look", Walk.Name(walk.Offer));
        Assert.Equal(2, Assert.IsType<Offer.Answer>(walk.Offer).Left);
    }

    [Fact]
    public void A_phase_has_its_own_way_back_and_the_opening_none()
    {
        Walk walk = new();
        walk.Refused<Rejection.NothingToTakeBack>(new JobAction.TakeBack());
        walk.Refused<Rejection.CannotTakeBack>(new JobAction.TakeBack(1));
        walk.Then(new JobAction.Start());
        walk.Refused<Rejection.CannotTakeBack>(new JobAction.TakeBack(2));
    }
}
