using System.Runtime.CompilerServices;
using System.Xml.Linq;
using ServiceRunner.Core.Jobs;
using ServiceRunner.Tests.Screens;
using ServiceRunner.Tests.Shared;

namespace ServiceRunner.Tests.EndToEnd;

/// <summary>The sheet of the shipped staff replacement, from figures typed at the bench.</summary>
public class SheetTests
{
    // What a repairer measured, by hand; no two are alike, so that a line taken from another figure would show.
    private static readonly Dictionary<string, string> Typed = new(StringComparer.Ordinal)
    {
        ["whole length of the old staff"] = "2.79", ["upper pivot of the old staff"] = "0.095", ["lower pivot of the old staff"] = "0.096",
        ["upper jewel hole"] = "0.110", ["lower jewel hole"] = "0.112", ["distance between the endstones"] = "2.850",
        ["end shake wanted"] = "0.025", ["side shake wanted"] = "0.010",
        ["collet seat of the old staff"] = "0.52", ["balance seat of the old staff"] = "0.83", ["hub of the old staff"] = "1.10", ["roller seat of the old staff"] = "0.47",
        ["height of the balance seat over the lower end"] = "1.32", ["height of the roller shoulder over the lower end"] = "1.05", ["height of the collet shoulder over the lower end"] = "1.61",
    };

    [Fact]
    public void Every_line_of_the_staff_has_its_size_and_where_it_came_from()
    {
        using PaperBench bench = new PaperBench().WithJob(procedure: "staff-replacement");
        Walk(bench, "make-staff");
        (int exit, string sheet, string errors) = BuiltProgram.Run(bench.Path, "sheet", "Q26-001", "--data", bench.Path);
        Assert.Equal((0, ""), (exit, errors));
        // 2.850 - 0.025, 0.110 - 0.010 and 0.112 - 0.010
        foreach (string size in new[] { "2.825 mm", "0.100 mm", "0.102 mm" }) Assert.Contains(size, sheet, StringComparison.Ordinal);
        Picture(sheet, "whole");
        (exit, string page, errors) = BuiltProgram.Run(bench.Path, "sheet", "Q26-001", "--html", "--data", bench.Path);
        Assert.Equal((0, ""), (exit, errors));
        Assert.Equal(10, XDocument.Parse(page).Descendants().Count(e => e.Name.LocalName == "tr" && e.Parent!.Name.LocalName == "tbody"));
    }

    [Fact]
    public void What_is_not_measured_yet_is_missing_and_a_job_without_a_sheet_says_so()
    {
        using PaperBench bench = new PaperBench().WithJob(procedure: "staff-replacement");
        Walk(bench, "frame");
        Picture(BuiltProgram.Run(bench.Path, "sheet", "Q26-001", "--data", bench.Path).Output, "begun");
        bench.WithJob("Q26-002", "pivot-repolish");
        Assert.Equal((3, "", "servicerunner: no procedure of job 'Q26-002' has a sheet of a part to be made.\n"), BuiltProgram.Run(bench.Path, "sheet", "Q26-002", "--data", bench.Path));
    }

    private static void Picture(string sheet, string name, [CallerFilePath] string here = "")
    {
        string folder = Path.GetDirectoryName(here)!;
        Snapshot.Compare(sheet, Path.Combine(folder, $"SheetTests.{name}.verified.txt"), Path.Combine(folder, $"SheetTests.{name}.received.txt"));
    }

    private static void Walk(PaperBench bench, string step)
    {
        Assert.True(bench.Session.Act(bench.Run.Job, new JobAction.AnswerFact("staff", "made on the lathe")).IsDone);
        for (int i = 0; i < 200 && bench.Run.Shown?.Step.Id.Value != step; i++)
        {
            if (bench.Run.Offer is Offer.Answer { Ask: Ask.Measure { Facet: var facet } } && Typed.TryGetValue(facet.What, out string? typed)) bench.Keys("Enter").Type(typed);
            else if (bench.Run.Offer is Offer.Answer { Act: null, Ask.Choices.Count: > 0 }) bench.Keys("1");
            else if (bench.Run.Offer is Offer.Answer { Act: null }) bench.Keys("Enter").Type("as drawn on the card");
            else bench.Keys("Enter");
        }
    }
}
