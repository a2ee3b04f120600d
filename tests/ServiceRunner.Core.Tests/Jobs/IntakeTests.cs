using ServiceRunner.Core.Jobs;
using ServiceRunner.Core.Quantities;
using ServiceRunner.Core.Workshops;

namespace ServiceRunner.Core.Tests.Jobs;

/// <summary>What came in and was agreed: noted at booking or later, changed, taken back.</summary>
public class IntakeTests
{
    private static readonly DateOnly Friday = new(2026, 3, 20);

    private static readonly JobAction.NoteIntake Noted = new(" K 114 ", "strap", Friday, TypedNumber.Of(380), "glass cracked");

    private static Decision Booked(JobAction.NoteIntake? intake, string currency = "EUR")
    {
        Workshop workshop = Sample.Workshop() with { Currency = currency };
        Circumstances at = new(Sample.Plan, workshop, Sample.Morning, "AA", "a1", new HashSet<string>(), new Dictionary<string, string>());
        return Decider.Decide(null, new JobAction.Open("26-001", "A watch", "01OWNER", [], new Dictionary<string, string>(), intake), at);
    }

    private static IReadOnlyList<JobEvent> Events(Decision decision) => Assert.IsType<Decision.Accepted>(decision).Events;

    [Fact]
    public void Booking_with_an_intake_is_one_entry() => Assert.Equal(
        [new JobEvent.Opened("26-001", "A watch", "01OWNER"), new JobEvent.IntakeNoted("K 114", "strap", Friday, TypedNumber.Of(380), "EUR", "glass cracked")],
        Events(Booked(Noted)));

    [Fact]
    public void Booking_with_nothing_noted_notes_nothing()
    {
        Assert.Equal([new JobEvent.Opened("26-001", "A watch", "01OWNER")], Events(Booked(new JobAction.NoteIntake("", " ", null, null, ""))));
        Assert.Equal([new JobEvent.Opened("26-001", "A watch", "01OWNER")], Events(Booked(null)));
    }

    [Fact]
    public void A_workshop_without_a_currency_leaves_the_figure_alone() =>
        Assert.Equal("", Events(Booked(Noted, currency: "")).OfType<JobEvent.IntakeNoted>().Single().Currency);

    [Fact]
    public void A_later_intake_replaces_the_earlier_one_and_the_same_again_is_no_event()
    {
        Walk walk = new();
        Assert.Equal(Intake.None, walk.Job.Intake);
        Assert.Empty(walk.Then(new JobAction.NoteIntake("", "", null, null, "")));
        Assert.Single(walk.Then(Noted));
        Assert.Empty(walk.Then(Noted));
        walk.Then(Noted with { Promised = Friday.AddDays(7), Accessories = "" });
        Assert.Equal(new Intake("K 114", "", Friday.AddDays(7), TypedNumber.Of(380), "", "glass cracked"), walk.Job.Intake);
    }

    [Fact]
    public void A_limit_keeps_the_currency_that_it_was_agreed_in()
    {
        Job job = Fold.All("job", [new LogEntry(1, "a", "AA", Sample.Morning, Events(Booked(Noted, "crowns")))])!;
        Workshop workshop = Sample.Workshop() with { Currency = "EUR" };
        Circumstances at = new(Sample.Plan, workshop, Sample.Morning, "AA", "b", new HashSet<string>(), new Dictionary<string, string>());
        JobEvent.IntakeNoted Then(JobAction.NoteIntake x) => (JobEvent.IntakeNoted)Events(Decider.Decide(job, x, at)).Single();
        Assert.Equal("crowns", Then(Noted with { Promised = null }).Currency);
        Assert.Equal("EUR", Then(Noted with { CostLimit = TypedNumber.Of(400) }).Currency);
        Assert.Equal("", Then(Noted with { CostLimit = null }).Currency);
    }

    [Fact]
    public void A_limit_below_nought_is_refused_also_at_booking()
    {
        Walk walk = new();
        JobAction.NoteIntake below = Noted with { CostLimit = TypedNumber.Of(-1) };
        walk.Refused<Rejection.BelowNought>(below);
        Assert.IsType<Rejection.BelowNought>(Assert.IsType<Decision.Refused>(Booked(below)).Why);
    }

    [Fact]
    public void It_can_be_changed_until_the_job_is_over_and_taken_back()
    {
        Walk walk = Walk.Begun();
        walk.Then(Noted);
        walk.Then(new JobAction.Hold(HoldFor.Owner, "", "covered", null));
        walk.Then(Noted with { Promised = Friday.AddDays(9) });
        walk.Then(new JobAction.TakeBack());
        Assert.Equal(Friday, walk.Job.Intake.Promised);
        walk.Then(new JobAction.Stop("no part to be had"));
        walk.Refused<Rejection.NotNow>(Noted with { Promised = null });
    }

    [Fact]
    public void An_owner_can_be_named_later_and_the_same_again_is_no_event()
    {
        Walk walk = new();
        Assert.Equal([new JobEvent.OwnerNamed("01OTHER")], walk.Then(new JobAction.NameOwner("01OTHER")));
        Assert.Empty(walk.Then(new JobAction.NameOwner("01OTHER")));
        Assert.Equal("01OTHER", walk.Job.Owner);
    }

    [Theory]
    [InlineData(-1, PromiseStanding.Past)]
    [InlineData(0, PromiseStanding.Near)]
    [InlineData(2, PromiseStanding.Near)]
    [InlineData(3, PromiseStanding.Ahead)]
    public void A_promise_is_near_from_two_days_off(int days, PromiseStanding standing) => Assert.Equal(standing, Promise.Standing(Friday.AddDays(days), Friday));

    [Fact]
    public void No_promise_stands_nowhere() => Assert.Equal(PromiseStanding.None, Promise.Standing(null, Friday));

    [Fact]
    public void What_another_answer_does_is_known_before_it_is_given()
    {
        Walk walk = Walk.Begun(); // luminous: no
        Assert.Equal(new FactChange(1, 0, 0), FactChange.Of(walk.Job, Sample.Plan, "luminous", "yes"));
        Assert.Equal(new FactChange(0, 0, 0), FactChange.Of(walk.Job, Sample.Plan, "luminous", "no"));
        walk.Then(new JobAction.AnswerFact("luminous", "yes"));
        Assert.Equal(new FactChange(0, 1, 0), FactChange.Of(walk.Job, Sample.Plan, "luminous", "no"));
        walk.Then(new JobAction.Do(Sample.Step("stop-luminous")));
        Assert.Equal(new FactChange(0, 1, 1), FactChange.Of(walk.Job, Sample.Plan, "luminous", "no"));
    }
}
