using ServiceRunner.Files.Checks;
using ServiceRunner.Files.Procedures;
using ServiceRunner.Files.Tests.Checks;

using ServiceRunner.Tests.Shared;

namespace ServiceRunner.Files.Tests.Procedures;

/// <summary>What is shipped is held to what is asked of others.</summary>
public class ShippedProceduresTests
{
    public static TheoryData<string> Files => [.. Directory.GetFiles(Folder, "*.yaml").Select(f => Path.GetFileName(f)!).Order(StringComparer.Ordinal)];

    private static string Folder => Path.Combine(Repository.Root, "procedures");

    [Theory]
    [MemberData(nameof(Files))]
    public void A_shipped_procedure_has_no_error_and_no_warning(string file)
    {
        CheckReport report = Checker.Check([Path.Combine(Folder, file)], ProcedureLibrary.Empty);
        string said = string.Concat(report.Diagnostics.Where(d => d.Severity != Severity.Note).Select(DiagnosticText.Line));
        Assert.Equal("", said.Replace(Folder + Path.DirectorySeparatorChar, "", StringComparison.Ordinal));
    }

    [Fact]
    public void A_shipped_procedure_is_called_after_its_id()
    {
        foreach (LibraryEntry entry in new ProcedureLibrary(ProcedureSource.Folder(Folder)).List())
            Assert.Equal(entry.Id + ".yaml", Path.GetFileName(entry.File));
    }
}
