using System.Security.Cryptography;
using ServiceRunner.Core.Jobs;
using ServiceRunner.Files.Data;
using ServiceRunner.Files.Events;
using ServiceRunner.Files.Journal;
using ServiceRunner.Files.Machine;
using ServiceRunner.Session;

namespace ServiceRunner.Benchmarks.Logs;

/// <summary>
/// A long job opened from the disk as the first of a session: its lines read, both hashes of each verified, the pinned
/// procedure read, all folded. The floor reads the journal's bytes and hashes them once.
/// </summary>
internal static class JobOpening
{
    private const int Actions = 10_000, Rounds = 15, Warming = 30;

    public static void Run()
    {
        using Disk disk = new();
        disk.Say();
        Measure(disk, "plain", takenBackEvery: int.MaxValue);
        // Taking back folds all the other entries anew.
        Measure(disk, "one action in a hundred taken back", takenBackEvery: 100);
    }

    private static void Measure(Disk disk, string how, int takenBackEvery)
    {
        string folder = disk.In(how.Replace(' ', '-')), id = Make(folder, takenBackEvery);
        Pairs pairs = new($"{Actions:N0} actions, {how}", "the same bytes read, one SHA-256", "ms");
        double first = Opening(folder, id);
        // The runtime compiles anew what ran often; the rounds must not be half before and half after that.
        for (int i = 0; i < Warming; i++) Opening(folder, id);
        pairs.Run(Rounds, () => Opening(folder, id), () => Bare(folder));
        Pairs.Line("the first time, without warming", $"{Pairs.Figure(first)} ms");
        pairs.Print(most: 100);
        Parts(folder, id);
    }

    private static string Make(string folder, int takenBackEvery)
    {
        string build = Path.Combine(Disk.Memory, Identity.New()), id;
        using (MadeBench bench = new(build))
        {
            OpenJob job = bench.Book("Q26-001");
            Repairer repairer = new(bench, job);
            while (job.State.Log.Count < Actions)
                bench.Act(job, job.State.Log.Count % takenBackEvery == takenBackEvery - 1 && job.State.LastToTakeBack() is not null ? new JobAction.TakeBack() : repairer.Next());
            id = job.Id;
        }
        Disk.Copy(build, folder);
        Directory.Delete(build, recursive: true);
        return id;
    }

    private static double Opening(string folder, string id)
    {
        using BenchSession session = MadeBench.Open(folder, new MachineClock());
        Collect();
        return Pairs.Milliseconds(() =>
        {
            if (session.Read(id) is not JobReading.Ready { Job.State.Log.Count: Actions }) throw new InvalidOperationException("the job was not read whole");
        });
    }

    private static double Bare(string folder)
    {
        Collect();
        return Pairs.Milliseconds(() =>
        {
            foreach (string file in Directory.EnumerateFiles(folder, "journal-*.log")) SHA256.HashData(File.ReadAllBytes(file));
        });
    }

    // Where the time goes, each part alone.
    private static void Parts(string folder, string id)
    {
        DataFolder data = ((FolderReady)DataFolder.Open(folder)).Folder;
        List<double> reading = [], decoding = [], folding = [], procedure = [];
        for (int i = 0; i < Rounds; i++)
        {
            using JobLog log = ((Opened)JobLog.Open(data, OpenMode.Own, new JobReader(data).RowOf)).Log;
            SubjectReading lines = null!;
            List<LogEntry> entries = [];
            Collect();
            reading.Add(Pairs.Milliseconds(() => lines = log.Read(id)));
            decoding.Add(Pairs.Milliseconds(() => entries = [.. lines.Lines.Select(EventLines.Job)]));
            folding.Add(Pairs.Milliseconds(() => Fold.All(id, entries)));
            procedure.Add(Pairs.Milliseconds(() => _ = ((JobReading.Ready)new JobReader(data).Read(id, new SubjectReading([lines.Lines[0]], null))).Job.Plan));
        }
        Pairs.Line("of that: lines read and verified", $"{Pairs.Figure(Pairs.Median(reading))} ms");
        Pairs.Line("of that: events decoded", $"{Pairs.Figure(Pairs.Median(decoding))} ms");
        Pairs.Line("of that: folded", $"{Pairs.Figure(Pairs.Median(folding))} ms");
        Pairs.Line("of that: the pinned procedure", $"{Pairs.Figure(Pairs.Median(procedure))} ms");
    }

    // What an earlier round left must not be collected in this one's time.
    private static void Collect()
    {
        GC.Collect();
        GC.WaitForPendingFinalizers();
        GC.Collect();
    }
}
