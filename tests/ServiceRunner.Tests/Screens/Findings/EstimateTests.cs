using System.Xml.Linq;
using ServiceRunner.Core.Jobs;
using ServiceRunner.Core.Quantities;
using ServiceRunner.Screens.Findings;
using ServiceRunner.Session;
using ServiceRunner.Tests.Shared;

namespace ServiceRunner.Tests.Screens.Findings;

/// <summary>An estimate is written down and put on paper; the limit agreed at intake stands for the owner's word.</summary>
public class EstimateTests
{
    // A bent pivot and a limit of 300; the findings are open.
    private static PaperBench Bent()
    {
        PaperBench bench = new PaperBench().WithJob();
        Assert.True(bench.Session.Act(bench.Run.Job, new JobAction.NoteIntake("", "", null, TypedNumber.Of(300), "glass cracked")).IsDone);
        bench.ToAsk("examine:fourth-pivots");
        Ask ask = Assert.IsType<Offer.Answer>(bench.Run.Offer).Ask;
        return bench.Keys($"{ask.Choices.ToList().IndexOf("bent") + 1}", "F5");
    }

    [Fact]
    public void What_stays_within_the_agreed_limit_does_not_wait_and_what_goes_over_it_does()
    {
        using PaperBench bench = Bent();
        bench.Keys("c").Type("95").Type("1 h").Keys("Enter").Pick("Mend it here").Pick("Replace a wheel");
        Assert.EndsWith("It is within the agreed 300.00 EUR, the service itself not counted.", bench.Shell.Message, StringComparison.Ordinal);
        FindingsModel findings = Assert.IsType<FindingsModel>(bench.Shell.Screen);
        Assert.Equal(FindingStanding.InRepair, findings.Marked!.Standing);
        Snapshot.Verify(bench.Picture(), "within-limit");
        bench.Keys("c").Type("310,50").Type("1 h");
        Assert.Equal(FindingStanding.WaitsForOwner, findings.Marked!.Standing);
        Assert.Contains("Cost: 310.50 EUR and 1 h, 310.50 EUR with the other findings, 10.50 EUR over the agreed 300.00 EUR.", string.Join(' ', bench.Picture().Split('\n').Select(l => l.Trim())), StringComparison.Ordinal);
    }

    [Fact]
    public void The_estimate_is_put_on_paper_with_the_condition_of_the_piece()
    {
        using PaperBench bench = Bent();
        bench.Keys("c").Type("95").Type("1 h").Keys("Enter").Pick("Ask the owner").Keys("e");
        string page = Path.Combine(bench.Path, "printed", "Q26-001-estimate.html");
        Assert.Equal($"The estimate is written down: 95.00 EUR. To be opened in a browser and printed: {page}.", bench.Shell.Message);
        string text = XDocument.Load(page).Root!.Value;
        foreach (string told in new[] { "Estimate Q26-001", "glass cracked", "bent", "95.00 EUR", "1 h" }) Assert.Contains(told, text, StringComparison.Ordinal);
        Assert.DoesNotContain("draft", text, StringComparison.OrdinalIgnoreCase);
        File.Delete(page);
        Directory.Delete(Path.GetDirectoryName(page)!);
        File.WriteAllText(Path.GetDirectoryName(page)!, "in the way");
        bench.Keys("e");
        Assert.StartsWith("The estimate is written down: 95.00 EUR. It could not be put on paper: ", bench.Shell.Message, StringComparison.Ordinal);
        Assert.Equal(2, Assert.IsType<FindingsModel>(bench.Shell.Screen).Job.State.Estimates.Count);
    }
}
