using System.Diagnostics;

namespace ServiceRunner.Tests.EndToEnd;

/// <summary>The program as it was built: what SERVICERUNNER names (the native binary in CI), else the one beside the tests.</summary>
internal static class BuiltProgram
{
    public static string Path => Environment.GetEnvironmentVariable("SERVICERUNNER") is { Length: > 0 } named ? named : Beside;

    public static string Beside => System.IO.Path.Combine(AppContext.BaseDirectory, OperatingSystem.IsWindows() ? "servicerunner.exe" : "servicerunner");

    /// <summary>Runs a verb with its streams in pipes.</summary>
    public static (int Exit, string Output, string Errors) Run(string home, params string[] arguments)
    {
        ProcessStartInfo start = new(Path, arguments) { RedirectStandardInput = true, RedirectStandardOutput = true, RedirectStandardError = true };
        start.Environment["HOME"] = home;
        start.Environment.Remove("XDG_DATA_HOME");
        start.Environment["TZ"] = "UTC";
        using Process process = Process.Start(start)!;
        process.StandardInput.Close();
        Task<string> errors = process.StandardError.ReadToEndAsync();
        string output = process.StandardOutput.ReadToEnd();
        Assert.True(process.WaitForExit(TimeSpan.FromSeconds(60)), "the program did not end");
        return (process.ExitCode, output, errors.Result);
    }
}
