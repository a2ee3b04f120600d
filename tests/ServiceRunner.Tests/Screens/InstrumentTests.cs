using ServiceRunner.Files.Reports;
using ServiceRunner.Tests.Shared;

namespace ServiceRunner.Tests.Screens;

/// <summary>A measure shows with which instrument it is taken; a key takes another one, and the bench remembers it.</summary>
public class InstrumentTests
{
    private const string There = "\ninstruments:\n  - {instrument: micrometer, name: Bench micrometer, unit: mm, checked: 2026-01-15}\n  - {instrument: gauge, name: Dial gauge, unit: mm}\n";

    private static string Without => System.Text.RegularExpressions.Regex.Replace(PaperBench.DemoWorkshop, "instruments:\n(  - [^\n]*\n)+", "");

    private static string At(PaperBench bench) => string.Join(' ', bench.Picture().Split('\n').Select(l => l.Trim()));

    [Fact]
    public void Of_two_none_is_written_down_until_it_is_said_which_and_then_the_report_says_so()
    {
        using PaperBench bench = new PaperBench(Without + There).WithJob();
        bench.ToAsk("measure:balance end shake as received");
        Assert.Contains("With which instrument is not stated; n says it.", At(bench), StringComparison.Ordinal);
        bench.Keys("n");
        Snapshot.Verify(bench.Picture(), "choice");
        bench.Pick("Bench micrometer");
        Assert.Equal("In mm with Bench micrometer.", bench.Shell.Message);
        Assert.Contains("With Bench micrometer, last checked 15 Jan; n another one.", At(bench), StringComparison.Ordinal);
        Snapshot.Verify(bench.Picture(), "with");
        bench.Keys("v").Type("0,025");
        string report = new TextReport(new JobStory(bench.Job, bench.Run.Job.Plan, bench.Session.Workshop, "", "")).ToString();
        Assert.Contains("Balance end shake as received: 0,025 mm (0.02 to 0.03 mm), with Bench micrometer\n", report, StringComparison.Ordinal);

        // The bench remembers it through an end of the program.
        bench.Restart();
        Assert.Equal("micrometer", bench.Session.Bench.Instruments["mm"]);
    }

    [Fact]
    public void Where_the_workshop_has_none_nothing_is_said_of_it()
    {
        using PaperBench bench = new PaperBench(Without).WithJob();
        bench.ToAsk("measure:balance end shake as received");
        Assert.DoesNotContain("instrument", At(bench), StringComparison.Ordinal);
        bench.Keys("n");
        Assert.Equal("Nothing is measured here that the workshop file has an instrument for.", bench.Shell.Message);
    }

    [Fact]
    public void Alone_in_the_workshop_going_on_leaves_the_second_person_out()
    {
        string alone = System.Text.RegularExpressions.Regex.Replace(PaperBench.DemoWorkshop, @"\n  - \{initials: (?!IV)[^\n]*", "");
        using PaperBench bench = new PaperBench(alone).WithJob();
        Assert.Single(bench.Session.Workshop.People);
        bench.ToAsk("witness");
        Assert.Contains("go on alone", At(bench), StringComparison.Ordinal);
        int deviations = bench.Job.Deviations.Count;
        bench.Keys("Enter");
        Assert.Equal("Nobody else works here: no second person looked.", bench.Shell.Message);
        Assert.Equal(deviations, bench.Job.Deviations.Count);
    }
}
