using System.Xml.Linq;
using ServiceRunner.Files.Machine;

namespace ServiceRunner.Tests.EndToEnd;

public class ReportTests
{
    [Fact]
    public void A_page_goes_to_standard_output_or_into_a_file_and_failures_are_said()
    {
        using TemporaryFolder folder = new();
        string data = Path.Combine(folder.Path, "data"), file = Path.Combine(folder.Path, "report.html");
        Assert.Null(ServiceRunner.Demo.DemoWorkshop.Make(data, new MachineClock()));
        (int exit, string page, string errors) = BuiltProgram.Run(folder.Path, "report", "Q26-101", "--html", "--data", data);
        Assert.Equal((0, ""), (exit, errors));
        Assert.Contains("M. Halvorsen", XDocument.Parse(page).Root!.Value, StringComparison.Ordinal);

        string[] toFile = ["report", "Q26-101", "--html", "--data", data, "--out"];
        (exit, string output, errors) = BuiltProgram.Run(folder.Path, [.. toFile, file]);
        Assert.Equal((0, "", $"servicerunner: wrote {file}.\n"), (exit, output, errors));
        Assert.Equal(page, File.ReadAllText(file));
        (exit, _, errors) = BuiltProgram.Run(folder.Path, "report", "Q26-101", "--data", data, "--out", file);
        Assert.Equal((0, $"servicerunner: replaced {file}.\n"), (exit, errors));
        Assert.StartsWith("Quay Lane", File.ReadAllText(file), StringComparison.Ordinal);

        Assert.Equal((3, "", $"servicerunner: {data} is a folder; name a file with --out.\n"), BuiltProgram.Run(folder.Path, [.. toFile, data]));
        string nowhere = Path.Combine(folder.Path, "none");
        Assert.Equal((3, "", $"servicerunner: there is no folder {nowhere} to write x.html into.\n"), BuiltProgram.Run(folder.Path, [.. toFile, Path.Combine(nowhere, "x.html")]));
        if (OperatingSystem.IsLinux())
            Assert.Equal((3, "", "servicerunner: /dev/null is no file that could be replaced, but a pipe or a device; name another one with --out.\n"), BuiltProgram.Run(folder.Path, [.. toFile, "/dev/null"]));
        Assert.Equal(["data", "report.html"], Directory.GetFileSystemEntries(folder.Path).Select(Path.GetFileName).Where(n => n![0] != '.').Order());
        Assert.DoesNotContain(Directory.GetFiles(folder.Path), f => Path.GetFileName(f).Contains("report.html.", StringComparison.Ordinal));
    }

    [Fact]
    public void An_estimate_is_text_or_a_page()
    {
        using TemporaryFolder folder = new();
        string data = Path.Combine(folder.Path, "data"), file = Path.Combine(folder.Path, "estimate.html");
        Assert.Null(ServiceRunner.Demo.DemoWorkshop.Make(data, new MachineClock()));
        (int exit, string text, string errors) = BuiltProgram.Run(folder.Path, "estimate", "Q26-101", "--data", data);
        Assert.Equal((0, ""), (exit, errors));
        Assert.StartsWith("Quay Lane Watch and Clock Workshop\nDraft of an estimate Q26-101, ", text, StringComparison.Ordinal);
        Assert.Contains("Agreed limit of cost: 380 EUR.\n", text, StringComparison.Ordinal);
        Assert.Equal((0, "", $"servicerunner: wrote {file}.\n"), BuiltProgram.Run(folder.Path, "estimate", "Q26-101", "--html", "--data", data, "--out", file));
        Assert.Contains("M. Halvorsen", XDocument.Load(file).Root!.Value, StringComparison.Ordinal);
        Assert.Equal((3, "", $"servicerunner: there is no job 'Q26-999' in {data}; 'servicerunner jobs --all' lists them.\n"), BuiltProgram.Run(folder.Path, "estimate", "Q26-999", "--data", data));
    }

    [Fact]
    public void Receipt_and_label_are_text_or_a_page()
    {
        using TemporaryFolder folder = new();
        string data = Path.Combine(folder.Path, "data"), file = Path.Combine(folder.Path, "label.html");
        Assert.Null(ServiceRunner.Demo.DemoWorkshop.Make(data, new MachineClock()));
        (int exit, string receipt, string errors) = BuiltProgram.Run(folder.Path, "receipt", "Q26-109", "--data", data);
        Assert.Equal((0, ""), (exit, errors));
        Assert.StartsWith("Quay Lane Watch and Clock Workshop\nReceipt Q26-109, ", receipt, StringComparison.Ordinal);
        Assert.Contains("Owner:          S. Marchetti\n                555 0109\n", receipt, StringComparison.Ordinal);
        Assert.DoesNotContain("Cost limit", receipt, StringComparison.Ordinal);
        (exit, string page, _) = BuiltProgram.Run(folder.Path, "receipt", "Q26-101", "--html", "--data", data);
        Assert.Equal(0, exit);
        Assert.Contains("380 EUR", XDocument.Parse(page).Root!.Value, StringComparison.Ordinal);
        Assert.Equal((0, "", $"servicerunner: wrote {file}.\n"), BuiltProgram.Run(folder.Path, "label", "Q26-104", "--html", "--data", data, "--out", file));
        Assert.Contains("R. Osei", XDocument.Load(file).Root!.Value, StringComparison.Ordinal);
        Assert.StartsWith("Q26-104\nWrist watch", BuiltProgram.Run(folder.Path, "label", "Q26-104", "--data", data).Output, StringComparison.Ordinal);
        Assert.Equal((3, "", $"servicerunner: there is no job 'Q26-999' in {data}; 'servicerunner jobs --all' lists them.\n"), BuiltProgram.Run(folder.Path, "receipt", "Q26-999", "--data", data));
    }
}
