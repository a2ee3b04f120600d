using System.Runtime.CompilerServices;
using System.Security.Cryptography;
using System.Text;
using ServiceRunner.Core.Quantities;
using ServiceRunner.Files.Data;
using ServiceRunner.Files.Journal;
using ServiceRunner.Tests.Shared;

namespace ServiceRunner.Files.Tests.Journal;

public sealed class LineTests : IDisposable
{
    private readonly LogBench _bench = new();

    [Fact]
    public void What_is_written_today_is_what_was_pinned()
    {
        WritePinnedLines(_bench);
        Snapshot.Compare(File.ReadAllText(_bench.Segment), Pinned(), Pinned() + ".received.txt");
    }

    [Fact]
    public void The_pinned_journal_is_verified_and_read()
    {
        File.Copy(Pinned(), _bench.Segment);
        Assert.All(JobLog.Scan(_bench.Path), item => Assert.IsType<ScannedLine>(item));
        using JobLog log = _bench.Own();
        Assert.Equal(4, log.Head.Sequence);
        LogLine first = log.Read("JOB1").Lines[0];
        Assert.Equal((1, LogBench.BenchId, "JOB1", 1, "ACT-JOB1-1", "ab"), (first.Sequence, first.Bench, first.Subject, first.SubjectSequence, first.ActionId, first.By));
        Assert.Equal(new Moment(new DateTimeOffset(2026, 11, 25, 0, 11, 0, TimeSpan.FromHours(1)).AddTicks(1_234_567), "boot-1", TimeSpan.FromSeconds(160)), first.At);
        Assert.Equal(TimeSpan.FromHours(1), first.At.Wall.Offset);
        Assert.Equal(LogBench.Events("Running", "B-7"), first.Events.ToArray());
        Assert.Equal("Running", first.ParseEvents().RootElement[0].GetProperty("state").GetString());
        Assert.False(first.FromTheFuture);
        LogLine imported = Assert.Single(log.Read("JOB9").Lines);
        Assert.Equal(("cd", "ACT-JOB9-1"), (imported.ImportedBy, imported.ActionId));
    }

    [Fact]
    public void The_hashes_are_what_sha256_says_of_the_bytes_as_stored()
    {
        WritePinnedLines(_bench);
        Digest previous = default;
        foreach (string text in File.ReadLines(_bench.Segment))
        {
            string[] fields = text.Split('\t');
            Assert.Equal(3, fields.Length);
            Assert.Equal(fields[2], Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(fields[0] + "\t" + fields[1]))));
            Assert.Contains($"\"body\":\"{Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(fields[0])))}\"", fields[1], StringComparison.Ordinal);
            Assert.Contains($"\"prev\":\"{previous}\"", fields[1], StringComparison.Ordinal);
            Assert.True(Digest.TryParse(fields[2], out previous));
        }
        using JobLog log = _bench.Own();
        Assert.Equal(previous, log.Head.Hash);
    }

    [Fact]
    public void A_text_with_tabs_newlines_and_other_scripts_comes_back()
    {
        byte[] events = Encoding.UTF8.GetBytes("[{\"state\":\"a\\tb\\nc ä 中 😀 \\u0007\",\"lots\":[]}]");
        using (JobLog log = _bench.Own()) LogBench.Append(log, LogBench.Line("JOB1", 1, "x") with { Events = events, By = "ä\t\n\"" });
        using JobLog again = _bench.Own();
        LogLine line = Assert.Single(again.Read("JOB1").Lines);
        Assert.Equal(events, line.Events.ToArray());
        Assert.Equal("ä\t\n\"", line.By);
    }

    [Theory]
    [InlineData("[1]\n")]
    [InlineData("[\t1]")]
    [InlineData("{}")]
    [InlineData("")]
    public void Events_that_are_not_one_array_on_one_line_are_a_programmers_error(string events)
    {
        using JobLog log = _bench.Own();
        Assert.Throws<ArgumentException>(() => log.Append(LogBench.Line("JOB1", 1, "x") with { Events = Encoding.UTF8.GetBytes(events) }));
        Assert.Equal(0, log.Head.Sequence);
        LogBench.Append(log, LogBench.Line("JOB1", 1, "x"));
    }

    [Fact]
    public void A_line_from_the_future_is_read_with_its_unknown_keys_and_said_to_be_one()
    {
        string body = """{"v":2,"of":"JOB1","n":1,"prev":"","mood":["new",{"x":1}],"act":"A","by":"ab","at":"2026-11-24T23:10:00.0000000Z","off":60,"boot":"","up":0,"events":[]}""";
        string hash = Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(body)));
        string start = $$"""{{body}}{{"\t"}}{"v":1,"later":{"a":[1]},"bench":"{{LogBench.BenchId}}","seq":1,"prev":"","body":"{{hash}}","signature":"x"}""";
        File.WriteAllText(_bench.Segment, $"{start}\t{Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(start)))}\n");
        ScannedLine found = Assert.IsType<ScannedLine>(Assert.Single(JobLog.Scan(_bench.Path)));
        Assert.True(found.Line.FromTheFuture);
        Assert.Equal((2, "A"), (found.Line.Version, found.Line.ActionId));
    }

    [Fact]
    public void A_hash_in_capitals_is_another_text_and_so_damage()
    {
        _bench.ThreeLines();
        string text = File.ReadAllText(_bench.Segment);
        string hash = text[^65..^1];
        File.WriteAllText(_bench.Segment, text[..^65] + hash.ToUpperInvariant() + "\n");
        Assert.Contains(JobLog.Scan(_bench.Path), i => i is ScannedDamage { What: Damage.LineHash });
    }

    /// <summary>Two of a job, one of the bench in the same append, one imported from another bench.</summary>
    private static void WritePinnedLines(LogBench bench)
    {
        ReadOnlyMemory<byte> body;
        using (LogBench other = new())
        {
            using JobLog there = other.Own();
            LogBench.Append(there, LogBench.Line("JOB9", 1, "Idle"));
            body = there.Read("JOB9").Lines[0].Body;
        }
        using JobLog log = bench.Own();
        LogBench.Append(log, LogBench.Line("JOB1", 1, "Running", "B-7"));
        LogBench.Append(log, LogBench.Line("JOB1", 2, "Held"), LogBench.Line(LogBench.BenchId, 1, "open"));
        LogBench.Append(log, NewLine.Imported(body, "cd", null));
    }

    private static string Pinned([CallerFilePath] string file = "") => Path.Combine(Path.GetDirectoryName(file)!, "pinned", "journal-line-v1.log");

    public void Dispose() => _bench.Dispose();
}
