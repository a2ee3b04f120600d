using ServiceRunner.Core.Jobs;
using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Core.Tests.Jobs.Ledgers;

/// <summary>A finding brings its repair in: what depends on it waits, the rest goes on.</summary>
public class RepairTests
{
    private static StepRef In(string instance, string step) => new(instance, step, 1);

    private static Walk BentPivot(out string finding)
    {
        Walk walk = Walk.Begun().To("look");
        walk.Then(new JobAction.Answer(Sample.Step("look"), "examine:balance", new AnswerValue.Chosen("free")));
        walk.Then(new JobAction.Answer(Sample.Step("look"), "examine:pivots", new AnswerValue.Chosen("bent")));
        finding = Assert.Single(walk.Job.Findings).Event.Finding;
        return walk;
    }

    [Fact]
    public void The_step_where_it_was_seen_names_the_repair()
    {
        Walk walk = BentPivot(out string finding);
        FindingEntry entry = FindingsLedger.Find(walk.Job, walk.Plan, finding)!;
        Assert.Equal("new-pivot", entry.Suggested);
        Assert.Equal("wheel", entry.Noted.Event.Part);
        Assert.Equal(FindingStanding.Undecided, entry.Standing);
    }

    [Fact]
    public void What_fits_the_part_waits_and_the_rest_may_go_on()
    {
        Walk walk = BentPivot(out string finding);
        string instance = walk.BringIn(finding, "wheel");
        PlannedStep fit = walk.Plan.Find(new StepKey("1", "train-in"))!;
        Blocker.RepairFirst wait = Assert.Single(Blocker.Of(walk.Job, fit, walk.Plan).OfType<Blocker.RepairFirst>());
        Assert.Equal(("wheel", instance, 3), (wait.Part, wait.Instance, wait.Left));
        Assert.Empty(Blocker.Of(walk.Job, walk.Plan.Find(new StepKey("1", "balance-off"))!, walk.Plan));
        Assert.Equal(FindingStanding.InRepair, FindingsLedger.Find(walk.Job, walk.Plan, finding)!.Standing);
    }

    [Fact]
    public void The_basket_goes_in_without_the_part_in_repair_and_it_is_washed_when_it_comes_back()
    {
        Walk walk = BentPivot(out string finding);
        string instance = walk.BringIn(finding, "wheel");
        walk.To("wash");
        Assert.Equal(["bridge", "screw"], walk.Then(walk.Offer.Act!).OfType<JobEvent.SoakBegun>().Single().Parts);
        walk.ToEnd();
        Assert.IsType<Blocker.NotCleaned>(Assert.Single(Assert.IsType<Offer.Stuck>(walk.Offer).Blockers));
        walk.Then(new JobAction.WashAgain("wheel"));
        walk.ToEnd();
        Assert.Empty(Assert.IsType<Offer.Close>(walk.Offer).Owed.Parts);
        Assert.Empty(walk.Job.Deviations);
    }

    [Fact]
    public void A_repair_that_was_taken_up_is_gone_on_with_until_its_end()
    {
        Walk walk = BentPivot(out string finding);
        string instance = walk.BringIn(finding, "wheel");
        walk.Then(new JobAction.Do(In(instance, "out")));
        Assert.Equal(new StepKey(instance, "in"), walk.Offer.About!.Key);
        walk.Then(new JobAction.Answer(In(instance, "in"), $"origin:{instance}/old-pivot", new AnswerValue.Chosen("made new")));
        Assert.Equal(new StepKey(instance, "true"), walk.Offer.About!.Key);
        walk.Then(walk.Offer.Act!);
        Assert.Equal("1", walk.Offer.About!.Key.Instance);
        Assert.Equal(FindingStanding.Settled, FindingsLedger.Find(walk.Job, walk.Plan, finding)!.Standing);
        Assert.Equal(Origin.MadeNew, Assert.Single(walk.Job.Renewals).Event.Origin);
    }

