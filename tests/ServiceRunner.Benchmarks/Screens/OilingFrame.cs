using System.Globalization;
using System.Text;
using ServiceRunner.Benchmarks.Logs;
using ServiceRunner.Core.Jobs;
using ServiceRunner.Files.Procedures;
using ServiceRunner.Screens;
using ServiceRunner.Screens.Oiling;
using ServiceRunner.Screens.Run;
using ServiceRunner.Session;

namespace ServiceRunner.Benchmarks.Screens;

/// <summary>Sixty oiling points on both sides of a movement drawn on a sheet, against the frame of 33 ms and beside the same job's step.</summary>
internal static class OilingFrame
{
    private const int Points = 60, Rounds = 200;
    private const double Frame = 1000.0 / 30;

    public static void Run()
    {
        using Disk disk = new();
        using MadeBench bench = new(disk.In("points"));
        OpenJob job = Book(bench);
        Shell shell = new(bench.Session, TimeProvider.System);
        RunModel run = new(shell, job);
        OilingModel oiling = new(shell, run);
        foreach ((int width, int height) in new[] { (80, 24), (120, 40), (200, 60) })
        {
            double Draw(ScreenModel screen)
            {
                shell.Go(screen);
                return Pairs.Milliseconds(() => shell.Draw(width, height));
            }
            double first = Draw(oiling);
            List<double> all = [];
            Pairs pairs = new($"{Points} points, {width}×{height}", "the step of the same job", "ms");
            pairs.Run(Rounds, () =>
            {
                double took = Draw(oiling);
                all.Add(took);
                return took;
            }, () => Draw(run));
            pairs.Print(most: Frame);
            Pairs.Line("the first time, and the slowest after", $"{Pairs.Figure(first)} and {Pairs.Figure(all.Max())} ms");
        }
    }

    private static OpenJob Book(MadeBench bench)
    {
        StringBuilder text = new("procedure: points\nformat: 1\ntitle: Sixty points\nrevision: 1\nmap: {width: 30, height: 30}\nparts: [{part: plate, name: Plate, stays: yes}]\noiling-points:\n");
        for (int i = 0; i < Points; i++)
        {
            (double angle, double radius) = (i * 2.39996, 13.5 * Math.Sqrt((i + 0.5) / Points));
            text.Append(CultureInfo.InvariantCulture, $"  - {{point: p{i}, name: Point number {i} of sixty, role: {(i % 2 == 0 ? "fast-pivot" : "slow-pivot")}, amount: half the sink, when: with plate, at: [{15 + radius * Math.Cos(angle):0.0}, {15 + radius * Math.Sin(angle):0.0}], side: {(i % 3 == 0 ? "dial" : "train")}}}\n");
        }
        text.Append("stages:\n  - stage: reassembly\n    steps:\n      - {step: oil, do: Oil, oil: [").AppendJoin(", ", Enumerable.Range(0, Points).Select(i => $"p{i}")).Append("]}\n");
        ReadProcedure read = ProcedureReader.Read("points.yaml", text.ToString(), ProcedureLibrary.Empty);
        if (read.HasErrors) throw new InvalidOperationException(string.Join('\n', read.Diagnostics));
        (string id, ActOutcome outcome) = bench.Session.Book("P-1", "Sixty points", "", read);
        OpenJob job = outcome.IsDone && bench.Session.Read(id) is JobReading.Ready ready ? ready.Job : throw new InvalidOperationException($"{outcome}");
        bench.Act(job, new JobAction.Start());
        for (int i = 0; i < Points / 2; i++) bench.Act(job, Offer.Of(job.State, bench.Session.Circumstances(job)).Act!);
        return job;
    }
}
