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
}