    [Fact]
    public void Two_repairs_by_one_procedure_have_parts_facts_and_steps_of_their_own()
    {
        Walk walk = Walk.Begun();
        string first = walk.BringIn(walk.Find("wheel", "bent"), "wheel"), second = walk.BringIn(walk.Find("balance", "worn"), "balance");
        Assert.NotEqual(first, second);
        walk.Then(new JobAction.Do(In(first, "out")));
        Assert.IsType<PartPlace.InTray>(walk.Job.PlaceOf($"{first}/old-pivot"));
        Assert.IsType<PartPlace.OnMovement>(walk.Job.PlaceOf($"{second}/old-pivot"));
        walk.Then(new JobAction.AnswerFact($"{second}/hard", "yes"));
        Assert.Equal(Belonging.No, walk.Plan.Find(new StepKey(first, "soften"))!.BelongsTo(walk.Job));
        Assert.Equal(Belonging.Yes, walk.Plan.Find(new StepKey(second, "soften"))!.BelongsTo(walk.Job));
        Assert.Equal("balance", walk.Plan.Find(new StepKey(second, "true"))!.Step.Examine[0].Part!.Value.Value);
    }

    [Fact]
    public void The_same_repair_for_the_same_finding_comes_again_only_after_its_end()
    {
        Walk walk = Walk.Begun();
        string finding = walk.Find("wheel", "bent"), instance = walk.BringIn(finding, "wheel");
        JobAction again = new JobAction.BringIn(finding, "wheel", Walk.Repair, new Dictionary<string, string>());
        walk.Refused<Rejection.RepairAlreadyIn>(again);
        walk.Then(new JobAction.GiveUpRepair(instance, "a new wheel is better"));
        Assert.Contains(walk.Job.Deviations, d => d.Event is { Kind: Deviation.Skipped, Detail: "New pivot", Reason: "a new wheel is better" });
        // Nothing was mended by that: the finding is as open as before.
        Assert.Equal(FindingStanding.ToBeMended, FindingsLedger.Find(walk.Job, walk.Plan, finding)!.Standing);
        Assert.Contains(finding, Owed.Of(walk.Job, walk.Plan).Findings);
        walk.Then(again);
        Assert.Equal(2, walk.Job.Repairs.Count);
        walk.Refused<Rejection.NoSuchRepair>(new JobAction.GiveUpRepair(instance, "again"));
    }

    [Fact]
    public void A_repair_that_costs_wants_the_owners_word_or_is_a_deviation()
    {
        Walk walk = Walk.Begun();
        string finding = walk.Find("wheel", "bent");
        walk.Then(new JobAction.PriceFinding(finding, TypedNumber.Of(120), TimeSpan.FromHours(2)));
        string instance = walk.BringIn(finding, "wheel");
        PlannedStep step = walk.Plan.Find(new StepKey(instance, "out"))!;
        Assert.IsType<Blocker.NoConsent>(Assert.Single(Blocker.Of(walk.Job, step, walk.Plan)));
        walk.Then(new JobAction.Do(In(instance, "out"), "he will say yes"));
        Assert.Equal(Deviation.WithoutConsent, Assert.Single(walk.Job.Deviations).Event.Kind);
        walk.Then(new JobAction.TakeAnswer([finding], [], Means.Telephone, new DateOnly(2026, 3, 2), "yes"));
        Assert.Empty(Blocker.Of(walk.Job, walk.Plan.Find(new StepKey(instance, "in"))!, walk.Plan));
    }

