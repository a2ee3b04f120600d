using System.Runtime.InteropServices;
using ServiceRunner.Benchmarks.Logs;
using ServiceRunner.Benchmarks.Procedures;
using ServiceRunner.Benchmarks.Screens;

namespace ServiceRunner.Benchmarks;

/// <summary>Measures what docs/benchmarks.md lists. Each figure stands beside a floor taken in the same run; none is a test.</summary>
internal static class Benchmarks
{
    private static readonly (string Name, string What, bool Always, Action Run)[] All =
    [
        ("append", "a durable step against a bare append and fdatasync", true, Append.Run),
        ("open-job", "a job of 10,000 actions read, verified and folded", true, JobOpening.Run),
        ("open-log", "opening the bench with 1,000, 10,000 and 100,000 lines", true, () => LogOpening.Run(1_000, 10_000, 100_000)),
        ("open-log-long", "the same up to 1,000,000 lines", false, () => LogOpening.Run(1_000, 100_000, 1_000_000)),
        ("scan", "an audit against reading and one SHA-256", true, Scan.Run),
        ("trace", "a batch traced through 10,000 jobs against LiteDB's bare query", true, Trace.Run),
        ("oiling", "sixty oiling points drawn, against a frame of 33 ms", true, OilingFrame.Run),
        ("check", "1,000 procedures checked against their bare YAML events", true, Checking.Run),
        ("first-frame", "start to first frame against a bare screen", true, FirstFrame.Run),
        ("eight-clocks", "the board with eight clocks against the same with none", true, EightClocks.Run),
        ("key", "key to screen, idle load and memory against a bare screen", true, KeyToScreen.Run),
    ];

    public static int Main(string[] args)
    {
        switch (args)
        {
            case [BareScreen.Name]: return BareScreen.Run();
            case [BareConsole.Name]: return BareConsole.Run();
        }
        if (args.FirstOrDefault(a => !All.Any(b => b.Name == a)) is { } unknown)
        {
            Console.Error.WriteLine($"There is no benchmark '{unknown}'. There are:");
            foreach (var b in All) Console.Error.WriteLine($"  {b.Name,-14} {b.What}{(b.Always ? "" : " (only when named)")}");
            return 2;
        }
        Console.WriteLine($"{RuntimeInformation.OSDescription}; .NET {Environment.Version}, {Candidates.OwnBuild}; {Environment.ProcessorCount} processors; load {Load()}");
        foreach (var b in All.Where(b => args.Length == 0 ? b.Always : args.Contains(b.Name)))
        {
            Console.WriteLine();
            Console.WriteLine($"{b.Name}: {b.What}");
            b.Run();
        }
        Console.WriteLine();
        Console.WriteLine($"load afterwards {Load()}");
        return 0;
    }

    // What else the machine was doing: a reader of the figures must be able to tell.
    private static string Load() => File.Exists("/proc/loadavg") ? string.Join(' ', File.ReadAllText("/proc/loadavg").Split(' ').Take(3)) : "unknown";
}
