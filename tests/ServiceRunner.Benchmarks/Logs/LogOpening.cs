using ServiceRunner.Files.Machine;
using ServiceRunner.Session;

namespace ServiceRunner.Benchmarks.Logs;

/// <summary>
/// The bench opened as the program opens it, with its board, by logs of different lengths in turn: it must not get slower
/// with the years. Then once more without the index, which is made anew from the journal.
/// </summary>
internal static class LogOpening
{
    private const int Rounds = 15;

    public static void Run(params int[] sizes)
    {
        using Disk disk = new();
        disk.Say();
        List<(string Folder, long Lines, List<double> Took)> logs = [];
        foreach (int size in sizes)
        {
            string folder = disk.In($"{size}");
            logs.Add((folder, YearsOfWork.Make(folder, size), []));
        }
        for (int i = -2; i < Rounds; i++)
            foreach ((string folder, _, List<double> took) in logs)
            {
                double time = Opening(folder, out _);
                if (i >= 0) took.Add(time);
            }
        double least = Pairs.Median(logs[0].Took);
        foreach ((string folder, long lines, List<double> took) in logs)
        {
            double time = Pairs.Median(took);
            Opening(folder, out int rows);
            Pairs.Line($"{lines:N0} lines ({rows} jobs on the board)", $"{Pairs.Figure(time)} ms, {Pairs.Figure(time / least)} times the smallest");
        }
        foreach ((string folder, long lines, _) in logs) WithoutIndex(folder, lines);
    }

    private static double Opening(string folder, out int rows)
    {
        BenchSession? session = null;
        int shown = 0;
        try
        {
            return Pairs.Milliseconds(() =>
            {
                session = MadeBench.Open(folder, new MachineClock());
                shown = session.Board().Count;
            });
        }
        finally
        {
            rows = shown;
            session?.Dispose();
        }
    }

    private static void WithoutIndex(string folder, long lines)
    {
        foreach (string file in Directory.EnumerateFiles(folder, "index*")) File.Delete(file);
        double time = Opening(folder, out _);
        Pairs.Line($"{lines:N0} lines, index made anew", $"{Pairs.Figure(time)} ms, {lines / time * 1000:N0} lines/s");
    }
}
