using ServiceRunner.Core.Jobs;
using ServiceRunner.Tests.Shared;

namespace ServiceRunner.Tests.Screens;

/// <summary>Each urgency is told once, the most urgent first; a most that is passed again and again until it is answered.</summary>
public class AlarmTests
{
    private readonly List<(Urgency Urgency, string Words)> _told = [];

    private PaperBench Soaking()
    {
        PaperBench bench = new PaperBench().WithJob().To("wash/alcohol-first");
        bench.Shell.AlarmTold = (urgency, words, _) => _told.Add((urgency, words));
        return bench.Keys("Enter");
    }

    private static void Wait(PaperBench bench, double minutes)
    {
        for (int i = 0; i < minutes * 60; i++) bench.Wait(TimeSpan.FromSeconds(1));
    }

    [Fact]
    public void Least_aim_and_most_are_told_with_the_jar_first()
    {
        using PaperBench bench = Soaking();
        Wait(bench, 1.5);
        Assert.Equal([(Urgency.Low, "First alcohol jar, Q26-001: may come out; aim in 1:00")], _told);
        Wait(bench, 1);
        Assert.Equal((Urgency.Medium, "First alcohol jar, Q26-001: ready; most in 3:00"), _told[^1]);
        Assert.Equal(2, _told.Count);
        Wait(bench, 2.6);
        Assert.Equal(Urgency.High, _told[^1].Urgency);
        Snapshot.Verify(bench.Picture());
    }

    [Fact]
    public void A_most_that_is_passed_repeats_until_one_key_answers_it_and_that_is_written_down()
    {
        using PaperBench bench = Soaking();
        Wait(bench, 5.1);
        int once = _told.Count(t => t.Urgency == Urgency.High);
        Wait(bench, 1);
        Assert.Equal(once + 3, _told.Count(t => t.Urgency == Urgency.High));
        bench.Keys("Space");
        Assert.IsType<JobEvent.AlarmAnswered>(bench.Job.Log[^1].Events.Single());
        int answered = _told.Count;
        Wait(bench, 2);
        Assert.Equal(answered, _told.Count);
        Assert.Single(bench.Job.RunningSoaks);
    }

    [Fact]
    public void Ending_the_soak_answers_too()
    {
        using PaperBench bench = Soaking();
        Wait(bench, 2.1);
        bench.Keys("Enter");
        Assert.Empty(bench.Shell.Alarms.Open(bench.Session.Now));
    }

    [Fact]
    public void More_time_moves_the_aim_and_answers_the_alarm_of_the_old_one()
    {
        using PaperBench bench = Soaking();
        Wait(bench, 2.1);
        Assert.NotEmpty(bench.Shell.Alarms.Open(bench.Session.Now));
        bench.Keys("+").Type("soon");
        Assert.Equal("'soon' is not a length of time; type 2 min or 30 s.", bench.Shell.Message);
        bench.Type("1 min");
        Assert.Empty(bench.Shell.Alarms.Open(bench.Session.Now));
        Wait(bench, 1.1);
        Assert.Equal(Urgency.Medium, _told[^1].Urgency);
        Assert.Equal(2, _told.Count(t => t.Urgency == Urgency.Medium));
    }

    [Fact]
    public void After_a_restart_an_alarm_that_wants_an_answer_is_told()
    {
        using PaperBench bench = Soaking();
        bench.Wait(TimeSpan.FromMinutes(3)).Restart();
        bench.Shell.AlarmTold = (urgency, words, _) => _told.Add((urgency, words));
        _told.Clear();
        bench.Wait(TimeSpan.FromSeconds(1)).Wait(TimeSpan.FromSeconds(1));
        Assert.Equal(Urgency.Medium, Assert.Single(_told).Urgency);
    }

    [Fact]
    public void Quiet_tells_nothing_and_shows_everything()
    {
        using PaperBench bench = Soaking();
        bench.Keys("F8");
        Wait(bench, 6);
        Assert.Empty(_told);
        Assert.Contains("▲ First alcohol jar", bench.Picture(), StringComparison.Ordinal);
    }

    [Fact]
    public void What_comes_to_hand_is_said_once_and_again_when_wanted()
    {
        using PaperBench bench = new PaperBench().WithJob().To("luminous-look");
        List<string> said = [];
        int again = 0;
        (bench.Shell.StepTold, bench.Shell.AgainTold) = (said.Add, () => again++);
        bench.Wait(TimeSpan.FromSeconds(1)).Wait(TimeSpan.FromSeconds(1));
        Assert.Single(said);
        bench.Keys("Space");
        Assert.Equal(1, again);
        bench.To("let-down").Wait(TimeSpan.FromSeconds(1));
        Assert.Equal("Caution: Stored energy. Caution: Eyes. Let the mainspring down and count the turns. By how many turns did the crown run back? It wants an answer.", said[^1]);
    }
}
