using System.Diagnostics;
using System.Globalization;
using System.Text;
using ServiceRunner.Benchmarks.Logs;
using ServiceRunner.Core.Jobs;
using ServiceRunner.Files.Procedures;
using ServiceRunner.Session;

namespace ServiceRunner.Benchmarks.Screens;

/// <summary>The same board with no clock and with eight that count: a key to the screen, and the load of doing nothing.</summary>
internal static class EightClocks
{
    private const int Keys = 200, Clocks = 8;
    private const string Down = "\e[B", Up = "\e[A";
    private static readonly TimeSpan Idle = TimeSpan.FromSeconds(20);

    public static void Run()
    {
        if (ShownProgram.WhyNot is { Length: > 0 } why)
        {
            Pairs.Line("not measured", why);
            return;
        }
        using Disk disk = new();
        foreach ((string name, string path) in Candidates.Builds)
        {
            using ShownProgram none = Start(path, Make(disk.In($"{name}-0"), 0)), eight = Start(path, Make(disk.In($"{name}-8"), Clocks));
            Thread.Sleep(1000);
            Compare(name, eight, none);
            Rest(name, eight, none);
        }
    }

    private static ShownProgram Start(string path, string data)
    {
        ShownProgram program = new(path, "--data", data);
        program.Until(Candidates.LastOfFrame);
        return program;
    }

    // A workshop's own procedure of eight waits that leave the hands free; two more jobs, so that the mark can move.
    private static string Make(string folder, int clocks)
    {
        using MadeBench bench = new(folder);
        bench.Time.Now = bench.Time.Present;
        StringBuilder text = new("procedure: waits\nformat: 1\ntitle: Eight waits\nrevision: 1\nstages:\n  - stage: cleaning\n    steps:\n");
        for (int i = 1; i <= Clocks; i++) text.Append(CultureInfo.InvariantCulture, $"      - {{step: wait-{i}, do: Wait {i}, hands: free, wait: {{for: settling {i}, least: 1 h, aim: 2 h, most: 9 h}}}}\n");
        ReadProcedure waits = ProcedureReader.Read("waits.yaml", text.ToString(), ProcedureLibrary.Empty);
        (string id, ActOutcome outcome) = bench.Session.Book("W-1", "Eight waits", "", waits);
        OpenJob job = outcome.IsDone && bench.Session.Read(id) is JobReading.Ready ready ? ready.Job : throw new InvalidOperationException($"{outcome}");
        bench.Act(job, new JobAction.Start());
        for (int i = 1; i <= clocks; i++) bench.Act(job, new JobAction.BeginSoak(new StepRef("1", $"wait-{i}", 1), ""));
        bench.Book("W-2");
        bench.Book("W-3");
        return folder;
    }

    private static void Compare(string name, ShownProgram eight, ShownProgram none)
    {
        Random uneven = new(1);
        List<double> ours = [], floor = [];
        for (int i = 0; i < Keys; i++)
        {
            string key = i % 2 == 0 ? Down : Up;
            if (eight.Press(key) is { } took) ours.Add(took.First);
            Thread.Sleep(uneven.Next(20, 80));
            if (none.Press(key) is { } least) floor.Add(least.First);
            Thread.Sleep(uneven.Next(20, 80));
        }
        (double own, double without) = (Pairs.Share(ours, 0.95), Pairs.Share(floor, 0.95));
        Pairs.Line($"{name}: key to first byte, p95, eight clocks", $"{Pairs.Figure(own)} ms; with none {Pairs.Figure(without)} ms; ratio {Pairs.Figure(own / without)}");
        Pairs.Line("target: ratio at most 1.20", own / without <= 1.2 ? "met" : "missed");
    }

    private static void Rest(string name, ShownProgram eight, ShownProgram none)
    {
        Thread.Sleep(1000);
        (double ours, double floor) = (KeyToScreen.Busy(eight.Pid), KeyToScreen.Busy(none.Pid));
        long start = Stopwatch.GetTimestamp();
        Thread.Sleep(Idle);
        double seconds = Stopwatch.GetElapsedTime(start).TotalSeconds, load = (KeyToScreen.Busy(eight.Pid) - ours) / seconds;
        Pairs.Line($"{name}: doing nothing with eight clocks", string.Create(CultureInfo.InvariantCulture, $"{load:0.0} % of a core; with none {(KeyToScreen.Busy(none.Pid) - floor) / seconds:0.0} %"));
        Pairs.Line("target: under 8 % of a core", load < 8 ? "met" : "missed");
    }
}
