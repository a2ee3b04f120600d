using System.Xml.Linq;
using ServiceRunner.Core.Jobs;
using ServiceRunner.Files.Reports;
using ServiceRunner.Session;
using ServiceRunner.Tests.Shared;

namespace ServiceRunner.Tests.Screens.Parts;

/// <summary>What the owner reads of the parts: old ones back on, new ones and from where, what is missing; baskets by name.</summary>
public class PartsReportTests
{
    // A watch with a wheel replaced, a screw lost while it waited, a part added, and two parts left out of the wash.
    private static PaperBench Worked()
    {
        PaperBench bench = new PaperBench().WithJob().To("wash/jars-ready");
        OpenJob job = bench.Run.Job;
        void Act(JobAction action) => Assert.True(bench.Session.Act(job, action).IsDone);
        Act(new JobAction.RenewPart("mainspring", Origin.Supplied, "the same height and strength, from the material house"));
        Act(new JobAction.RenewPart("click-spring", Origin.MadeNew, ""));
        Act(new JobAction.AddPart("shim under the balance cock", "A17", 1, 0));
        Act(new JobAction.MovePart("third-wheel", new PartPlace.SetAside("under the lens")));
        Act(new JobAction.Hold(HoldFor.Part, "a fourth wheel, ordered", "power off, covered", new DateOnly(2026, 4, 1)));
        Act(new JobAction.Restart(["dial-screw-1"]));
        bench.To("see-holes-clean");
        Act(new JobAction.MovePart("third-wheel", new PartPlace.InTray("B7")));
        return bench;
    }

    private static JobStory Story(PaperBench bench) => new(bench.Job, bench.Run.Job.Plan, bench.Session.Workshop, "", "head");

    private static string Section(string report, string title)
    {
        string[] lines = report.Split('\n');
        int at = Array.FindIndex(lines, l => l.StartsWith(title, StringComparison.Ordinal));
        Assert.True(at >= 0, $"no '{title}' in:\n{report}");
        return string.Join('\n', lines.Skip(at).TakeWhile((l, i) => i == 0 || l.Length > 0)) + "\n";
    }

    [Fact]
    public void The_text_report_has_parts_and_baskets_word_for_word()
    {
        using PaperBench bench = Worked();
        string report = new TextReport(Story(bench)).ToString();
        Snapshot.Verify($"{Section(report, "What was answered")}\n{Section(report, "Baths and waits")}\n{Section(report, "Parts")}");
    }

    [Fact]
    public void The_page_says_the_same_of_the_parts_and_the_baskets()
    {
        using PaperBench bench = Worked();
        XDocument page = XDocument.Parse(new HtmlReport([Story(bench)]).ToString());
        XElement Table(string title) => page.Descendants().First(e => e.Name.LocalName == "h2" && e.Value == title).ElementsAfterSelf().First(e => e.Name.LocalName == "table");
        IEnumerable<string> Rows(XElement table) => table.Descendants().Where(e => e.Name.LocalName == "tr").Skip(1).Select(r => string.Join(" | ", r.Elements().Select(c => c.Value)));
        IEnumerable<string> loads = page.Descendants().Where(e => (string?)e.Attribute("class") == "load").Select(e => e.Value);
        Snapshot.Verify(string.Join('\n', [.. Rows(Table("Baths and waits")), .. loads, "", .. Rows(Table("Parts"))]) + "\n");
    }

    [Fact]
    public void Rates_as_received_and_at_the_end_stand_apart()
    {
        using PaperBench bench = new PaperBench().WithJob().ToEnd();
        JobStory story = Story(bench);
        string report = new TextReport(story).ToString();
        Assert.True(story.Rates.Count > 1);
        Assert.Equal(story.Rates.Count, story.Rates.Select(r => r.Step).Distinct().Count());
        Snapshot.Verify(string.Join('\n', report.Split('\n').Where(l => l.StartsWith("Rates, ", StringComparison.Ordinal))) + "\n" + Section(report, "Rates, ") + Section(report, "Parts"));
    }
}
