using System.Diagnostics;
using ServiceRunner.Diagnosis;
using ServiceRunner.Tests.Shared;

namespace ServiceRunner.Tests.EndToEnd;

/// <summary>What nobody foresaw is one sentence and exit code 70, never a page of the program's insides.</summary>
public class UnforeseenTests
{
    [Fact]
    public void An_exception_becomes_one_sentence()
    {
        StringWriter errors = new();
        DiagnosticLog none = new(TimeProvider.System);
        Assert.Equal(70, Program.Guarded(() => throw new InvalidOperationException("the spring\nbroke."), errors, none));
        Assert.Equal(
            "servicerunner: something went wrong that was not foreseen: the spring·broke (InvalidOperationException). What was shown as done is kept. With --diagnose, the details are written into the data folder.",
            errors.ToString().TrimEnd());
        Assert.Equal(3, Program.Guarded(() => 3, errors, none));
    }

    [FactNeeding("bash")]
    public void A_workshop_file_that_cannot_be_written_shows_no_stack()
    {
        using TemporaryFolder folder = new();
        // A limit on the size of files lets the folder's marker through, and not the workshop file.
        ProcessStartInfo start = new("bash", ["-c", $"trap '' XFSZ; ulimit -f 1; exec '{BuiltProgram.Path}' demo --data '{Path.Combine(folder.Path, "data")}'"]) { RedirectStandardInput = true, RedirectStandardOutput = true, RedirectStandardError = true };
        start.Environment["HOME"] = folder.Path;
        // The runtime keeps compiled code in a file in memory, which the limit would cut as well.
        start.Environment["DOTNET_EnableWriteXorExecute"] = "0";
        using Process process = Process.Start(start)!;
        process.StandardInput.Close();
        string errors = process.StandardError.ReadToEnd();
        Assert.True(process.WaitForExit(TimeSpan.FromSeconds(60)));
        Assert.Equal(70, process.ExitCode);
        Assert.Contains("servicerunner: something went wrong that was not foreseen: ", errors, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", errors, StringComparison.Ordinal);
    }

    [Fact]
    public void What_was_not_understood_has_its_own_exit_code()
    {
        using TemporaryFolder folder = new();
        Assert.Equal(2, BuiltProgram.Run(folder.Path, "reprot", "1").Exit);
        Assert.Equal(2, BuiltProgram.Run(folder.Path, "jobs", "--al").Exit);
    }
}
