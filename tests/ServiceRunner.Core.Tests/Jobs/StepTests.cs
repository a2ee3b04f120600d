using ServiceRunner.Core.Jobs;
using ServiceRunner.Core.Quantities;
using static ServiceRunner.Core.Tests.Jobs.Sample;

namespace ServiceRunner.Core.Tests.Jobs;

public class StepTests
{
    [Fact]
    public void Doing_a_step_moves_its_parts_to_their_compartments()
    {
        Walk walk = Walk.Begun().To("balance-off");
        Assert.Equal([new JobEvent.StepDone(Step("balance-off"), null), new JobEvent.PartMoved("balance", new PartPlace.InTray("A1"))], walk.Then(new JobAction.Do(Step("balance-off"))));
        Assert.Equal(new PartPlace.InTray("A1"), walk.Job.PlaceOf("balance"));
    }

    [Fact]
    public void A_step_that_is_done_is_not_done_twice()
    {
        Walk walk = Walk.Begun().To("train-off");
        walk.Refused<Rejection.AlreadySettled>(new JobAction.Do(Step("balance-off")));
    }

    [Fact]
    public void The_same_action_id_a_second_time_makes_no_event()
    {
        Walk walk = Walk.Begun().To("balance-off");
        walk.Then(new JobAction.Do(Step("balance-off")), "the-id");
        Assert.Empty(walk.Then(new JobAction.Do(Step("balance-off")), "the-id"));
        Assert.Empty(walk.Then(new JobAction.Pause(""), "the-id"));
    }

    [Fact]
    public void A_step_that_still_asks_cannot_be_done_over_its_question()
    {
        Walk walk = Walk.Begun().To("let-down");
        Assert.IsType<Ask.Confirm>(walk.Refused<Rejection.StillAsks>(new JobAction.Do(Step("let-down"))).Ask);
    }

    [Theory]
    [InlineData("yes")]
    [InlineData("OK")]
    [InlineData("done.")]
    public void A_confirm_does_not_take_a_bare_yes(string answer)
    {
        Walk walk = Walk.Begun().To("let-down");
        walk.Refused<Rejection.OnlyYes>(new JobAction.Answer(Step("let-down"), "confirm", new AnswerValue.Typed(answer)));
    }

    [Fact]
    public void The_last_answer_settles_the_step_and_does_its_work()
    {
        Walk walk = Walk.Begun().To("let-down");
        IReadOnlyList<JobEvent> events = walk.Then(new JobAction.Answer(Step("let-down"), "confirm", new AnswerValue.Typed("to the left")));
        Assert.Equal(
        [
            new JobEvent.Confirmed(Step("let-down"), "Which way does the fork fall?", "to the left"),
            new JobEvent.StepDone(Step("let-down"), null),
            new JobEvent.PowerChanged(Power.Off, null),
        ], events);
        Assert.Equal(Power.Off, walk.Job.Power);
    }

    [Fact]
    public void What_is_not_as_one_hopes_is_a_finding_by_itself()
    {
        Walk walk = Walk.Begun().To("look");
        walk.Then(new JobAction.Answer(Step("look"), "examine:balance", new AnswerValue.Chosen("free")));
        Assert.Empty(walk.Job.Findings);
        walk.Then(new JobAction.Answer(Step("look"), "examine:pivots", new AnswerValue.Chosen("bent")));
        JobEvent.FindingNoted finding = Assert.Single(walk.Job.Findings).Event;
        Assert.Equal(("pivots", "wheel", "bent"), (finding.Spot, finding.Part, finding.What));
    }

    [Fact]
    public void An_answer_that_is_no_choice_is_refused()
    {
        Walk walk = Walk.Begun().To("look");
        walk.Refused<Rejection.NotAChoice>(new JobAction.Answer(Step("look"), "examine:balance", new AnswerValue.Chosen("purple")));
    }

    [Theory]
    [InlineData("0,04", 0.04)]
    [InlineData("0.04 mm", 0.04)]
    public void A_measure_takes_point_and_comma_and_its_unit(string typed, double value)
    {
        Walk walk = Walk.Begun().To("shake");
        JobEvent.Measured measured = Assert.IsType<JobEvent.Measured>(walk.Then(new JobAction.Answer(Step("shake"), "measure:endshake", new AnswerValue.Typed(typed)))[0]);
        Assert.Equal((decimal)value, measured.Value.Value);
        Assert.Empty(walk.Job.Deviations);
    }

    [Fact]
    public void A_measure_outside_its_limits_is_a_deviation_and_a_finding_with_its_figures()
    {
        Walk walk = Walk.Begun().To("shake");
        walk.Then(new JobAction.Answer(Step("shake"), "measure:endshake", new AnswerValue.Typed("0.08")));
        Assert.Equal("endshake: 0.08 mm, limits 0.03 to 0.05", Assert.Single(walk.Job.Deviations).Event.Detail);
        Assert.Equal("0.08 mm, limits 0.03 to 0.05", Assert.Single(walk.Job.Findings).Event.What);
    }

