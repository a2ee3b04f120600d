using ServiceRunner.Core.Benches;
using ServiceRunner.Core.Jobs;
using ServiceRunner.Core.Lubricants;
using ServiceRunner.Core.Procedures;
using ServiceRunner.Core.Quantities;
using ServiceRunner.Core.Tests.Jobs;
using ServiceRunner.Core.Workshops;

namespace ServiceRunner.Core.Tests.Lubricants;

/// <summary>What speaks against a bottle at a point, before the act and in its record; points that must stay dry.</summary>
public class PointTests
{
    private static readonly DateOnly Today = new(2026, 3, 2);

    private static Workshop Shop(decimal viscosity = 120, params string[] reasonsFor) => Sample.Workshop(reasonsFor) with
    {
        Lubricants =
        [
            new Lubricant { Id = Sample.P("light"), Name = "Light oil", Roles = Sample.Ps("fast-pivot"), Viscosity = new ViscosityAt(viscosity, 20) },
            new Lubricant { Id = Sample.P("heavy"), Name = "Heavy oil", Roles = Sample.Ps("slow-pivot") },
        ],
    };

    private static Circumstances At(Workshop workshop, DateOnly? goodUntil = null, decimal? celsius = null) =>
        new(Sample.Plan, workshop, Sample.Morning, "AA", "serve", new HashSet<string>(), new Dictionary<string, string> { ["light"] = "L-1" })
        {
            Stock = new LubricantStock { Bottles = [new Bottle("light", "L-1", null, goodUntil)], CelsiusToday = celsius },
        };

    private static IReadOnlyList<JobEvent.DeviationNoted> Serve(Circumstances at, string lubricant = "light", string reason = "")
    {
        Job job = Walk.Begun().To("oil").Job;
        Decision decision = Decider.Decide(job, new JobAction.Answer(Sample.Step("oil"), "oil:upper", new AnswerValue.Served(lubricant, lubricant == "light" ? "L-1" : ""), reason), at);
        return [.. Assert.IsType<Decision.Accepted>(decision).Events.OfType<JobEvent.DeviationNoted>()];
    }

    [Fact]
    public void A_good_bottle_of_the_right_oil_makes_no_deviation() => Assert.Empty(Serve(At(Shop(), Today)));

    [Fact]
    public void A_bottle_past_its_date_is_a_deviation_with_both_dates() =>
        Assert.Equal([new JobEvent.DeviationNoted("lubricant-past-date", Sample.Step("oil"), "upper: light L-1 good until 2026-03-01, used 2026-03-02", "")], Serve(At(Shop(), Today.AddDays(-1))));

    [Fact]
    public void A_viscosity_outside_the_role_is_a_deviation_with_the_figures_compared() =>
        Assert.Equal(
            [new JobEvent.DeviationNoted("point-other-viscosity", Sample.Step("oil"), "upper: light 60 mm2/s at 20 °C, fast-pivot 80 to 180 mm2/s by common practice", "")],
            Serve(At(Shop(60), Today)));

    [Fact]
    public void Another_lubricant_is_still_a_deviation() =>
        Assert.Equal("point-other-lubricant", Assert.Single(Serve(At(Shop()), "heavy")).Kind);

    [Fact]
    public void The_workshop_may_want_a_reason()
    {
        Job job = Walk.Begun().To("oil").Job;
        JobAction.Answer serve = new(Sample.Step("oil"), "oil:upper", new AnswerValue.Served("light", "L-1"));
        Circumstances at = At(Shop(120, "lubricant-past-date"), Today.AddDays(-1));
        Assert.Equal(["lubricant-past-date"], Assert.IsType<Rejection.ReasonWanted>(Assert.IsType<Decision.Refused>(Decider.Decide(job, serve, at)).Why).Kinds);
        Assert.IsType<Decision.Accepted>(Decider.Decide(job, serve with { Reason = "the new one is on its way" }, at));
    }

    [Fact]
    public void What_stands_before_the_act_is_what_its_record_says()
    {
        Circumstances at = At(Shop(60), Today.AddDays(-1));
        IReadOnlyList<PointConcern> before = PointConcern.Of(Sample.Procedure.OilingPoints[0], at.Workshop.Lubricants[0], "L-1", at);
        Assert.Equal(before.Select(c => (c.Kind, c.Brief(Sample.Procedure.OilingPoints[0]))), Serve(at).Select(d => (d.Kind, d.Detail)));
        Assert.Equal(2, before.Count);
    }

    [Fact]
    public void Entered_afterwards_the_bottle_is_held_against_the_day_of_the_work()
    {
        Job job = Walk.Begun().To("oil").Job;
        Circumstances at = At(Shop(), Today.AddDays(-1));
        IReadOnlyList<JobEvent> Enter(DateTimeOffset when) => Assert.IsType<Decision.Accepted>(Decider.Decide(job, new JobAction.EnterAfterwards([Sample.Step("oil")], when), at)).Events;
        Assert.Empty(Enter(Sample.Morning.Wall.AddDays(-1)).OfType<JobEvent.DeviationNoted>());
        Assert.Equal("lubricant-past-date", Assert.Single(Enter(Sample.Morning.Wall.AddHours(-1)).OfType<JobEvent.DeviationNoted>()).Kind);
    }

