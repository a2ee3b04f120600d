using System.Runtime.CompilerServices;
using ServiceRunner.Demo;
using ServiceRunner.Files.Machine;

namespace ServiceRunner.Benchmarks.Screens;

/// <summary>What is put on the terminal: the program as built here, the native one if SERVICERUNNER_NATIVE names it, and the bare screen.</summary>
internal static class Candidates
{
    /// <summary>Stands in the last line of the first frame.</summary>
    public const string LastOfFrame = "leave";

    public static string Self => Environment.ProcessPath!;

    /// <summary>How this very program was built, and with it the bare ones.</summary>
    public static string OwnBuild => RuntimeFeature.IsDynamicCodeSupported ? "framework build" : "native build";

    /// <summary>Name and path of each build of the program.</summary>
    public static IEnumerable<(string Name, string Path)> Builds
    {
        get
        {
            // A native build of the benchmarks has no framework build of the program beside it.
            if (Path.Combine(AppContext.BaseDirectory, "servicerunner") is var built && File.Exists(built)) yield return ("framework build", built);
            if (Environment.GetEnvironmentVariable("SERVICERUNNER_NATIVE") is { Length: > 0 } native) yield return ("native build", Path.GetFullPath(native));
        }
    }

    /// <summary>Makes the invented workshop in a folder of its own.</summary>
    public static string Demo(Disk disk, string name)
    {
        string folder = disk.In(name.Replace(' ', '-'));
        return DemoWorkshop.Make(folder, new MachineClock()) is { } fault ? throw new InvalidOperationException(fault) : folder;
    }

    public static ShownProgram Start(string path, string data) => new(path, "demo", "--data", data);
}
