using ServiceRunner.Core.Jobs;

namespace ServiceRunner.Core.Tests.Jobs.Ledgers;

/// <summary>The life of a part beyond its place: added, cleaned, tried, renewed, missed after a wait.</summary>
public class PartsTests
{
    private static IEnumerable<string> Against(Walk walk, string step) =>
        Blocker.Of(walk.Job, walk.Plan.Find(new StepKey("1", step))!, walk.Plan).Select(b => b.GetType().Name);

    [Fact]
    public void Fitting_what_was_not_cleaned_is_said_before_and_is_a_deviation_after()
    {
        Walk walk = Walk.Begun().To("wash");
        foreach (string bath in new[] { "wash", "balance-rinse", "dry" }) walk.Then(new JobAction.Skip(Sample.Step(bath), "no time"));
        Assert.Equal(["NotCleaned", "NotCleaned", "NotCleaned"], Against(walk, "train-in"));
        walk.Then(new JobAction.Do(Sample.Step("train-in"), "clean by hand"));
        Assert.Contains(walk.Job.Deviations, d => d.Event is { Kind: Deviation.PartNotReady, Detail: "wheel: not cleaned; bridge: not cleaned; screw: not cleaned" });
    }

    [Fact]
    public void What_came_out_of_a_bath_is_wet_until_it_is_dried()
    {
        Walk walk = Walk.Begun().To("dry");
        Assert.Contains("StillWet", Against(walk, "train-in"));
        walk.Then(new JobAction.TendPart("wheel", Tending.Dried));
        Assert.Equal(2, Against(walk, "train-in").Count(b => b == "StillWet"));
        walk.To("train-in");
        Assert.Empty(Against(walk, "train-in"));
    }

    [Fact]
    public void A_part_that_nobody_looked_over_is_named()
    {
        Walk walk = Walk.Begun().To("look");
        walk.Then(new JobAction.Skip(Sample.Step("look")));
        walk.To("train-in");
        Assert.Equal(["NotInspected"], Against(walk, "train-in"));
        walk.Then(new JobAction.TendPart("wheel", Tending.Inspected));
        Assert.Empty(Against(walk, "train-in"));
    }

    [Fact]
    public void A_part_left_out_of_the_wash_is_washed_alone_and_the_rest_is_not_held_up()
    {
        Walk walk = Walk.Begun().To("wash");
        walk.Then(new JobAction.MovePart("wheel", new PartPlace.SetAside("to be looked at")));
        walk.ToEnd();
        walk.Then(new JobAction.MovePart("wheel", new PartPlace.InTray("B2")));
        Assert.Equal(["NotCleaned"], Against(walk, "train-in"));
        Assert.Equal(["wash", "dry"], walk.Then(new JobAction.WashAgain("wheel")).OfType<JobEvent.WashBegunAgain>().Single().Steps.Select(s => s.Step));
        Assert.DoesNotContain("StageFirst", Against(walk, "train-in"));
        walk.To("wash");
        Assert.Equal(["wheel"], walk.Then(walk.Offer.Act!).OfType<JobEvent.SoakBegun>().Single().Parts);
        walk.To("train-in");
        Assert.Empty(Against(walk, "train-in"));
        walk.Refused<Rejection.NothingToWash>(new JobAction.WashAgain("wheel"));
    }

    [Fact]
    public void A_part_that_no_procedure_names_is_added_and_owed_until_it_is_back()
    {
        Walk walk = Walk.Begun();
        string part = walk.Then(new JobAction.AddPart("Dust ring", "E1", Jewels: 0)).OfType<JobEvent.PartAdded>().Single().Part;
        Assert.Equal("Dust ring", walk.Plan.NameOf(part));
        Assert.Equal(new PartPlace.InTray("E1"), walk.Job.PlaceOf(part));
        Assert.Contains(part, Owed.Of(walk.Job, walk.Plan).Parts);
        walk.Then(new JobAction.MovePart(part, new PartPlace.OnMovement()));
        Assert.DoesNotContain(part, Owed.Of(walk.Job, walk.Plan).Parts);
        walk.Refused<Rejection.NothingTyped>(new JobAction.AddPart(" ", ""));
        walk.Refused<Rejection.BelowNought>(new JobAction.AddPart("Ring", "", 0));
    }

    [Fact]
    public void A_renewed_part_is_at_hand_and_not_on_and_the_old_one_is_kept()
    {
        Walk walk = Walk.Begun();
        walk.Then(new JobAction.RenewPart("balance", Origin.OldStock, "from the drawer"));
        Assert.Equal(new PartPlace.InTray(""), walk.Job.PlaceOf("balance"));
        Assert.Contains("balance", Owed.Of(walk.Job, walk.Plan).Parts);
        Assert.Equal(Origin.OldStock, Assert.Single(walk.Job.Renewals).Event.Origin);
    }

    [Fact]
    public void After_a_wait_the_tray_is_compared_with_the_ledger_before_the_work_goes_on()
    {
        Walk walk = Walk.Begun().To("wash");
        walk.Then(new JobAction.Hold(HoldFor.Part, "a wheel", "power off, covered", null));
        Assert.Equal(["balance", "bridge", "screw", "wheel"], walk.Refused<Rejection.TrayUnchecked>(new JobAction.Restart()).Off);
        walk.Refused<Rejection.NoSuchPart>(new JobAction.Restart(["plate"]));
        walk.Then(new JobAction.Restart(["screw"]));
        Assert.IsType<Phase.Running>(walk.Job.Phase);
        Assert.IsType<PartPlace.Lost>(walk.Job.PlaceOf("screw"));
        Assert.Equal("not in the tray after the wait", Assert.Single(walk.Job.Findings).Event.What);
    }

    [Fact]
    public void A_screw_put_in_again_to_guard_a_pivot_counts_as_on()
    {
        Walk walk = Walk.Begun().To("wash");
        walk.Then(new JobAction.MovePart("bridge", new PartPlace.OnMovement()));
        walk.Then(new JobAction.MovePart("screw", new PartPlace.OnMovement()));
        Assert.DoesNotContain("screw", Owed.Of(walk.Job, walk.Plan).Parts);
        Assert.Contains("AlreadyOn", Against(walk, "train-in"));
        walk.Then(new JobAction.TakeBack());
        Assert.Contains("screw", Owed.Of(walk.Job, walk.Plan).Parts);
    }

    [Fact]
    public void Trying_dry_taking_off_again_and_washing_mounted_are_no_deviations()
    {
        Walk walk = Walk.Begun().To("wash");
        walk.Then(new JobAction.MovePart("bridge", new PartPlace.TriedDry()));
        walk.Then(new JobAction.MovePart("bridge", new PartPlace.InTray("B3")));
        walk.Then(new JobAction.MovePart("wheel", new PartPlace.OnMovement()));
        Assert.Contains("wheel", walk.Then(walk.Offer.Act!).OfType<JobEvent.SoakBegun>().Single().Parts);
        Assert.Empty(walk.Job.Deviations);
    }
}
