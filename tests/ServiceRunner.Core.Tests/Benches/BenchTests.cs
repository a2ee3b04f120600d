using ServiceRunner.Core.Benches;
using ServiceRunner.Core.Jobs;
using ServiceRunner.Core.Quantities;
using ServiceRunner.Core.Tests.Jobs;

namespace ServiceRunner.Core.Tests.Benches;

public class BenchTests
{
    private Bench _bench = new() { Id = "bench" };
    private Moment _now = Sample.Morning;

    private (IReadOnlyList<BenchEvent> Events, BenchRejection Why) Act(BenchAction action)
    {
        (IReadOnlyList<BenchEvent> Events, BenchRejection Why) result = BenchDecider.Decide(_bench, action, Sample.Workshop(), _now);
        if (result.Events.Count > 0) _bench = _bench.After(new BenchEntry(_bench.LastNumber + 1, "id", "AA", _now, result.Events));
        return result;
    }

    [Fact]
    public void The_last_to_sign_in_works_and_signing_in_twice_changes_nothing()
    {
        Act(new BenchAction.SignIn("AA"));
        Act(new BenchAction.SignIn("BB"));
        Assert.Equal("BB", _bench.Repairer);
        Assert.Empty(Act(new BenchAction.SignIn("BB")).Events);
        Act(new BenchAction.SignOut("BB"));
        Assert.Equal("AA", _bench.Repairer);
        Assert.Equal(BenchRejection.NoSuchPerson, Act(new BenchAction.SignIn("ZZ")).Why);
        Assert.Equal(BenchRejection.NotSignedIn, Act(new BenchAction.SignOut("BB")).Why);
    }

    [Fact]
    public void A_jar_counts_its_baskets_and_is_fresh_when_filled()
    {
        Act(new BenchAction.FillJar("J1"));
        Workshops.Jar jar = Sample.Workshop().Jars[0];
        for (int i = 0; i < 2; i++)
        {
            _bench = _bench.After(new BenchEntry(_bench.LastNumber + 1, "x", "AA", _now, [new BenchEvent.ClockBegun("job", Sample.Step("wash", i + 1), "J1")]));
            Assert.Contains("J1", _bench.JarsInUse);
            Assert.Equal(BenchRejection.JarInUse, Act(new BenchAction.FillJar("J1")).Why);
            _bench = _bench.After(new BenchEntry(_bench.LastNumber + 1, "y", "AA", _now, [new BenchEvent.ClockEnded("job", Sample.Step("wash", i + 1))]));
        }
        Assert.True(_bench.IsSpent(jar, _now.Wall));
        Act(new BenchAction.FillJar("J1"));
        Assert.False(_bench.IsSpent(jar, _now.Wall));
        Assert.Equal(BenchRejection.NoSuchJar, Act(new BenchAction.FillJar("J9")).Why);
    }

    [Fact]
    public void A_bottle_stays_in_use_until_another_is_named()
    {
        Act(new BenchAction.TakeBatch("light", " L-1 ", null, null));
        Assert.Equal("L-1", _bench.BatchNames["light"]);
        Assert.Empty(Act(new BenchAction.TakeBatch("light", "L-1", null, null)).Events);
        Assert.Equal(BenchRejection.NoSuchLubricant, Act(new BenchAction.TakeBatch("whale", "L-1", null, null)).Why);
        Assert.Equal(BenchRejection.NothingTyped, Act(new BenchAction.TakeBatch("light", " ", null, null)).Why);
    }

    [Fact]
    public void A_clock_that_was_set_is_a_fault_and_one_kept_in_step_is_none()
    {
        Moment before = _now;
        _now = _now.Plus(TimeSpan.FromMinutes(10)) with { Wall = _now.Wall.AddMinutes(10).AddSeconds(2) };
        Assert.Empty(Act(new BenchAction.NoticeClock(before)).Events);
        _now = before.Plus(TimeSpan.FromMinutes(10)) with { Wall = before.Wall.AddHours(-1) };
        BenchEvent.ClockFault fault = Assert.IsType<BenchEvent.ClockFault>(Assert.Single(Act(new BenchAction.NoticeClock(before)).Events));
        Assert.Equal(TimeSpan.FromMinutes(-70), fault.By);
    }

