using System.Diagnostics;
using ServiceRunner.Tests.Shared;

namespace ServiceRunner.Tests.EndToEnd;

/// <summary>The package for `dotnet tool`: made by the README's command, installed from a folder without any network, and run.</summary>
public class ToolPackageTests
{
    [FactNeeding("dotnet")]
    public void It_is_packed_installed_and_runs()
    {
        using TemporaryFolder folder = new();
        string packages = Path.Combine(folder.Path, "packages"), tools = Path.Combine(folder.Path, "tools");
        // Its own place for what is built: other tests may be building.
        Dotnet("pack", Path.Combine(Repository.Root, "src", "ServiceRunner"), "-o", packages, "--artifacts-path", Path.Combine(folder.Path, "artifacts"), "--nologo", "-v", "quiet");
        string only = Path.Combine(folder.Path, "nuget.config");
        File.WriteAllText(only, "<configuration><packageSources><clear /></packageSources></configuration>");
        Dotnet("tool", "install", "ServiceRunner", "--add-source", packages, "--tool-path", tools, "--configfile", only);
        string tool = Path.Combine(tools, OperatingSystem.IsWindows() ? "servicerunner.exe" : "servicerunner");
        Assert.StartsWith("0.1.0", Run(tool, "--version"), StringComparison.Ordinal);
        Assert.Contains("nothing to say", Run(tool, "check", Path.Combine(Repository.Root, "procedures")), StringComparison.Ordinal);
        string data = Path.Combine(folder.Path, "data");
        Assert.Null(ServiceRunner.Demo.DemoWorkshop.Make(data, new Files.Machine.MachineClock()));
        Assert.Contains("Q26-104\twaiting for a part", Run(tool, "jobs", "--data", data), StringComparison.Ordinal);
    }

    private static void Dotnet(params string[] arguments) => Run(FactNeedingAttribute.Find("dotnet")!, arguments);

    private static string Run(string program, params string[] arguments)
    {
        ProcessStartInfo start = new(program, arguments) { RedirectStandardInput = true, RedirectStandardOutput = true, RedirectStandardError = true };
        // What runs the tests hands its own build down, which the packing must not take for its own.
        foreach (string handed in start.Environment.Keys.Where(k => k.StartsWith("MSBUILD", StringComparison.OrdinalIgnoreCase)).ToList()) start.Environment.Remove(handed);
        start.Environment["MSBUILDDISABLENODEREUSE"] = "1";
        using Process process = Process.Start(start)!;
        process.StandardInput.Close();
        Task<string> errors = process.StandardError.ReadToEndAsync();
        string output = process.StandardOutput.ReadToEnd();
        Assert.True(process.WaitForExit(TimeSpan.FromMinutes(10)), $"{program} did not end");
        Assert.True(process.ExitCode == 0, $"{program} {string.Join(' ', arguments)}: {process.ExitCode}\n{output}\n{errors.Result}");
        return output;
    }
}
