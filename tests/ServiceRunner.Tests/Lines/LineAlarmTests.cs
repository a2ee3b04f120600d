using ServiceRunner.Core.Jobs;
using ServiceRunner.Tests.Shared;

namespace ServiceRunner.Tests.Lines;

/// <summary>What comes due by itself gets a line of its own, once for each urgency.</summary>
public class LineAlarmTests
{
    private static PaperLines Soaking()
    {
        PaperLines lines = new();
        lines.Bench.WithJob().To("wash/alcohol-first");
        lines.Greet().NewPaper().Say("");
        return lines;
    }

    [Fact]
    public void Least_aim_and_most_are_each_told_once()
    {
        using PaperLines lines = Soaking();
        lines.WaitSeconds(600);
        Assert.Equal(3, lines.Last.Count);
        lines.Say("clocks", "answer", "answer");
        Assert.IsType<JobEvent.AlarmAnswered>(lines.Bench.Job.Log[^1].Events.Single());
        lines.Say("");
        Snapshot.Verify(lines.Picture);
    }

    [Fact]
    public void More_time_tells_the_aim_anew()
    {
        using PaperLines lines = Soaking();
        lines.WaitSeconds(130);
        Assert.Equal(2, lines.Last.Count);
        lines.Say("more time", "1 min");
        lines.WaitSeconds(70);
        Assert.StartsWith("Alarm: First alcohol jar", Assert.Single(lines.Last, l => l.StartsWith("Alarm", StringComparison.Ordinal)), StringComparison.Ordinal);
    }

    [Fact]
    public void While_a_question_is_open_only_the_alarm_is_told()
    {
        using PaperLines lines = Soaking();
        lines.Say("done otherwise").WaitSeconds(400);
        Assert.Equal(3, lines.Last.Count);
        Assert.All(lines.Last, l => Assert.DoesNotContain("What was done", l, StringComparison.Ordinal));
        lines.Say("with the bulb alone");
        Assert.StartsWith("Written down.", lines.Last[0], StringComparison.Ordinal);
        Assert.Single(lines.Bench.Job.Deviations);
    }

    [Fact]
    public void Quiet_leaves_the_lines()
    {
        using PaperLines lines = Soaking();
        lines.Say("quiet").WaitSeconds(400);
        Assert.Equal(3, lines.Last.Count);
    }

    [Fact]
    public void An_empty_line_on_its_way_when_a_clock_comes_due_does_not_end_it()
    {
        using PaperLines lines = Soaking();
        string told = "";
        while (!told.StartsWith("Alarm", StringComparison.Ordinal)) told = lines.Wait(TimeSpan.FromMilliseconds(100)).Last is [var line] ? line : "";
        lines.Wait(TimeSpan.FromMilliseconds(200)).SayAtOnce("");
        Assert.Single(lines.Bench.Job.RunningSoaks);
        lines.Say("");
        Assert.Empty(lines.Bench.Job.RunningSoaks);
    }

    [Fact]
    public void After_a_restart_a_clock_that_is_due_is_told_at_once()
    {
        using PaperLines lines = Soaking();
        lines.WaitSeconds(200);
        lines.Restart().Greet();
        Assert.Contains(lines.Last, l => l.StartsWith("Alarm: First alcohol jar", StringComparison.Ordinal));
    }

    [Fact]
    public void A_pedal_press_from_another_program_is_told()
    {
        using PaperLines lines = new();
        lines.Bench.WithJob().To("hear-owner");
        lines.Greet();
        lines.Shell.Ticking = () =>
        {
            lines.Shell.Ticking = null;
            lines.Shell.Follow(ServiceRunner.Pedal.PedalWord.Mark);
        };
        lines.Wait(TimeSpan.FromSeconds(1));
        Assert.Equal(["The moment is marked."], lines.Last);
    }
}