    [Fact]
    public void The_bench_follows_the_clocks_of_a_job()
    {
        Walk walk = Walk.Begun().To("wash");
        walk.Then(walk.Offer.Act!);
        BenchEvent.ClockBegun begun = Assert.IsType<BenchEvent.ClockBegun>(Assert.Single(_bench.Follow(walk.Job)));
        Assert.Equal("J1", begun.Jar);
        _bench = _bench.After(new BenchEntry(1, "x", "AA", _now, [begun]));
        Assert.Empty(_bench.Follow(walk.Job));
        walk.Then(new JobAction.TakeBack());
        Assert.IsType<BenchEvent.ClockEnded>(Assert.Single(_bench.Follow(walk.Job)));
    }

    [Fact]
    public void Carrying_forward_loses_nothing()
    {
        Act(new BenchAction.SignIn("AA"));
        Act(new BenchAction.FillJar("J1"));
        Act(new BenchAction.TakeBatch("light", "L-1", new DateOnly(2026, 1, 2), null));
        _bench = _bench.After(new BenchEntry(_bench.LastNumber + 1, "x", "AA", _now, [new BenchEvent.ClockBegun("job", Sample.Step("wash"), "J1")]));
        BenchEvent.CarriedForward carried = _bench.Forward();
        Bench fresh = new Bench { Id = "bench" }.After(new BenchEntry(_bench.LastNumber + 1, "y", "AA", _now, [carried]));
        Assert.Equal(_bench.SignedIn, fresh.SignedIn);
        Assert.Equal(_bench.Jars, fresh.Jars);
        Assert.Equal(_bench.Batches, fresh.Batches);
        Assert.Equal(_bench.Clocks, fresh.Clocks);
        Assert.Equal(_bench.LastNumber + 1, fresh.CarriedAt);
        Assert.Equal(["J1"], fresh.JarsInUse);
        Assert.Equal([("light", "L-1")], fresh.BatchNames.Select(b => (b.Key, b.Value)));
    }

    [Fact]
    public void Jars_and_bottles_in_use_are_those_of_the_clocks_and_batches_after_every_event()
    {
        Act(new BenchAction.TakeBatch("light", "L-1", null, null));
        Act(new BenchAction.TakeBatch("heavy", "H-1", null, null));
        BenchEvent[] clocks =
        [
            new BenchEvent.ClockBegun("job", Sample.Step("wash"), "J1"),
            new BenchEvent.ClockBegun("job", Sample.Step("dry"), ""),
            new BenchEvent.ClockBegun("other", Sample.Step("wash"), "J2"),
            new BenchEvent.ClockEnded("job", Sample.Step("wash")),
        ];
        string[] jars = ["J1", "J1", "J1 J2", "J2"];
        for (int i = 0; i < clocks.Length; i++)
        {
            _bench = _bench.After(new BenchEntry(_bench.LastNumber + 1, "x", "AA", _now, [clocks[i]]));
            Assert.Equal(jars[i], string.Join(' ', _bench.JarsInUse.Order(StringComparer.Ordinal)));
        }
        Act(new BenchAction.TakeBatch("light", "L-2", null, null));
        Assert.Equal("L-2", _bench.BatchNames["light"]);
        Act(new BenchAction.FinishBottle("heavy", "H-1"));
        Assert.DoesNotContain("heavy", _bench.BatchNames.Keys);
        Assert.Equal(_bench.Batches.Keys.Order(), _bench.BatchNames.Keys.Order());
        // Signing in touches neither, and neither is forgotten by it.
        Act(new BenchAction.SignIn("AA"));
        Assert.Equal(["J2"], _bench.JarsInUse);
        Assert.Equal("L-2", _bench.BatchNames["light"]);
    }
}
