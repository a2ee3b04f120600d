using System.Runtime.CompilerServices;
using ServiceRunner.Terminal;
using Terminal.Gui.App;
using Terminal.Gui.Input;

namespace ServiceRunner.Tests.Terminal;

/// <summary>
/// Runs before anything of the terminal library is touched. Every test runs in the home of somebody whose other programs
/// of this library end with Space and write Ctrl-C for Ctrl+C; none may notice.
/// </summary>
internal static class TestInit
{
    /// <summary>The keys that end a program, as the library had read them before its defaults were put back.</summary>
    public static IReadOnlyList<Key> QuitKeysOfTheStranger { get; private set; } = [];

    [ModuleInitializer]
    internal static void Prepare()
    {
        Environment.SetEnvironmentVariable("DisableRealDriverIO", "1"); // or it opens the terminal that the tests were started from
        Environment.SetEnvironmentVariable("SERVICERUNNER", EndToEnd.BuiltProgram.Path);
        ThreadPool.SetMinThreads(64, 64);                               // each screen keeps one thread waiting for keys
        string? home = Environment.GetEnvironmentVariable("HOME");
        DirectoryInfo stranger = Directory.CreateTempSubdirectory("servicerunner-stranger-");
        Directory.CreateDirectory(Path.Combine(stranger.FullName, ".tui"));
        File.WriteAllText(Path.Combine(stranger.FullName, ".tui", "config.json"),
            """{ "Application": { "DefaultKeyBindings": { "Quit": { "All": ["Space"] } }, "AppModel": "Inline" }, "Key": { "Separator": "-" } }""");
        Environment.SetEnvironmentVariable("HOME", stranger.FullName);
        ReadBeforePinning(); // as in the native program, where the library reads before ours begins
        LibraryDefaults.Pin();
        Environment.SetEnvironmentVariable("HOME", home);
        stranger.Delete(recursive: true);
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private static void ReadBeforePinning() => QuitKeysOfTheStranger = [.. QuitKeys()];

    public static IEnumerable<Key> QuitKeys() => Application.DefaultKeyBindings![Command.Quit].GetCurrentPlatformKeys();
}
