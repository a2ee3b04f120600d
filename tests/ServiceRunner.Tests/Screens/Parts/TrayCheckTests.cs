using ServiceRunner.Core.Jobs;
using ServiceRunner.Screens.Parts;
using ServiceRunner.Tests.Shared;

namespace ServiceRunner.Tests.Screens.Parts;

/// <summary>Three weeks later nobody remembers what lay where: the tray is looked through before the work goes on.</summary>
public class TrayCheckTests
{
    private static PaperBench Waiting()
    {
        PaperBench bench = new PaperBench().WithJob().To("wash/jars-ready").Keys("h", "2");
        bench.Type("a fourth wheel, ordered").Type("+3 weeks").Type("power off, covered");
        return bench;
    }

    private static Job Waiting(PaperBench bench) =>
        bench.Session.AllJobs().Select(r => bench.Session.Read(r.Subject)).OfType<ServiceRunner.Session.JobReading.Ready>().Single().Job.State;

    private static PaperBench Through(PaperBench bench)
    {
        while (bench.Shell.Screen is TrayCheckModel && !bench.Picture().Contains("Every row was looked at", StringComparison.Ordinal)) bench.Keys("PageDown");
        return bench;
    }

    [Fact]
    public void The_held_page_says_that_the_tray_is_looked_through_first()
    {
        using PaperBench bench = Waiting();
        Snapshot.Verify(bench.Picture());
        bench.Keys("h");
        Snapshot.Verify(bench.Picture(), "row");
        Snapshot.Verify(bench.Picture(120, 40), "row.120x40");
    }

    [Fact]
    public void With_the_pedal_alone_a_whole_tray_is_gone_through_and_the_wait_ends()
    {
        using PaperBench bench = Waiting().Keys("h");
        int parts = PartsLedger.InTray(Waiting(bench)).Count;
        Through(bench);
        Assert.Contains($"Going on writes down that all {parts} parts lie in the tray, and ends the wait.", bench.Picture(120, 40), StringComparison.Ordinal);
        bench.Keys("PageDown");
        Assert.Equal("On the bench again; the whole tray was there.", bench.Shell.Message);
        Assert.IsType<Phase.Running>(bench.Job.Phase);
        Assert.Empty(bench.Job.Findings);
        Assert.Contains(bench.Job.Log[^1].Events, e => e is JobEvent.TrayChecked { Missing: [] } x && x.Seen == parts);
    }

    [Fact]
    public void A_number_marks_what_is_not_there_and_the_end_says_what_is_written_down()
    {
        using PaperBench bench = Waiting().Keys("h", "2", "3", "3");
        Snapshot.Verify(bench.Picture());
        Through(bench);
        Snapshot.Verify(bench.Picture(), "end");
        bench.Keys("PageDown");
        Assert.StartsWith("On the bench again. Written down as lost, and as a finding: ", bench.Shell.Message, StringComparison.Ordinal);
        Assert.Equal(new PartPlace.Lost(), bench.Job.PlaceOf(bench.Job.Findings.Single().Event.Part));
    }

    [Fact]
    public void Left_half_way_nothing_is_changed_and_the_marks_are_there_again()
    {
        using PaperBench bench = Waiting();
        int before = bench.Job.Log.Count;
        bench.Keys("h", "2", "PageDown", "PageDown", "Esc");
        Assert.Equal("It goes on waiting; nothing is written down. What is marked is kept while the program runs.", bench.Shell.Message);
        Assert.Equal(before, bench.Job.Log.Count);
        Snapshot.Verify(bench.Picture());
        bench.Keys("h");
        Assert.Contains("3 of ", bench.Picture(), StringComparison.Ordinal);
        bench.Keys("PageUp", "PageUp");
        Assert.Contains("✗ not there", bench.Picture(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_key_held_down_passes_one_row()
    {
        using PaperBench bench = Waiting().Keys("h");
        bench.Held("PageDown", 30, TimeSpan.FromMilliseconds(250));
        Assert.Contains("2 of ", bench.Picture(), StringComparison.Ordinal);
    }

    [Fact]
    public void Without_anything_in_the_tray_the_wait_just_ends()
    {
        using PaperBench bench = new PaperBench().WithJob().To("hear-owner").Keys("h", "1");
        bench.Type("her answer").Type("closed, in its bag").Keys("h");
        Assert.Equal("On the bench again.", bench.Shell.Message);
        Assert.IsType<Phase.Running>(bench.Job.Phase);
    }
}
