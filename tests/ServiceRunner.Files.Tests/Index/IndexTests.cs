using System.Text;
using CsCheck;
using LiteDB;
using LiteDB.Engine;
using ServiceRunner.Files.Index;
using ServiceRunner.Files.Journal;
using ServiceRunner.Files.Tests.Journal;

namespace ServiceRunner.Files.Tests.Index;

public sealed class IndexTests : IDisposable
{
    private static readonly string[] States = ["Running", "Held", "Paused", "Complete"];
    private readonly LogBench _bench = new();

    [Fact]
    public void An_index_made_anew_says_what_the_one_says_that_grew()
    {
        Gen.Int[0, 1_000_000].Sample(
            seed =>
            {
                using LogBench bench = new();
                List<SubjectRow> rows = Work(bench, new Random(seed));
                List<Extents> before = Shapes(bench);
                Assert.Equal(rows, Rows(bench));
                bench.DropIndex();
                Assert.Equal(rows, Rows(bench));
                Assert.Equal(before, Shapes(bench));
                using JobLog beside = bench.Beside();
                Assert.Equal(rows, beside.Rows(SubjectRow.Job, openOnly: false));
            },
            iter: 15,
            threads: 1);
    }

    [Fact]
    public void An_index_that_is_only_read_is_not_marked_as_in_use_and_one_that_is_written_is_marked_first()
    {
        _bench.ThreeLines();
        byte[] before = File.ReadAllBytes(_bench.In("index.db"));
        string mark = _bench.In("index-in-use");
        using (JobLog log = _bench.Own())
        {
            Assert.Equal(2, log.Read("JOB1").Lines.Count);
            Assert.False(File.Exists(mark));
        }
        Assert.Equal(before, File.ReadAllBytes(_bench.In("index.db")));
        using (JobLog log = _bench.Own())
        {
            LogBench.Append(log, LogBench.Line("JOB1", 3, "Running"));
            Assert.Equal(3, log.Read("JOB1").Lines.Count);
            Assert.True(File.Exists(mark));
        }
        Assert.False(File.Exists(mark));
    }

    [Fact]
    public void A_page_that_may_not_be_written_stays_in_memory()
    {
        string path = _bench.In("pages");
        bool may = false;
        PageFile file = new(path, () => may);
        file.Write(new byte[] { 1, 2, 3 });
        file.Position = 0;
        byte[] read = new byte[3];
        file.ReadExactly(read);
        Assert.Equal([1, 2, 3], read);
        Assert.False(file.IsWhole);
        Assert.Equal(0, new FileInfo(path).Length);
        may = true;
        file.Position = 0;
        file.Write(new byte[] { 1, 2, 3 });
        Assert.True(file.IsWhole);
        file.End();
    }

    [Fact]
    public void An_index_of_another_format_is_made_anew()
    {
        using (JobLog log = _bench.Own())
            LogBench.Append(log, WithRow(LogBench.Line("JOB1", 1, "Running"), new SubjectRow { Number = "n1", Serial = "204 417", Promised = new DateOnly(2026, 3, 20) }, 1));
        using (JobLog log = _bench.Own())
        {
            Assert.Empty(log.Notes);
            Assert.Equal(("204 417", new DateOnly(2026, 3, 20)), (log.Row("JOB1")!.Serial, log.Row("JOB1")!.Promised));
        }
        // As the first format had it: its head does not say which it is.
        PageFile data = new(_bench.In("index.db")), behind = new(_bench.In("index-log.db"));
        using (LiteDatabase database = new(new LiteEngine(new EngineSettings { DataStream = data, LogStream = behind, Collation = Collation.Binary })))
        {
            BsonDocument head = database.GetCollection("head").FindById(1);
            Assert.True(head.Remove("format"));
            Assert.True(database.GetCollection("head").Update(head));
        }
        data.End();
        behind.End();
        using (JobLog log = _bench.Own()) Assert.Equal(new IndexRebuilt(RebuildReason.DoesNotMatch, 1), Assert.Single(log.Notes));
        using (JobLog log = _bench.Own()) Assert.Empty(log.Notes);
    }

