using ServiceRunner.Core.Jobs;
using ServiceRunner.Session;
using ServiceRunner.Tests.Shared;

namespace ServiceRunner.Tests.Screens;

/// <summary>Timing cleaning baths.</summary>
public class BathsTests
{
    private const string Soaking = "wash/alcohol-first";

    private static PaperBench Washing() => new PaperBench().WithJob().To(Soaking).Keys("Enter");

    [Fact]
    public void Going_on_starts_the_clock_and_offers_what_the_hands_can_do_meanwhile()
    {
        using PaperBench bench = new PaperBench().WithJob().To("wash/degrease");
        Assert.Empty(bench.Job.RunningSoaks);
        bench.Keys("Enter");
        Assert.Equal("wash/degrease", Assert.Single(bench.Job.RunningSoaks).Begun.Step.Step);
        Assert.Equal("wash/fork-rinse", bench.Run.Shown!.Step.Id.Value);
    }

    [Fact]
    public void Every_clock_is_shown_in_big_figures_with_words_for_where_it_stands()
    {
        using PaperBench bench = Washing();
        bench.Keys("F4");
        Snapshot.Verify(bench.Picture(), "under");
        bench.Wait(TimeSpan.FromMinutes(4));
        Snapshot.Verify(bench.Picture(), "within");
        bench.Wait(TimeSpan.FromMinutes(30));
        Snapshot.Verify(bench.Picture(120, 40), "over");
    }

    [Fact]
    public void A_soak_counts_through_a_restart_of_the_program()
    {
        using PaperBench bench = Washing();
        bench.Wait(TimeSpan.FromMinutes(2)).Restart().Wait(TimeSpan.FromMinutes(1)).Keys("F4");
        Soak soak = bench.Session.RunningSoaks().Select(s => s.Soak).First(s => s.Begun.Step.Step == Soaking);
        Assert.Equal(3, soak.Length(bench.Session.Now).Length.TotalMinutes, 1);
        Assert.True(soak.Length(bench.Session.Now).Certain);
        bench.Boot = "boot-2";
        Assert.Contains("restarted: by the wall clock", bench.Picture(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_clock_is_shown_also_if_the_procedure_of_its_job_cannot_be_read_and_nothing_can_be_done_in_that_job()
    {
        using PaperBench bench = Washing();
        string job = bench.Run.Job.Id;
        bench.Session.Dispose();
        foreach (string text in Directory.GetFiles(Path.Combine(bench.Path, "kept"))) File.AppendAllText(text, "x");
        bench.Restart();
        (OpenJob open, Soak soak) = bench.Session.RunningSoaks().First(s => s.Job.Id == job);
        Assert.False(bench.Session.Act(open, new JobAction.EndSoak(soak.Begun.Step)).IsDone);
        Assert.Contains(Path.Combine(bench.Path, "kept"), Assert.IsType<JobReading.Unreadable>(bench.Session.Read(job)).Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Ending_early_from_the_baths_is_a_deviation_with_its_reason()
    {
        using PaperBench bench = Washing();
        string job = bench.Run.Job.Id;
        bench.Keys("F4", "e");
        if (bench.Shell.Open is null) bench.Keys("1");
        bench.Type("the stain was off");
        Job state = ((ServiceRunner.Session.JobReading.Ready)bench.Session.Read(job)).Job.State;
        Assert.Contains(state.Deviations, d => d.Event is { Kind: Deviation.SoakShort, Reason: "the stain was off" });
    }

    [Fact]
    public void A_reason_that_was_typed_for_nothing_stays_in_its_question()
    {
        using PaperBench bench = Washing();
        var job = bench.Run.Job;
        bench.Keys("F4", "e");
        if (bench.Shell.Open is null) bench.Keys("1");
        // Meanwhile the job is broken off, and with it all that could be ended.
        Assert.True(bench.Session.Act(job, new JobAction.Abort("dropped")).IsDone);
        bench.Type("the stain was off");
        Assert.Equal("This job is broken off: nothing more can be done in it.", bench.Shell.Message);
        Assert.Equal("the stain was off", bench.Shell.Open?.Start);
    }

    [Fact]
    public void A_jar_that_had_its_baskets_asks_to_be_renewed()
    {
        using PaperBench bench = Washing();
        bench.Keys("F4", "j");
        Snapshot.Verify(bench.Picture());
        bench.Keys("1");
        Assert.Equal("Degreasing jar is fresh.", bench.Shell.Message);
    }

    [Fact]
    public void A_clock_set_back_is_noticed_and_written_down_and_moves_no_soak()
    {
        using PaperBench bench = Washing();
        int before = bench.Session.Bench.LastNumber;
        bench.SetWallClock(TimeSpan.FromHours(-2));
        bench.Wait(TimeSpan.FromSeconds(1));
        Assert.Equal(before + 1, bench.Session.Bench.LastNumber);
        Assert.Contains("clock was set by -2:00:00", bench.Shell.Message, StringComparison.Ordinal);
        Assert.InRange(bench.Job.RunningSoaks.First(s => s.Begun.Step.Step == Soaking).Length(bench.Session.Now).Length, TimeSpan.FromSeconds(1), TimeSpan.FromSeconds(3));
    }
}
