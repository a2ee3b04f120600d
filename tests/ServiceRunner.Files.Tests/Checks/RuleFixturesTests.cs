using System.Runtime.CompilerServices;
using ServiceRunner.Files.Checks;
using ServiceRunner.Files.Procedures;
using ServiceRunner.Tests.Shared;

namespace ServiceRunner.Files.Tests.Checks;

/// <summary>Each rule has a file in rules/ that breaks it, and what the check says of that file, word for word.</summary>
public class RuleFixturesTests
{
    // These are about files as such; they have tests of their own in CheckerTests and TextFileTests.
    private static readonly string[] WithoutFixture = ["cannot-open", "file-too-big", "same-procedure"];

    private static readonly string[] WithFixture = [.. Rules.All.Select(r => r.Code).Except(WithoutFixture)];

    public static TheoryData<string> Codes => [.. WithFixture];

    [Theory]
    [MemberData(nameof(Codes))]
    public void A_file_that_breaks_the_rule_is_told_so(string code)
    {
        string folder = Folder();
        ProcedureLibrary library = new(ProcedureSource.Folder(Path.Combine(folder, "library")));
        CheckReport report = Checker.Check([Path.Combine(folder, code + ".yaml")], library);
        using StringWriter text = new();
        DiagnosticText.Write(report.Diagnostics, report.Files.Count, text);
        string said = text.ToString().Replace(folder + Path.DirectorySeparatorChar, "", StringComparison.Ordinal);

        Snapshot.Compare(said, Path.Combine(folder, code + ".verified.txt"), Path.Combine(folder, code + ".received.txt"));
        Assert.Contains(report.Diagnostics, d => d.Code == code);
    }

    [Fact]
    public void Every_fixture_belongs_to_a_rule() =>
        Assert.Empty(Directory.GetFiles(Folder(), "*.yaml").Select(f => Path.GetFileNameWithoutExtension(f)!).Except(WithFixture));

    private static string Folder([CallerFilePath] string here = "") => Path.Combine(Path.GetDirectoryName(here)!, "rules");
}