    [Fact]
    public void Within_what_was_agreed_as_the_piece_came_in_the_owner_is_not_asked_again()
    {
        Walk walk = Walk.Begun();
        walk.Then(new JobAction.NoteIntake("", "", null, TypedNumber.Of(300), ""));
        string wheel = walk.Find("wheel", "bent"), balance = walk.Find("balance", "worn");
        walk.Then(new JobAction.PriceFinding(wheel, TypedNumber.Of(200), null));
        string instance = walk.BringIn(wheel, "wheel");
        PlannedStep step = walk.Plan.Find(new StepKey(instance, "out"))!;
        Assert.Empty(Blocker.Of(walk.Job, step, walk.Plan));
        Assert.Equal(FindingStanding.InRepair, FindingsLedger.Find(walk.Job, walk.Plan, wheel)!.Standing);

        // Together they are more than was agreed, so both are asked for; to the last unit they are not.
        walk.Then(new JobAction.PriceFinding(balance, TypedNumber.Of(101), null));
        Assert.IsType<Blocker.NoConsent>(Assert.Single(Blocker.Of(walk.Job, step, walk.Plan)));
        Assert.Equal(FindingStanding.WaitsForOwner, FindingsLedger.Find(walk.Job, walk.Plan, wheel)!.Standing);
        Assert.Equal((301m, 1m), (AgreedLimit.Of(walk.Job)!.Sum, AgreedLimit.Of(walk.Job)!.Over));
        walk.Then(new JobAction.PriceFinding(balance, TypedNumber.Of(100), null));
        Assert.Empty(Blocker.Of(walk.Job, step, walk.Plan));

        // What is declined, or stays as it is, costs nothing.
        walk.Then(new JobAction.PriceFinding(balance, TypedNumber.Of(900), null));
        walk.Then(new JobAction.DecideFinding(balance, Verdict.Accept, "sound"));
        Assert.Empty(Blocker.Of(walk.Job, step, walk.Plan));
        walk.Then(new JobAction.DecideFinding(balance, Verdict.RepairHere, ""));
        Assert.NotEmpty(Blocker.Of(walk.Job, step, walk.Plan));
        walk.Then(new JobAction.TakeAnswer([], [balance], Means.Telephone, new DateOnly(2026, 3, 2), "not the balance"));
        Assert.Empty(Blocker.Of(walk.Job, step, walk.Plan));
    }

    [Fact]
    public void What_the_owner_declined_wants_the_owners_word_however_little_it_costs()
    {
        Walk walk = Walk.Begun();
        walk.Then(new JobAction.NoteIntake("", "", null, TypedNumber.Of(300), ""));
        string finding = walk.Find("wheel", "bent");
        walk.Then(new JobAction.PriceFinding(finding, TypedNumber.Of(10), null));
        walk.Then(new JobAction.TakeAnswer([], [finding], Means.Telephone, new DateOnly(2026, 3, 2), "no"));
        Assert.True(FindingsLedger.WantsConsent(walk.Job, finding));
    }

    [Fact]
    public void A_price_in_another_currency_or_in_none_that_is_known_keeps_no_limit()
    {
        Walk walk = Walk.Begun();
        walk.Then(new JobAction.NoteIntake("", "", null, TypedNumber.Of(300), ""));
        string finding = walk.Find("wheel", "bent");
        foreach (string? currency in new[] { "EUR", null })
        {
            Job priced = Fold.Next("job", walk.Job, new LogEntry(walk.Job.Log.Count + 1, "p", "AA", walk.Now, [new JobEvent.FindingPriced(finding, TypedNumber.Of(10), null, currency)]));
            Assert.Null(AgreedLimit.Of(priced)!.Sum);
            Assert.True(FindingsLedger.WantsConsent(priced, finding));
        }
        Assert.Null(AgreedLimit.Of(Walk.Begun().Job));
    }

    [Fact]
    public void A_repair_is_taken_out_again_while_nothing_was_done_in_it()
    {
        Walk walk = Walk.Begun();
        string finding = walk.Find("wheel", "bent"), instance = walk.BringIn(finding, "wheel");
        walk.Then(new JobAction.TakeBack());
        Assert.Empty(walk.Job.Repairs);
        Assert.Equal("", walk.Plan.TitleOf(instance));
        string next = walk.BringIn(finding, "wheel");
        Assert.NotEqual(instance, next);
        int joined = walk.Job.Log.Count;
        walk.Then(new JobAction.Do(In(next, "out")));
        walk.Refused<Rejection.CannotTakeBack>(new JobAction.TakeBack(joined));
    }

    [Fact]
    public void It_is_said_how_many_steps_wait_for_what_and_how_many_may_go_on()
    {
        Walk walk = BentPivot(out string finding);
        Assert.Empty(Waits.Of(walk.Job, walk.Plan).Waiting);
        walk.BringIn(finding, "wheel");
        Waits waits = Waits.Of(walk.Job, walk.Plan);
        // The step that fits the wheel, and the one that comes after it.
        Assert.Equal(["train-in", "oil"], waits.Waiting.Select(w => w.Step.Key.Step));
        Assert.All(waits.Waiting, w => Assert.IsType<Blocker.RepairFirst>(w.Because));
        Assert.Equal(walk.Plan.InForce(walk.Job).Count(s => !walk.Job.IsSettled(s.Key)) - 2, waits.Free);
    }

