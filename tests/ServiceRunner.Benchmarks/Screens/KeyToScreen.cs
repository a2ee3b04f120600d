using System.Diagnostics;
using System.Globalization;

namespace ServiceRunner.Benchmarks.Screens;

/// <summary>
/// A key until the first byte that it changes on the screen, and until the screen is quiet again; then the load of doing
/// nothing, and the memory. The bare screen gets its key right after each of ours.
/// </summary>
internal static class KeyToScreen
{
    private const int Keys = 200;
    private const double Target = 40;
    private const string Down = "\e[B", Up = "\e[A", PageUp = "\e[5~", PageDown = "\e[6~", Escape = "\e";
    private static readonly TimeSpan Idle = TimeSpan.FromSeconds(20), DeadTime = TimeSpan.FromMilliseconds(900);

    public static void Run()
    {
        if (ShownProgram.WhyNot is { Length: > 0 } why)
        {
            Pairs.Line("not measured", why);
            return;
        }
        using Disk disk = new();
        Pairs.Line("floor", $"bare screen, {Candidates.OwnBuild}");
        foreach ((string name, string path) in Candidates.Builds) Measure(disk, name, path);
    }

    private static void Measure(Disk disk, string name, string path)
    {
        using ShownProgram bare = new(Candidates.Self, BareScreen.Name);
        bare.Until(BareScreen.Mark);
        using ShownProgram ours = Candidates.Start(path, Candidates.Demo(disk, name));
        ours.Until(Candidates.LastOfFrame);
        Thread.Sleep(500);
        Press(name, "board, Down and Up", ours, bare, i => ours.Press(i % 2 == 0 ? Down : Up));
        Rest(name, "board, a clock counting", ours, bare);
        Open(ours, 2); // the interrupted job, which has most to look back at
        Press(name, "job, PageUp", ours, bare, i =>
        {
            if (i % 40 == 0)
            {
                Thread.Sleep(DeadTime);
                ours.Press(PageDown);
            }
            return ours.Press(PageUp);
        });
        ours.Press(Escape);
        Thread.Sleep(DeadTime);
        Open(ours, 1); // the job whose bath is counting
        Rest(name, "job, its clock counting", ours, bare);
        Pairs.Line($"{name}: memory (VmRSS)", $"{Memory(ours.Pid)} MiB; bare screen {Memory(bare.Pid)} MiB");
        ours.Press(Escape);
        Thread.Sleep(500);
    }

    // Up to the first job, then down to the one wanted, and into it.
    private static void Open(ShownProgram ours, int job)
    {
        for (int i = 0; i < 8; i++) ours.Press(Up);
        for (int i = 0; i < job; i++) ours.Press(Down);
        Thread.Sleep(DeadTime);
        ours.Press("\r");
        Thread.Sleep(500);
    }

    private static void Press(string name, string what, ShownProgram ours, ShownProgram bare, Func<int, (double First, double Last)?> press)
    {
        // Uneven waits, or the keys would keep step with the program's turns.
        Random uneven = new(1);
        List<(double First, double Last)> own = [], floor = [];
        int nothing = 0;
        for (int i = 0; i < Keys; i++)
        {
            if (press(i) is { } took) own.Add(took);
            else nothing++;
            Thread.Sleep(uneven.Next(20, 80));
            if (bare.Press("x") is { } least) floor.Add(least);
            Thread.Sleep(uneven.Next(20, 80));
        }
        double first = Pairs.Share(own.Select(t => t.First), 0.95);
        Pairs.Line($"{name}: {what}, to the first byte", $"{Both(own.Select(t => t.First))}, floor {Both(floor.Select(t => t.First))}, ratio of p95 {Pairs.Figure(first / Pairs.Share(floor.Select(t => t.First), 0.95))}");
        Pairs.Line($"{name}: {what}, until quiet", $"{Both(own.Select(t => t.Last))}, floor {Both(floor.Select(t => t.Last))}");
        Pairs.Line("target: p95 under 40 ms", first < Target ? "met" : "missed");
        if (nothing > 0) Pairs.Line("keys that changed nothing within a second", $"{nothing} of {Keys}");
    }

    private static string Both(IEnumerable<double> times) => $"p50 {Pairs.Figure(Pairs.Share(times, 0.5))} p95 {Pairs.Figure(Pairs.Share(times, 0.95))} ms";

    private static void Rest(string name, string what, ShownProgram ours, ShownProgram bare)
    {
        Thread.Sleep(1000);
        (double own, double floor, int written) = (Busy(ours.Pid), Busy(bare.Pid), ours.Written);
        long start = Stopwatch.GetTimestamp();
        Thread.Sleep(Idle);
        double seconds = Stopwatch.GetElapsedTime(start).TotalSeconds;
        Pairs.Line($"{name}: {what}, doing nothing", string.Create(CultureInfo.InvariantCulture,
            $"{(Busy(ours.Pid) - own) / seconds:0.0} % of a core, {(ours.Written - written) / seconds:0} bytes/s; bare screen {(Busy(bare.Pid) - floor) / seconds:0.0} %"));
    }

    // Hundredths of a second of processor time so far, so that per second it is per cent.
    internal static double Busy(int pid)
    {
        string stat = File.ReadAllText($"/proc/{pid}/stat");
        string[] fields = stat[(stat.LastIndexOf(')') + 2)..].Split(' ');
        return double.Parse(fields[11], CultureInfo.InvariantCulture) + double.Parse(fields[12], CultureInfo.InvariantCulture);
    }

    private static long Memory(int pid) => long.Parse(
        File.ReadLines($"/proc/{pid}/status").First(l => l.StartsWith("VmRSS:", StringComparison.Ordinal)).Split(' ', StringSplitOptions.RemoveEmptyEntries)[1],
        CultureInfo.InvariantCulture) / 1024;
}