    [Fact]
    public void Questions_find_what_they_ask_for_at_once_after_an_append()
    {
        using JobLog log = _bench.Own();
        for (int i = 1; i <= 40; i++)
        {
            NewLine line = LogBench.Line($"JOB{i:00}", 1, i % 4 == 0 ? "Complete" : "Running", i % 5 == 0 ? ["B-7", "B-" + i] : []);
            LogBench.Append(log, WithRow(line, new SubjectRow { Number = i % 2 == 0 ? "2026-0417" : "n" + i }, 1));
            Assert.Equal(line.Subject, log.Row(line.Subject)!.Subject);
        }
        Assert.Equal(30, log.Rows(SubjectRow.Job, openOnly: true).Count);
        Assert.Equal(40, log.Rows(SubjectRow.Job, openOnly: false).Count);
        Assert.Empty(log.Rows(SubjectRow.Bench, openOnly: false));
        Assert.Equal(20, log.FindByNumber("2026-0417").Count);
        Assert.Empty(log.FindByNumber("2026-041"));
        Assert.Equal(["JOB05", "JOB10", "JOB15", "JOB20", "JOB25", "JOB30", "JOB35", "JOB40"], log.FindByLot("B-7").Select(r => r.Subject));
        Assert.Equal(["JOB15"], log.FindByLot("B-15").Select(r => r.Subject));
        Assert.Empty(log.FindByLot("b-7"));
        Assert.Null(log.Row("NOBODY"));
    }

    // A row is asked for on the index's thread when it takes the line: no question is put here that would wake it.
    [Theory]
    [InlineData(8, 60)]     // each finds the thread asleep
    [InlineData(40, 3)]     // some come while it gathers, some while it writes
    [InlineData(1_200, 0)]  // more than it lets gather
    public void Every_line_comes_into_the_index_by_itself(int lines, int apart)
    {
        using JobLog log = _bench.Own();
        int taken = 0;
        for (int i = 1; i <= lines; i++)
        {
            NewLine line = WithRow(LogBench.Line($"JOB{i}", 1, "Running"), new SubjectRow { Number = $"n{i}" }, 1);
            Func<SubjectRow> row = line.Row!;
            LogBench.Append(log, line with { Row = () => { Interlocked.Increment(ref taken); return row(); } });
            if (apart > 0) Thread.Sleep(apart);
        }
        Assert.True(SpinWait.SpinUntil(() => Volatile.Read(ref taken) == lines, TimeSpan.FromSeconds(20)), $"{taken} of {lines}");
        Assert.Equal(lines, log.Rows(SubjectRow.Job, openOnly: true).Count);
    }

    [Fact]
    public void A_row_stays_as_it_was_when_an_append_brings_none()
    {
        using JobLog log = _bench.Own();
        LogBench.Append(log, LogBench.Line("JOB1", 1, "Running"));
        Assert.Null(log.Row("JOB1"));
        LogBench.Append(log, WithRow(LogBench.Line("JOB1", 2, "Held", "B-1"), new SubjectRow { Number = "" }, 2));
        LogBench.Append(log, LogBench.Line("JOB1", 3, "Running"));
        SubjectRow row = log.Row("JOB1")!;
        Assert.Equal(("Held", 3L, ""), (row.State, row.LastN, row.Number));
        Assert.Equal(["B-1"], row.Lots);
    }

    [Fact]
    public void Long_or_strange_texts_in_a_row_do_no_harm()
    {
        string text = string.Concat(Enumerable.Repeat("ä' OR $._id \u0001 中", 400));
        using JobLog log = _bench.Own();
        LogBench.Append(log, WithRow(LogBench.Line("JOB1", 1, "Running"), new SubjectRow { Number = text, Lots = [text, text + "x"] }, 1));
        Assert.Single(log.FindByNumber(text));
        Assert.Single(log.FindByLot(text + "x"));
        Assert.Empty(log.FindByLot(text + "y"));
    }

