using ServiceRunner.Core.Jobs;

namespace ServiceRunner.Core.Tests.Jobs;

/// <summary>The phases and their ways, in the words of IEC 61512-1 (transitions from secondary descriptions of it).</summary>
public class PhaseTests
{
    private static readonly JobAction[] Ways =
    [
        new JobAction.Start(), new JobAction.Pause(""), new JobAction.Resume(), new JobAction.Hold(HoldFor.Owner, "", "covered", null),
        new JobAction.Restart(), new JobAction.Stop("no part to be had"), new JobAction.Abort("dropped"),
    ];

    public static TheoryData<string, string> Table => new()
    {
        { "Idle", "Start Stop" },
        { "Running", "Pause Hold Stop Abort" },
        { "Paused", "Resume Hold Stop Abort" },
        { "Held", "Restart Stop Abort" },
        { "Stopped", "" },
        { "Aborted", "" },
        { "Complete", "" },
    };

    private static Walk In(string phase)
    {
        Walk walk = phase == "Idle" ? new Walk() : Walk.Begun();
        JobAction? way = phase switch
        {
            "Paused" => new JobAction.Pause(""),
            "Held" => new JobAction.Hold(HoldFor.Day, "", "covered", null),
            "Stopped" => new JobAction.Stop("x"),
            "Aborted" => new JobAction.Abort("x"),
            "Complete" => new JobAction.Complete("x"),
            _ => null,
        };
        if (way is not null) walk.Then(way);
        Assert.Equal(phase, walk.Job.Phase.GetType().Name);
        return walk;
    }

    [Theory]
    [MemberData(nameof(Table))]
    public void From_each_phase_only_these_ways_lead(string phase, string ways)
    {
        IEnumerable<string> open = Ways.Where(w => In(phase).Decide(w) is Decision.Accepted).Select(w => w.GetType().Name);
        Assert.Equal(ways, string.Join(' ', open));
    }

    [Fact]
    public void Work_is_done_only_while_running()
    {
        foreach (string phase in new[] { "Idle", "Paused", "Held", "Stopped", "Complete" })
            In(phase).Refused<Rejection.NotNow>(new JobAction.Do(Sample.Step("balance-off")));
    }

    [Fact]
    public void Closing_with_something_owed_wants_a_reason_and_is_a_deviation()
    {
        Walk walk = Walk.Begun();
        walk.Refused<Rejection.ReasonWanted>(new JobAction.Complete(""));
        walk.Then(new JobAction.Complete("the owner takes it as it is"));
        Assert.Equal(Deviation.ClosedWithOwed, Assert.Single(walk.Job.Deviations).Event.Kind);
        Assert.True(Assert.IsType<Phase.Complete>(walk.Job.Phase).WithOwed);
    }

    [Fact]
    public void A_job_that_is_not_there_can_only_be_opened()
    {
        Decision decision = Decider.Decide(null, new JobAction.Start(), new Walk().At());
        Assert.IsType<Rejection.NoSuchJob>(Assert.IsType<Decision.Refused>(decision).Why);
        Walk walk = new();
        walk.Refused<Rejection.AlreadyOpen>(new JobAction.Open("x", "y", "", [], new Dictionary<string, string>()));
    }
}