    [Fact]
    public void What_cares_for_the_part_in_repair_alone_waits_and_holds_nobody_up()
    {
        Walk walk = Walk.Begun();
        // It waits for the owner's word, so that nobody takes it up while the baths run.
        string finding = walk.Find("balance", "staff bent");
        walk.Then(new JobAction.PriceFinding(finding, TypedNumber.Of(80), null));
        string instance = walk.BringIn(finding, "balance");
        walk.To("wash");
        PlannedStep rinse = walk.Plan.Find(new StepKey("1", "balance-rinse"))!;
        Assert.Equal("balance", Assert.Single(Blocker.Of(walk.Job, rinse, walk.Plan).OfType<Blocker.RepairFirst>()).Part);
        walk.ToEnd();
        // The reassembly opens behind the cleaning, and only the balance's own rinse is left of that.
        Assert.True(walk.Job.IsSettled(new StepKey("1", "train-in")));
        Assert.Empty(walk.Job.Deviations);
        Assert.Equal(["balance-rinse", "balance-in"], Waits.Of(walk.Job, walk.Plan).Waiting.Where(w => w.Step.Key.Instance == "1").Select(w => w.Step.Key.Step));
        walk.Then(new JobAction.GiveUpRepair(instance, "the staff is sound after all"));
        Assert.Empty(Blocker.Of(walk.Job, rinse, walk.Plan));
        Assert.Contains(Blocker.Of(walk.Job, walk.Plan.Find(new StepKey("1", "balance-in"))!, walk.Plan), b => b is Blocker.StageFirst);
    }

    [Fact]
    public void A_repair_given_up_half_way_mends_nothing_and_one_whose_last_step_was_passed_over_does()
    {
        Walk walk = Walk.Begun();
        string first = walk.Find("wheel", "bent"), second = walk.Find("balance", "worn");
        string given = walk.BringIn(first, "wheel"), done = walk.BringIn(second, "balance");
        walk.Then(new JobAction.Do(In(given, "out")));
        walk.Then(new JobAction.GiveUpRepair(given, "it broke"));
        walk.Then(new JobAction.Do(In(done, "out")));
        walk.Then(new JobAction.Answer(In(done, "in"), $"origin:{done}/old-pivot", new AnswerValue.Chosen("supplied")));
        walk.Then(new JobAction.Skip(In(done, "true"), "no time"));
        Assert.Equal([true, false], Repair.AllOf(walk.Job, walk.Plan).Select(r => r.IsGivenUp));
        Assert.Equal(FindingStanding.ToBeMended, FindingsLedger.Find(walk.Job, walk.Plan, first)!.Standing);
        Assert.Equal(FindingStanding.Settled, FindingsLedger.Find(walk.Job, walk.Plan, second)!.Standing);
    }

    [Fact]
    public void Passing_over_every_step_of_a_repair_is_giving_it_up_and_taking_that_back_is_not()
    {
        Walk walk = Walk.Begun();
        string finding = walk.Find("wheel", "bent"), instance = walk.BringIn(finding, "wheel");
        foreach (string step in new[] { "out", "in", "true" }) walk.Then(new JobAction.Skip(In(instance, step), "no"));
        Assert.True(Repair.AllOf(walk.Job, walk.Plan)[0].IsGivenUp);
        walk.Then(new JobAction.TakeBack());
        Assert.Equal(FindingStanding.InRepair, FindingsLedger.Find(walk.Job, walk.Plan, finding)!.Standing);
        walk.Then(new JobAction.GiveUpRepair(instance, "too worn"));
        walk.Then(new JobAction.TakeBack());
        Assert.Equal(FindingStanding.InRepair, FindingsLedger.Find(walk.Job, walk.Plan, finding)!.Standing);
    }
}