    [Fact]
    public void A_missing_index_is_made_anew_and_that_is_noted()
    {
        _bench.ThreeLines();
        _bench.DropIndex();
        long told = 0;
        using LogBench same = Copy(_bench, new OpenOptions { Clock = _bench.Options.Clock, Progress = p => told = p.Lines });
        using JobLog log = same.Own();
        Assert.Equal([new IndexRebuilt(RebuildReason.Missing, 3)], log.Notes);
        Assert.Equal(3, told);
        Assert.Equal(2, log.Read("JOB1").Lines.Count);
    }

    [Fact]
    public void An_index_of_another_time_is_brought_up_or_thrown_away()
    {
        _bench.ThreeLines();
        byte[] old = File.ReadAllBytes(_bench.In("index.db"));
        using (JobLog log = _bench.Own())
        {
            LogBench.Append(log, LogBench.Line("JOB1", 3, "Running"));
            LogBench.Append(log, LogBench.Line("JOB3", 1, "Running"));
        }
        File.WriteAllBytes(_bench.In("index.db"), old);
        using (JobLog log = _bench.Own())
        {
            Assert.Empty(log.Notes);
            Assert.Equal((5L, 3, 1), (log.Head.Sequence, log.Read("JOB1").Lines.Count, log.Read("JOB3").Lines.Count));
            Assert.Equal("Running", log.Row("JOB1")!.State);
        }
        using LogBench other = new();
        other.ThreeLines();
        using (JobLog log = other.Own()) LogBench.Append(log, LogBench.Line("JOB7", 1, "Running"));
        File.Copy(other.In("index.db"), _bench.In("index.db"), overwrite: true);
        using JobLog mixed = _bench.Own();
        Assert.Equal([new IndexRebuilt(RebuildReason.DoesNotMatch, 5)], mixed.Notes);
        Assert.Empty(mixed.Read("JOB7").Lines);
    }

    [Fact]
    public void An_index_that_was_in_use_when_the_machine_stopped_is_not_believed()
    {
        _bench.ThreeLines();
        File.WriteAllText(_bench.In("index-in-use"), "another boot");
        using (JobLog log = _bench.Own()) Assert.Equal([new IndexRebuilt(RebuildReason.MachineStopped, 3)], log.Notes);
        Assert.False(File.Exists(_bench.In("index-in-use")));
        using (JobLog log = _bench.Own()) Assert.Empty(log.Notes);
    }

    [Fact]
    public void Random_bytes_in_the_index_never_change_an_answer()
    {
        List<SubjectRow> rows = Work(_bench, new Random(3));
        Dictionary<string, int> counts = rows.ToDictionary(r => r.Subject, r => (int)r.LastN);
        byte[] whole = File.ReadAllBytes(_bench.In("index.db"));
        Random random = new(5);
        int noticed = 0;
        for (int round = 0; round < 60; round++)
        {
            byte[] broken = [.. whole];
            int at = random.Next(broken.Length), length = Math.Min(round % 3 == 0 ? 1 : round % 3 == 1 ? 200 : 9000, broken.Length - at);
            random.NextBytes(broken.AsSpan(at, length));
            File.WriteAllBytes(_bench.In("index.db"), broken);
            File.Delete(_bench.In("index-log.db"));
            using JobLog log = _bench.Own();
            foreach ((string job, int count) in counts)
            {
                SubjectReading read = log.Read(job);
                Assert.True(read.Damage is null && read.Lines.Count == count, $"round {round}: {job} has {read.Lines.Count} of {count} lines, {read.Damage}");
            }
            foreach (SubjectRow row in rows) Assert.Equal(row, log.Row(row.Subject));
            noticed += log.Notes.Count > 0 ? 1 : 0;
        }
        // What LiteDB left lying about must not end the process when it is collected.
        GC.Collect();
        GC.WaitForPendingFinalizers();
        Assert.True(noticed > 20, $"only {noticed} of 60 were noticed: the test does not hit");
    }

