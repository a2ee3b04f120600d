using ServiceRunner.Core.Jobs;
using ServiceRunner.Core.Quantities;
using static ServiceRunner.Core.Tests.Jobs.Sample;

namespace ServiceRunner.Core.Tests.Jobs;

public class SoakTests
{
    private static Walk Washing()
    {
        Walk walk = Walk.Begun().To("wash");
        walk.Then(walk.Offer.Act!);
        return walk;
    }

    [Fact]
    public void Beginning_a_soak_pins_the_figures_and_takes_a_free_jar()
    {
        Walk walk = Walk.Begun().To("wash");
        walk.JarsInUse.Add("J1");
        JobEvent.SoakBegun begun = Assert.IsType<JobEvent.SoakBegun>(Assert.Single(walk.Then(walk.Offer.Act!)));
        Assert.Equal(("J2", "cleaner", Minutes(3, 5, 8)), (begun.Jar, begun.Solution, begun.Window));
        Assert.Equal(["bridge", "wheel", "screw"], begun.Parts);
    }

    [Fact]
    public void A_jar_with_a_basket_in_it_takes_no_other()
    {
        Walk walk = Walk.Begun().To("wash");
        walk.JarsInUse.Add("J1");
        walk.Refused<Rejection.JarInUse>(new JobAction.BeginSoak(Step("wash"), "J1"));
        walk.JarsInUse.Add("J2");
        Assert.Null(Assert.IsType<Offer.Begin>(walk.Offer).Act);
    }

    [Fact]
    public void While_a_soak_counts_the_hands_go_on_with_the_next_step()
    {
        Walk walk = Washing();
        Assert.Equal("balance-rinse", Walk.Name(walk.Offer));
        Assert.NotNull(walk.Job.SoakOf("wheel"));
    }

    [Fact]
    public void A_part_in_a_soak_keeps_its_next_bath_waiting()
    {
        Walk walk = Washing();
        Assert.Contains(Blocker.Of(walk.Job, Sample.Plan.Find(new StepKey("1", "dry"))!, Sample.Plan), b => b is Blocker.InSoak { Part: "wheel" });
    }

    [Fact]
    public void Ending_in_the_window_is_no_deviation_and_settles_the_step()
    {
        Walk walk = Washing();
        walk.Now = walk.Now.Plus(TimeSpan.FromMinutes(5));
        Assert.Equal([new JobEvent.SoakEnded(Step("wash"), TimeSpan.FromMinutes(5), true), new JobEvent.StepDone(Step("wash"), null)], walk.Then(new JobAction.EndSoak(Step("wash"))));
    }

    [Theory]
    [InlineData(2, Deviation.SoakShort, "120 s against 180 s")]
    [InlineData(9, Deviation.SoakLong, "540 s against 480 s")]
    public void Ending_outside_the_window_is_a_deviation_with_both_figures(double minutes, string kind, string detail)
    {
        Walk walk = Washing();
        walk.Now = walk.Now.Plus(TimeSpan.FromMinutes(minutes));
        walk.Then(new JobAction.EndSoak(Step("wash")));
        Assert.Equal((kind, detail), (walk.Job.Deviations[0].Event.Kind, walk.Job.Deviations[0].Event.Detail));
    }

    [Fact]
    public void Within_one_boot_the_length_does_not_follow_the_wall_clock()
    {
        Walk walk = Washing();
        walk.Now = walk.Now.Plus(TimeSpan.FromMinutes(5)) with { Wall = walk.Now.Wall.AddHours(-3) };
        JobEvent.SoakEnded ended = walk.Then(new JobAction.EndSoak(Step("wash"))).OfType<JobEvent.SoakEnded>().Single();
        Assert.Equal((TimeSpan.FromMinutes(5), true), (ended.Length, ended.Certain));
    }

    [Fact]
    public void Across_boots_the_length_is_the_wall_clocks_and_says_so()
    {
        Walk walk = Washing();
        walk.Now = new Moment(walk.Now.Wall.AddMinutes(6), "boot-2", TimeSpan.FromMinutes(1));
        JobEvent.SoakEnded ended = walk.Then(new JobAction.EndSoak(Step("wash"))).OfType<JobEvent.SoakEnded>().Single();
        Assert.Equal((TimeSpan.FromMinutes(6), false), (ended.Length, ended.Certain));
    }

    [Fact]
    public void A_soak_can_be_ended_while_the_job_waits()
    {
        Walk walk = Washing();
        walk.Then(new JobAction.Hold(HoldFor.Owner, "", "covered", null));
        walk.Now = walk.Now.Plus(TimeSpan.FromMinutes(5));
        walk.Then(new JobAction.EndSoak(Step("wash")));
        Assert.Empty(walk.Job.RunningSoaks);
    }

    [Fact]
    public void More_time_moves_the_aim_past_now_and_leaves_the_most()
    {
        Walk walk = Washing();
        walk.Now = walk.Now.Plus(TimeSpan.FromMinutes(6));
        Assert.Equal([new JobEvent.SoakLengthened(Step("wash"), TimeSpan.FromMinutes(7))], walk.Then(new JobAction.LengthenSoak(Step("wash"), TimeSpan.FromMinutes(1))));
        Assert.Equal(Minutes(3, 7, 8), walk.Job.Soaks[Step("wash")].Window);
        walk.Now = walk.Now.Plus(TimeSpan.FromMinutes(3));
        walk.Then(new JobAction.EndSoak(Step("wash")));
        Assert.Equal(Deviation.SoakLong, Assert.Single(walk.Job.Deviations).Event.Kind);
        walk.Refused<Rejection.ClockDoesNotRun>(new JobAction.LengthenSoak(Step("wash"), TimeSpan.FromMinutes(1)));
    }

    [Fact]
    public void An_alarm_is_answered_once_and_the_next_more_urgent_one_wants_its_own_answer()
    {
        Walk walk = Washing();
        walk.Refused<Rejection.NoAlarm>(new JobAction.AnswerAlarm(Step("wash")));
        walk.Now = walk.Now.Plus(TimeSpan.FromMinutes(5));
        Assert.Equal([new JobEvent.AlarmAnswered(Step("wash"), Urgency.Medium)], walk.Then(new JobAction.AnswerAlarm(Step("wash"))));
        walk.Refused<Rejection.NoAlarm>(new JobAction.AnswerAlarm(Step("wash")));
        walk.Now = walk.Now.Plus(TimeSpan.FromMinutes(4));
        Assert.Equal([new JobEvent.AlarmAnswered(Step("wash"), Urgency.High)], walk.Then(new JobAction.AnswerAlarm(Step("wash"))));
        walk.Refused<Rejection.NothingTyped>(new JobAction.NoteDeviation(null, " "));
    }
}