    [Fact]
    public void The_lubricant_chosen_for_a_role_goes_before_the_first_of_the_shelf()
    {
        Circumstances at = At(Shop()) with { Stock = new LubricantStock { Chosen = new Dictionary<string, string> { ["fast-pivot"] = "heavy" } } };
        Assert.Equal("heavy", at.LubricantFor("fast-pivot")!.Id.Value);
        Assert.Equal("heavy", at.LubricantFor("slow-pivot")!.Id.Value);
        Assert.Equal("light", At(Shop()).LubricantFor("fast-pivot")!.Id.Value);
    }

    private static readonly Procedure Dry = Sample.Procedure with
    {
        Stages = [new Stage(Sample.P("reassembly"), "Reassembly", [], [new Step { Id = Sample.P("look"), Do = "See what is dry", StaysDry = Sample.Ps("teeth", "upper") }])],
    };

    private static (Job Job, Circumstances At) AtDry()
    {
        Plan plan = new([new Joined("1", Dry)]);
        Job job = new Walk().Job with { Phase = new Phase.Running(Sample.Morning) };
        return (job, At(Shop()) with { Plan = plan });
    }

    [Fact]
    public void Points_that_must_stay_dry_are_one_question_that_going_on_does_not_answer()
    {
        (Job job, Circumstances at) = AtDry();
        Offer.Answer offer = Assert.IsType<Offer.Answer>(Offer.Of(job, at));
        Ask.StaysDry ask = Assert.IsType<Ask.StaysDry>(offer.Ask);
        Assert.Null(offer.Act);
        Assert.Equal(["teeth"], ask.Points.Select(p => p.Id.Value));
        Assert.Equal(["all dry", "one is not"], ask.Choices);
    }

    [Theory]
    [InlineData("all dry", true, "")]
    [InlineData("one is not", false, "one is not")]
    public void One_that_is_not_dry_is_a_finding(string choice, bool dry, string finding)
    {
        (Job job, Circumstances at) = AtDry();
        IReadOnlyList<JobEvent> events = Assert.IsType<Decision.Accepted>(Decider.Decide(job, new JobAction.Answer(Sample.Step("look"), "stays-dry", new AnswerValue.Chosen(choice)), at)).Events;
        Assert.Equal(dry, Assert.Single(events.OfType<JobEvent.DrynessSeen>()).AllDry);
        Assert.Equal(finding, string.Concat(events.OfType<JobEvent.FindingNoted>().Select(f => f.What)));
        Job after = Fold.Next(job.Id, job, new LogEntry(job.Log.Count + 1, "look", "AA", Sample.Morning, events));
        Assert.True(after.Dry.ContainsKey("teeth"));
        Assert.True(after.IsSettled(new StepKey("1", "look")));
    }

    [Fact]
    public void Bottles_stand_beside_the_one_in_use_until_they_are_struck_off()
    {
        Workshop workshop = Shop();
        Bench bench = new() { Id = "bench" };
        int number = 0;
        void Act(BenchAction action, Moment? at = null)
        {
            (IReadOnlyList<BenchEvent> events, BenchRejection why) = BenchDecider.Decide(bench, action, workshop, at ?? Sample.Morning);
            Assert.Equal(BenchRejection.None, why);
            bench = bench.After(new BenchEntry(++number, $"b{number}", "AA", at ?? Sample.Morning, events));
            // The same a second time makes nothing.
            if (action is not (BenchAction.FinishBottle or BenchAction.CarryForward)) Assert.Empty(BenchDecider.Decide(bench, action, workshop, at ?? Sample.Morning).Events);
        }
        Act(new BenchAction.TakeBatch("light", "L-1", Today.AddDays(-700), null));
        Act(new BenchAction.NoteBottle("light", "L-2", Today.AddDays(-1), null));
        Assert.Equal(["L-1", "L-2"], bench.BottlesOf("light").Select(b => b.Batch));
        Act(new BenchAction.TakeBatch("light", "L-2", null, null));
        Assert.Equal(Today.AddDays(-1), bench.Batches["light"].OpenedOn);
        Assert.Equal(["L-2", "L-1"], bench.BottlesOf("light").Select(b => b.Batch));
        Act(new BenchAction.ReadTemperature(26));
        Assert.Equal(26, bench.CelsiusOn(Sample.Morning.Wall.AddHours(5)));
        Assert.Null(bench.CelsiusOn(Sample.Morning.Wall.AddDays(1)));
        Bench carried = bench;
        Act(new BenchAction.CarryForward());
        Assert.Equal(carried.Bottles(), bench.Bottles());
        Assert.Equal(carried.Temperature, bench.Temperature);
        Act(new BenchAction.FinishBottle("light", "L-2"));
        Assert.Equal(["L-1"], bench.BottlesOf("light").Select(b => b.Batch));
        Assert.Empty(bench.Batches);
    }

    [Fact]
    public void Dates_that_make_no_sense_are_refused()
    {
        Bench bench = new() { Id = "bench" };
        BenchRejection Why(BenchAction action) => BenchDecider.Decide(bench, action, Shop(), Sample.Morning).Why;
        Assert.Equal(BenchRejection.OpenedInFuture, Why(new BenchAction.TakeBatch("light", "L-1", Today.AddDays(1), null)));
        Assert.Equal(BenchRejection.DatesCrossed, Why(new BenchAction.NoteBottle("light", "L-1", Today, Today.AddDays(-1))));
        Assert.Equal(BenchRejection.NoSuchBottle, Why(new BenchAction.FinishBottle("light", "L-9")));
        Assert.Equal(BenchRejection.NoSuchTemperature, Why(new BenchAction.ReadTemperature(210)));
        Assert.Equal(BenchRejection.NothingTyped, Why(new BenchAction.NoteBottle("light", "  ", null, null)));
    }
}