    [Theory]
    [InlineData("wide", TypedNumber.Fault.NotANumber)]
    [InlineData("1,234", TypedNumber.Fault.Ambiguous)]
    public void What_is_no_number_is_refused_by_name(string typed, TypedNumber.Fault fault)
    {
        Walk walk = Walk.Begun().To("shake");
        Assert.Equal(fault, walk.Refused<Rejection.NotANumber>(new JobAction.Answer(Step("shake"), "measure:endshake", new AnswerValue.Typed(typed))).Fault);
    }

    [Fact]
    public void A_rate_is_typed_as_rate_amplitude_and_beat_error()
    {
        Walk walk = Walk.Begun().To("rates");
        JobEvent.RateTaken rate = Assert.IsType<JobEvent.RateTaken>(walk.Then(new JobAction.Answer(Step("rates"), "rate:1:dial-up", new AnswerValue.Typed("+4 285 0,2")))[0]);
        Assert.Equal((4m, 285m, 0.2m), (rate.Rate.Value, rate.Amplitude!.Value.Value, rate.BeatError!.Value.Value));
        walk.Refused<Rejection.NumberOutOfSense>(new JobAction.Answer(Step("rates"), "rate:1:dial-down", new AnswerValue.Typed("4 720")));
    }

    [Fact]
    public void Each_oiling_point_is_served_on_its_own_with_its_role_and_bottle_and_the_dry_one_is_not_asked_for()
    {
        Walk walk = Walk.Begun().To("oil");
        Assert.Equal(new JobEvent.PointServed(Step("oil"), "upper", "fast-pivot", "light", "L-1"), Assert.Single(walk.Then(walk.Offer.Act!)));
        Assert.Equal(new JobEvent.PointServed(Step("oil"), "lower", "slow-pivot", "heavy", ""), walk.Then(walk.Offer.Act!)[0]);
        Assert.True(walk.Job.IsSettled(new StepKey("1", "oil")));
    }

    [Fact]
    public void Another_lubricant_is_a_deviation()
    {
        Walk walk = Walk.Begun().To("oil");
        walk.Then(new JobAction.Answer(Step("oil"), "oil:upper", new AnswerValue.Served("heavy", "H-9")));
        Assert.Equal(Deviation.PointOtherLubricant, Assert.Single(walk.Job.Deviations).Event.Kind);
        Assert.Equal("H-9", walk.Job.Points["upper"].Event.Batch);
    }

    [Fact]
    public void Leaving_a_question_settles_it_and_says_so()
    {
        Walk walk = Walk.Begun().To("shake");
        walk.Then(new JobAction.Leave(Step("shake"), "measure:endshake"));
        Assert.True(walk.Job.IsSettled(new StepKey("1", "shake")));
        Assert.Equal(Deviation.MeasureLeft, Assert.Single(walk.Job.Deviations).Event.Kind);
    }

    [Fact]
    public void Passing_over_is_a_deviation_and_asks_for_a_reason_only_where_the_workshop_wants_one()
    {
        Walk easy = Walk.Begun().To("look");
        easy.Then(new JobAction.Skip(Step("look")));
        Assert.Equal(Deviation.Skipped, Assert.Single(easy.Job.Deviations).Event.Kind);

        Walk strict = Walk.Begun(Deviation.Skipped).To("look");
        Assert.Equal([Deviation.Skipped], strict.Refused<Rejection.ReasonWanted>(new JobAction.Skip(Step("look"))).Kinds);
        strict.Then(new JobAction.Skip(Step("look"), "seen on arrival"));
        Assert.Equal("seen on arrival", Assert.Single(strict.Job.Deviations).Event.Reason);
    }

    [Fact]
    public void A_step_is_done_again_as_another_occurrence()
    {
        Walk walk = Walk.Begun().To("train-off");
        Assert.Equal([new JobEvent.StepBegunAgain(Step("balance-off", 2))], walk.Then(new JobAction.Again(new StepKey("1", "balance-off"))));
        walk.Refused<Rejection.AlreadySettled>(new JobAction.Do(Step("balance-off")));
        walk.Then(new JobAction.MovePart("balance", new PartPlace.OnMovement()));
        walk.Then(new JobAction.Do(Step("balance-off", 2)));
        Assert.True(walk.Job.IsSettled(new StepKey("1", "balance-off")));
        Assert.Single(walk.Job.EarlierSteps);
    }

    [Fact]
    public void What_was_done_away_from_the_screen_is_entered_afterwards_and_marked()
    {
        Walk walk = Walk.Begun().To("look");
        DateTimeOffset when = walk.Now.Wall.AddHours(-1);
        walk.Then(new JobAction.EnterAfterwards([Step("look"), Step("balance-off")], when));
        Assert.Equal(when, walk.Job.Steps[new StepKey("1", "balance-off")].End!.Remembered);
        Assert.Equal(new PartPlace.InTray("A1"), walk.Job.PlaceOf("balance"));
        walk.Refused<Rejection.InTheFuture>(new JobAction.EnterAfterwards([Step("train-off")], walk.Now.Wall.AddHours(1)));
    }
}