    [Fact]
    public void Random_bytes_in_the_index_never_stop_the_work()
    {
        List<SubjectRow> rows = Work(_bench, new Random(4));
        byte[] index = File.ReadAllBytes(_bench.In("index.db"));
        Random random = new(6);
        Dictionary<string, long> last = rows.ToDictionary(r => r.Subject, r => r.LastN);
        for (int round = 0; round < 60; round++)
        {
            byte[] broken = [.. index];
            int at = random.Next(broken.Length), length = Math.Min(round % 2 == 0 ? 20 : 9000, broken.Length - at);
            random.NextBytes(broken.AsSpan(at, length));
            File.WriteAllBytes(_bench.In("index.db"), broken);
            File.Delete(_bench.In("index-log.db"));
            using JobLog log = _bench.Own();
            foreach (string job in last.Keys)
            {
                LogBench.Append(log, LogBench.Line(job, (int)last[job] + 1, "Running") with { After = last[job] });
                last[job]++;
            }
            foreach (string job in last.Keys) Assert.Equal((last[job], true), (log.Read(job).Lines.Count, log.Read(job).Damage is null));
            if (round % 5 == 4) index = Grown(log);
        }
        GC.Collect();
        GC.WaitForPendingFinalizers();
        Assert.DoesNotContain(JobLog.Scan(_bench.Path), i => i is ScannedDamage);
    }

    private byte[] Grown(JobLog log)
    {
        log.Dispose();
        _bench.Own().Dispose();
        return File.ReadAllBytes(_bench.In("index.db"));
    }

    [Fact]
    public void A_file_that_is_no_index_at_all_is_thrown_away()
    {
        _bench.ThreeLines();
        File.WriteAllText(_bench.In("index.db"), string.Concat(Enumerable.Repeat("nonsense ", 3000)));
        using JobLog log = _bench.Own();
        Assert.Equal([new IndexRebuilt(RebuildReason.Unreadable, 3)], log.Notes);
        Assert.Equal(2, log.Read("JOB1").Lines.Count);
    }

    /// <summary>Random work on a few jobs, with restarts; gives the rows that must be there.</summary>
    private static List<SubjectRow> Work(LogBench bench, Random random)
    {
        SortedDictionary<string, SubjectRow> rows = new(StringComparer.Ordinal);
        for (int session = 0; session < 4; session++)
        {
            using JobLog log = bench.Own();
            for (int append = random.Next(1, 25); append > 0; append--)
            {
                List<NewLine> lines = [];
                for (int i = random.Next(1, 4); i > 0; i--)
                {
                    string job = $"JOB{random.Next(1, 6)}";
                    SubjectRow before = rows.GetValueOrDefault(job) ?? new SubjectRow { Subject = job, Number = "N-" + job, Owner = "OWNER1" };
                    NewLine line = LogBench.Line(job, (int)before.LastN + 1, States[random.Next(States.Length)], random.Next(3) == 0 ? ["B-" + random.Next(9)] : []);
                    NewLine withRow = WithRow(line, before, before.LastN + 1);
                    rows[job] = withRow.Row!();
                    lines.Add(withRow);
                }
                LogBench.Append(log, [.. lines]);
            }
        }
        return [.. rows.Values];
    }

    private sealed record Extents(string Subject, string Lines);

    private static List<Extents> Shapes(LogBench bench)
    {
        using JobLog log = bench.Own();
        return [.. log.Rows(SubjectRow.Job, openOnly: false).Select(r => new Extents(r.Subject,
            new StringBuilder().AppendJoin(',', log.Read(r.Subject).Lines.Select(l => $"{l.Sequence}/{l.SubjectSequence}/{l.BodyHash}")).ToString()))];
    }

    private static List<SubjectRow> Rows(LogBench bench)
    {
        using JobLog log = bench.Own();
        return [.. log.Rows(SubjectRow.Job, openOnly: false)];
    }

    private static NewLine WithRow(NewLine line, SubjectRow before, long n)
    {
        SubjectRow row = LogBench.Fold(before with { Subject = line.Subject }, line.Events, line.At, n);
        return line with { Row = () => row };
    }

    private static LogBench Copy(LogBench from, OpenOptions options)
    {
        LogBench to = new() { Options = options };
        foreach (string file in Directory.GetFiles(from.Path)) File.Copy(file, to.In(Path.GetFileName(file)), overwrite: true);
        return to;
    }

    public void Dispose() => _bench.Dispose();
}
