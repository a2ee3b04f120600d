using System.Text;
using LiteDB;
using ServiceRunner.Core.Jobs;
using ServiceRunner.Files.Data;
using ServiceRunner.Files.Events;
using ServiceRunner.Files.Journal;
using ServiceRunner.Files.Machine;
using ServiceRunner.Session;

namespace ServiceRunner.Benchmarks.Logs;

/// <summary>
/// A batch traced through 10,000 jobs of fifty actions: found by the index, told by verified lines of the journal. The floor
/// is LiteDB alone, asked by its index for the same points in a collection with a document for each action. A second floor
/// only names the jobs, by an index over the batches of each.
/// </summary>
internal static class Trace
{
    private const int Jobs = 10_000, Actions = 50, JobsOfABatch = 1_250, Rounds = 15;
    private const string Lubricant = "heavy-oil";

    public static void Run()
    {
        using Disk disk = new();
        disk.Say();
        string folder = disk.In("log"), batch = $"B3-{Lubricant}";
        List<LogLine> lines = Make(folder);
        using LiteDatabase bare = Bare(disk.In("bare.db"), lines);
        using BenchSession session = MadeBench.Open(folder, new MachineClock());
        ILiteCollection<BsonDocument> actions = bare.GetCollection("actions"), jobs = bare.GetCollection("jobs");
        int points = actions.Find(BsonExpression.Create("$.lot = @0", batch)).ToList().Count;
        double Ours() => Pairs.Milliseconds(() =>
        {
            TracedBatch traced = session.Trace(batch);
            if (traced.Points != points || traced.Uses.Count != JobsOfABatch || traced.Uses.Any(u => u.Fault.Length > 0)) throw new InvalidOperationException($"traced {traced.Points} points in {traced.Uses.Count} jobs, not {points} in {JobsOfABatch}");
        });
        double Floor() => Asked(actions, "$.lot = @0", batch, points);
        double FloorOfJobs() => Asked(jobs, "$.lots[*] ANY = @0", batch, JobsOfABatch);
        Pairs.Line("traced", $"{points:N0} points in {JobsOfABatch:N0} of {Jobs:N0} jobs, {Jobs * Actions:N0} actions");
        for (int i = 0; i < 3; i++) (_, _, _) = (Ours(), Floor(), FloorOfJobs());
        Pairs pairs = new("traced, each point from its verified line", "LiteDB's bare query for the same points", "ms");
        pairs.Run(Rounds, Ours, Floor);
        pairs.Print(mostRatio: 1.5);
        Pairs named = new("the same", "LiteDB's bare query for the jobs alone", "ms");
        named.Run(Rounds, Ours, FloorOfJobs);
        named.Print();
    }

    private static double Asked(ILiteCollection<BsonDocument> collection, string where, string batch, int found) => Pairs.Milliseconds(() =>
    {
        if (collection.Find(BsonExpression.Create(where, batch)).ToList().Count != found) throw new InvalidOperationException("the floor found something else");
    });

    // One job walked by the real rules; fifty of its actions, all that serve a point among them, appended under other ids.
    private static List<LogLine> Make(string folder)
    {
        string build = Path.Combine(Disk.Memory, Identity.New());
        string job;
        using (MadeBench bench = new(build))
        {
            OpenJob open = bench.Book("Q26-001");
            Repairer repairer = new(bench, open);
            while (!repairer.IsThrough) bench.Act(open, repairer.Next());
            job = open.Id;
        }
        List<LogLine> all = [.. JobLog.Scan(build).OfType<ScannedLine>().Select(s => s.Line).Where(l => l.Subject == job)];
        HashSet<long> served = [.. all.Where(Serves).Select(l => l.SubjectSequence)];
        HashSet<long> others = [.. all.Where(l => !served.Contains(l.SubjectSequence)).Take(Actions - served.Count).Select(l => l.SubjectSequence)];
        List<LogLine> lines = [.. all.Where(l => served.Contains(l.SubjectSequence) || others.Contains(l.SubjectSequence))];
        DataFolder data = ((FolderReady)DataFolder.Open(build)).Folder;
        using (JobLog log = ((Opened)JobLog.Open(data, OpenMode.Own, (_, _) => null)).Log)
        {
            for (int j = 0; j < Jobs; j++)
            {
                string id = Identity.New();
                List<NewLine> next = [.. lines.Select(l => new NewLine(id, Identity.New(), l.By, l.At, Encoding.UTF8.GetBytes(Renamed(l, j))))];
                if (log.Append(next) is AppendRefused refused) throw new InvalidOperationException($"{refused.Fault}");
            }
        }
        // The index is made anew from the journal, with its rows.
        foreach (string file in Directory.EnumerateFiles(build, "index*")) File.Delete(file);
        MadeBench.Open(build, new MachineClock()).Dispose();
        Disk.Copy(build, folder);
        Directory.Delete(build, recursive: true);
        return lines;
    }

    private static bool Serves(LogLine line) => EventLines.Job(line).Events.Any(e => e is JobEvent.PointServed);

    private static string Renamed(LogLine line, int job) =>
        Encoding.UTF8.GetString(line.Events.Span).Replace("\"batch\":\"B-", $"\"batch\":\"B{job / JobsOfABatch}-", StringComparison.Ordinal);

    private static LiteDatabase Bare(string file, List<LogLine> lines)
    {
        LiteDatabase database = new(new ConnectionString { Filename = file, Collation = Collation.Binary });
        ILiteCollection<BsonDocument> actions = database.GetCollection("actions"), jobs = database.GetCollection("jobs");
        actions.EnsureIndex("lot", "$.lot");
        jobs.EnsureIndex("lots", "$.lots[*]");
        List<LogEntry> entries = [.. lines.Select(EventLines.Job)];
        actions.InsertBulk(Enumerable.Range(0, Jobs).SelectMany(j => entries.Select((e, n) => Action(j, n, e))), 5_000);
        List<string> lots = [.. entries.SelectMany(e => e.Events).OfType<JobEvent.PointServed>().Select(s => s.Batch).Distinct()];
        jobs.InsertBulk(Enumerable.Range(0, Jobs).Select(j => new BsonDocument
        {
            ["_id"] = j, ["number"] = $"J-{j}", ["what"] = "Wrist watch, silvered dial", ["state"] = "ready", ["since"] = 0L, ["done"] = 100, ["total"] = 120,
            ["lots"] = new BsonArray(lots.Select(l => new BsonValue(Lot(l, j)))),
        }), 5_000);
        return database;
    }

    private static string Lot(string lot, int job) => lot.Replace("B-", $"B{job / JobsOfABatch}-", StringComparison.Ordinal);

    private static BsonDocument Action(int job, int n, LogEntry entry)
    {
        BsonDocument document = new() { ["_id"] = (long)job * Actions + n, ["job"] = job, ["number"] = $"J-{job}", ["n"] = n, ["by"] = entry.By, ["at"] = entry.At.Wall.UtcTicks, ["kind"] = entry.Events[0].GetType().Name };
        if (entry.Events.OfType<JobEvent.PointServed>().FirstOrDefault() is not { } served) return document;
        document["point"] = served.Point;
        document["role"] = served.Role;
        document["lubricant"] = served.Lubricant;
        document["lot"] = Lot(served.Batch, job);
        return document;
    }
}
