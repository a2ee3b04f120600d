using System.Text;
using System.Text.Json;
using ServiceRunner.Core.Quantities;
using ServiceRunner.Files.Data;
using ServiceRunner.Files.Index;
using ServiceRunner.Files.Journal;

namespace ServiceRunner.Files.Tests.Journal;

/// <summary>A data folder of its own for one test, and simple events whose row can be told from them alone.</summary>
public sealed class LogBench : IDisposable
{
    public const string BenchId = "01J0BENCH0000000000000000A";
    private static readonly Moment Start = new(new DateTimeOffset(2026, 11, 25, 0, 10, 0, TimeSpan.FromHours(1)).AddTicks(1_234_567), "boot-1", TimeSpan.FromSeconds(100));

    public LogBench(string? parent = null)
    {
        Path = System.IO.Path.Combine(parent ?? System.IO.Path.GetTempPath(), "log-" + Guid.NewGuid().ToString("N"));
        Directory.CreateDirectory(Path);
        File.WriteAllText(System.IO.Path.Combine(Path, DataFolder.Marker), $"1\nbench {BenchId}\n");
        Folder = ((FolderReady)DataFolder.Open(Path)).Folder;
    }

    public string Path { get; }
    public DataFolder Folder { get; }
    public string Segment => In("journal-2026.log");
    public OpenOptions Options { get; init; } = new() { Clock = new Microsoft.Extensions.Time.Testing.FakeTimeProvider(Start.Wall) };

    public string In(string name) => System.IO.Path.Combine(Path, name);

    public JobLog Own() => Assert.IsType<Opened>(JobLog.Open(Folder, OpenMode.Own, RowOf, Options)).Log;

    public JobLog Beside() => Assert.IsType<Opened>(JobLog.Open(Folder, OpenMode.Read, RowOf, Options)).Log;

    public DataFault Refused(OpenMode mode = OpenMode.Own) => Assert.IsType<OpenRefused>(JobLog.Open(Folder, mode, RowOf, Options)).Fault;

    public void DropIndex()
    {
        File.Delete(In("index.db"));
        File.Delete(In("index-log.db"));
    }

    /// <summary>A journal of three lines: two of one job, one of another between them. Closed.</summary>
    public long[] ThreeLines()
    {
        using JobLog log = Own();
        Append(log, Line("JOB1", 1, "Running"));
        Append(log, Line("JOB2", 1, "Running", "B-7"));
        Append(log, Line("JOB1", 2, "Held"));
        return [.. JobLog.Scan(Path).Select(i => i.Offset), new FileInfo(Segment).Length];
    }

    public static Appended Append(JobLog log, params NewLine[] lines) => Assert.IsType<Appended>(log.Append(lines));

    /// <summary>An action numbered like the subject's line, with a row only if told.</summary>
    public static NewLine Line(string subject, int n, string state, params string[] lots) =>
        new(subject, $"ACT-{subject}-{n}", "ab", Start.Plus(TimeSpan.FromMinutes(n)), Events(state, lots));

    public static byte[] Events(string state, params string[] lots) =>
        Encoding.UTF8.GetBytes($$"""[{"kind":"stateChanged","v":1,"state":"{{state}}","lots":[{{string.Join(',', lots.Select(l => $"\"{l}\""))}}]}]""");

    public static SubjectRow? RowOf(string subject, IReadOnlyList<LogLine> lines)
    {
        SubjectRow row = new() { Subject = subject, Kind = subject == BenchId ? SubjectRow.Bench : SubjectRow.Job, Number = "N-" + subject, Title = "", Owner = "OWNER1" };
        foreach (LogLine line in lines) row = Fold(row, line.Events, line.At, line.SubjectSequence);
        return row;
    }

    public static SubjectRow Fold(SubjectRow row, ReadOnlyMemory<byte> events, Moment at, long n)
    {
        using JsonDocument json = JsonDocument.Parse(events);
        JsonElement e = json.RootElement[0];
        string state = e.GetProperty("state").GetString()!;
        return row with
        {
            State = state,
            Open = state != "Complete",
            Since = at.Wall.ToUniversalTime(),
            Done = row.Done + 1,
            Total = 12,
            Waiting = state == "Held" ? "a part" : "",
            Lots = [.. row.Lots.Union(e.GetProperty("lots").EnumerateArray().Select(l => l.GetString()!))],
            LastN = n,
        };
    }

    public void Dispose()
    {
        if (Directory.Exists(Path)) Directory.Delete(Path, recursive: true);
    }
}
