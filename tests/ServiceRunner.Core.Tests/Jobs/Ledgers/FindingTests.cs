using ServiceRunner.Core.Jobs;
using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Core.Tests.Jobs.Ledgers;

/// <summary>Findings: weighed, decided, priced, told to the owner, done with.</summary>
public class FindingTests
{
    private static FindingStanding Standing(Walk walk, string finding) => FindingsLedger.Find(walk.Job, walk.Plan, finding)!.Standing;

    [Fact]
    public void What_stops_the_work_speaks_against_every_step_that_moves_its_part_until_it_is_decided()
    {
        Walk walk = Walk.Begun().To("train-off");
        string finding = walk.Find("wheel", "pivot bent", Weight.StopsTheWork);
        Blocker.FindingStops stop = Assert.Single(Blocker.Of(walk.Job, walk.Plan.Find(new StepKey("1", "train-off"))!, walk.Plan).OfType<Blocker.FindingStops>());
        Assert.Equal("wheel", stop.Part);
        Assert.DoesNotContain(Blocker.Of(walk.Job, walk.Plan.Find(new StepKey("1", "wind"))!, walk.Plan), b => b is Blocker.FindingStops);
        walk.Then(new JobAction.DecideFinding(finding, Verdict.AskOwner, ""));
        Assert.Equal(FindingStanding.WaitsForOwner, Standing(walk, finding));
        Assert.NotEmpty(FindingsLedger.Stopping(walk.Job));
        walk.Then(new JobAction.TakeAnswer([], [finding], Means.Writing, new DateOnly(2026, 3, 1), "leave it"));
        Assert.Empty(FindingsLedger.Stopping(walk.Job));
        Assert.Equal(FindingStanding.Settled, Standing(walk, finding));
    }

    [Fact]
    public void A_finding_without_a_part_that_stops_the_work_stops_all_of_it()
    {
        Walk walk = Walk.Begun();
        walk.Then(new JobAction.NoteFinding("case", "", "mercury in the case", Weight.StopsTheWork, Sureness.Inferred));
        Offer.Stuck stuck = Assert.IsType<Offer.Stuck>(walk.Offer);
        Assert.IsType<Blocker.FindingStops>(stuck.Blockers[0]);
        walk.Then(new JobAction.Skip(stuck.Step.Key.Step is var s ? Sample.Step(s) : default));
        walk.Then(new JobAction.Answer(Sample.Step("look"), "examine:balance", new AnswerValue.Chosen("free")));
        Assert.Contains(walk.Job.Deviations, d => d.Event.Kind == Deviation.OverFinding);
    }

    [Fact]
    public void A_note_owes_nothing_and_everything_else_owes_a_decision()
    {
        Walk walk = Walk.Begun();
        string note = walk.Find("balance", "an earlier repair", Weight.Note), fault = walk.Find("wheel", "worn");
        Assert.Equal([fault], Owed.Of(walk.Job, walk.Plan).Findings);
        walk.Then(new JobAction.WeighFinding(note, Weight.Service, Sureness.Inferred));
        Assert.Equal(2, Owed.Of(walk.Job, walk.Plan).Findings.Count);
        walk.Then(new JobAction.DecideFinding(note, Verdict.Accept, "sound work"));
        walk.Then(new JobAction.DecideFinding(fault, Verdict.SendOut, "the wheel cutter"));
        Assert.Equal(FindingStanding.SentOut, Standing(walk, fault));
        walk.Then(new JobAction.SettleFinding(fault, "came back, teeth good"));
        Assert.Empty(Owed.Of(walk.Job, walk.Plan).Findings);
        walk.Then(new JobAction.TakeBack());
        Assert.Equal([fault], Owed.Of(walk.Job, walk.Plan).Findings);
    }

    [Fact]
    public void A_replaced_part_settles_what_was_found_on_it_before()
    {
        Walk walk = Walk.Begun();
        string finding = walk.Find("wheel", "teeth gone");
        walk.Then(new JobAction.DecideFinding(finding, Verdict.Replace, ""));
        Assert.Equal(FindingStanding.ToBeMended, Standing(walk, finding));
        walk.Then(new JobAction.RenewPart("wheel", Origin.Supplied, "from the supplier's bag"));
        Assert.Equal(FindingStanding.Settled, Standing(walk, finding));
    }

    [Fact]
    public void The_estimate_names_what_waits_for_an_answer_and_keeps_what_was_told()
    {
        Walk walk = Walk.Begun();
        walk.Refused<Rejection.NothingToEstimate>(new JobAction.GiveEstimate("EUR"));
        string one = walk.Find("wheel", "bent"), two = walk.Find("balance", "worn"), three = walk.Find("bridge", "scratched");
        walk.Then(new JobAction.DecideFinding(one, Verdict.RepairHere, ""));
        walk.Then(new JobAction.DecideFinding(two, Verdict.AskOwner, ""));
        walk.Then(new JobAction.DecideFinding(three, Verdict.Accept, ""));
        walk.Then(new JobAction.PriceFinding(one, TypedNumber.Of(120), TimeSpan.FromHours(2)));
        JobEvent.EstimateGiven given = walk.Then(new JobAction.GiveEstimate("EUR")).OfType<JobEvent.EstimateGiven>().Single();
        Assert.Equal([(one, 120m), (two, null)], given.Lines.Select(l => (l.Finding, l.Cost?.Value)));
        walk.Then(new JobAction.PriceFinding(one, TypedNumber.Of(150), null));
        Assert.Equal(120m, walk.Job.Estimates[0].Event.Lines[0].Cost!.Value.Value);
        walk.Then(new JobAction.TakeAnswer([one], [two], Means.InPerson, new DateOnly(2026, 3, 2), "the wheel, not the balance"));
        Assert.Empty(FindingsLedger.ToEstimate(walk.Job, walk.Plan));
    }

    [Fact]
    public void What_makes_no_sense_is_refused_by_name()
    {
        Walk walk = Walk.Begun();
        string finding = walk.Find("wheel", "bent");
        walk.Refused<Rejection.NoSuchFinding>(new JobAction.DecideFinding("nobody", Verdict.Accept, ""));
        walk.Refused<Rejection.BelowNought>(new JobAction.PriceFinding(finding, TypedNumber.Of(-1), null));
        walk.Refused<Rejection.InTheFuture>(new JobAction.TakeAnswer([finding], [], Means.Telephone, new DateOnly(2026, 3, 3), ""));
        walk.Refused<Rejection.NothingToEstimate>(new JobAction.TakeAnswer([], [], Means.Telephone, new DateOnly(2026, 3, 2), ""));
        walk.Refused<Rejection.NothingTyped>(new JobAction.SettleFinding(finding, " "));
        walk.Refused<Rejection.NoSuchPart>(new JobAction.RenewPart("moon", Origin.Supplied, ""));
    }
}
