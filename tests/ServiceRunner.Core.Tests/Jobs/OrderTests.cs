using ServiceRunner.Core.Jobs;
using static ServiceRunner.Core.Tests.Jobs.Sample;

namespace ServiceRunner.Core.Tests.Jobs;

/// <summary>Order comes from parts, power, after and stage gates; the list only suggests.</summary>
public class OrderTests
{
    private static IReadOnlyList<Blocker> Against(Walk walk, string step) => Blocker.Of(walk.Job, Sample.Plan.Find(new StepKey("1", step))!, Sample.Plan);

    [Fact]
    public void A_step_waits_for_the_one_it_comes_after()
    {
        Walk walk = Walk.Begun().To("look");
        Assert.Contains(new Blocker.StepFirst(new StepKey("1", "balance-off")), Against(walk, "train-off"));
    }

    [Fact]
    public void A_stage_opens_when_the_one_before_is_settled()
    {
        Walk walk = Walk.Begun().To("train-off");
        Assert.Contains(new Blocker.StageFirst("dismantling", 1), Against(walk, "wash"));
        walk.Then(walk.Offer.Act!);
        Assert.Empty(Against(walk, "wash"));
    }

    [Fact]
    public void A_part_under_power_waits_for_the_power_to_be_let_down()
    {
        Walk walk = Walk.Begun();
        Assert.Contains(new Blocker.PowerIsOn("bridge"), Against(walk, "train-off"));
        walk.To("train-off");
        Assert.Empty(Against(walk, "train-off"));
    }

    [Fact]
    public void What_covers_or_holds_a_part_comes_off_first_and_goes_on_last()
    {
        Walk walk = Walk.Begun().To("train-off");
        walk.Then(new JobAction.MovePart("screw", new PartPlace.InTray("B4")));
        Assert.Equal([new Blocker.AlreadyOff("screw")], Against(walk, "train-off"));
        walk.Then(new JobAction.MovePart("screw", new PartPlace.OnMovement()));
        walk.To("train-in");
        walk.Then(new JobAction.MovePart("wheel", new PartPlace.Lost()));
        Assert.Contains(new Blocker.NotAtHand("wheel", new PartPlace.Lost()), Against(walk, "train-in"));
    }

    [Fact]
    public void What_is_done_all_the_same_is_a_deviation_by_itself()
    {
        Walk walk = Walk.Begun().To("look");
        walk.Then(new JobAction.Do(Step("train-off")));
        Assert.Equal([Deviation.OutOfOrder], walk.Job.Deviations.Select(d => d.Event.Kind));
        Assert.Equal("before balance-off", walk.Job.Deviations[0].Event.Detail);
    }

    [Fact]
    public void A_workshop_may_want_a_reason_for_work_under_power()
    {
        Walk walk = Walk.Begun(Deviation.PowerOn);
        walk.Refused<Rejection.ReasonWanted>(new JobAction.Do(Step("train-off")));
        walk.Then(new JobAction.Do(Step("train-off"), "the spring is broken"));
        Assert.Contains(walk.Job.Deviations, d => d.Event is { Kind: Deviation.PowerOn, Reason: "the spring is broken" });
    }

    [Fact]
    public void A_step_that_a_fact_rules_out_is_not_in_the_job()
    {
        Walk walk = Walk.Begun();
        Assert.DoesNotContain(Sample.Plan.InForce(walk.Job), s => s.Key.Step == "stop-luminous");
        walk.Then(new JobAction.AnswerFact("luminous", "yes"));
        Assert.Equal("stop-luminous", Walk.Name(walk.Offer));
        walk.Refused<Rejection.NoSuchAnswer>(new JobAction.AnswerFact("luminous", "perhaps"));
    }
}
