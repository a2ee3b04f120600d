using ServiceRunner.Benchmarks.Logs;

namespace ServiceRunner.Benchmarks.Screens;

/// <summary>
/// From starting the program to the last line of its first frame: on the invented workshop, and on a folder of a thousand
/// jobs, a job a day, of which twelve are open.
/// </summary>
internal static class FirstFrame
{
    private const int Rounds = 21, Jobs = 1_000;

    public static void Run()
    {
        if (ShownProgram.WhyNot is { Length: > 0 } why)
        {
            Pairs.Line("not measured", why);
            return;
        }
        using Disk disk = new();
        List<double> console = [];
        string years = disk.In("years");
        Pairs.Line($"lines of the folder with {Jobs:N0} jobs", $"{YearsOfWork.MakeJobs(years, Jobs):N0}");
        foreach ((string name, string path) in Candidates.Builds)
        {
            Measure($"{name}: first frame, invented workshop", path, Candidates.Demo(disk, name));
            Measure($"{name}: first frame, {Jobs:N0} jobs", path, years);
            for (int i = 0; i < Rounds; i++) console.Add(Bare(BareConsole.Name));
        }
        Pairs.Line($"bare console program, {Candidates.OwnBuild}", $"{Pairs.Figure(Pairs.Median(console))} ms");
    }

    private static void Measure(string what, string path, string data)
    {
        Pairs pairs = new(what, $"bare screen, {Candidates.OwnBuild}", "ms");
        List<double> memory = [];
        Ours(path, data, memory);
        Bare(BareScreen.Name);
        pairs.Run(Rounds, () => Ours(path, data, memory), () => Bare(BareScreen.Name));
        pairs.Print(mostRatio: 1.3);
        Pairs.Line("memory then (VmRSS), the most", $"{Pairs.Figure(memory.Max())} MiB");
    }

    private static double Ours(string path, string data, List<double> memory)
    {
        using ShownProgram shown = Candidates.Start(path, data);
        double took = shown.Until(Candidates.LastOfFrame);
        memory.Add(shown.Memory);
        return took;
    }

    private static double Bare(string mode)
    {
        using ShownProgram shown = new(Candidates.Self, mode);
        return shown.Until(BareScreen.Mark);
    }
}
