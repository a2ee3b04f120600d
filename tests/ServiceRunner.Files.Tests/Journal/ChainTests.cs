using ServiceRunner.Files.Data;
using ServiceRunner.Files.Journal;

namespace ServiceRunner.Files.Tests.Journal;

public sealed class ChainTests : IDisposable
{
    private readonly LogBench _bench = new();

    [Fact]
    public void Two_subjects_interleaved_keep_a_chain_each_and_the_bench_one_over_both()
    {
        using JobLog log = _bench.Own();
        for (int i = 1; i <= 20; i++)
        {
            LogBench.Append(log, LogBench.Line("JOB1", i, "Running"));
            if (i % 3 == 0) LogBench.Append(log, LogBench.Line("JOB2", i / 3, "Running"));
        }
        foreach ((string job, int count) in new[] { ("JOB1", 20), ("JOB2", 6) })
        {
            SubjectReading read = log.Read(job);
            Assert.Null(read.Damage);
            Assert.Equal(Enumerable.Range(1, count).Select(i => (long)i), read.Lines.Select(l => l.SubjectSequence));
            Assert.Equal(read.Lines.Select(l => l.BodyHash).Prepend(default).SkipLast(1), read.Lines.Select(l => l.PreviousBody));
        }
        Assert.Equal(26, log.Head.Sequence);
        Assert.Equal([5L, 6], log.Read("JOB2", from: 5).Lines.Select(l => l.SubjectSequence));
        Assert.Empty(log.Read("JOB2", from: 7).Lines);
        Assert.Empty(log.Read("NOBODY").Lines);
    }

    [Fact]
    public void A_line_taken_out_whole_shows_in_both_chains()
    {
        long[] at = _bench.ThreeLines();
        byte[] bytes = File.ReadAllBytes(_bench.Segment);
        File.WriteAllBytes(_bench.Segment, [.. bytes[..(int)at[0]], .. bytes[(int)at[1]..]]);
        List<ScannedDamage> damage = [.. JobLog.Scan(_bench.Path).OfType<ScannedDamage>()];
        Assert.Equal([(0L, Damage.Sequence), (at[2] - at[1], Damage.SubjectSequence)], damage.Select(d => (d.Offset, d.What)));
        Assert.Equal(new Damaged("journal-2026.log", 0, Damage.Sequence), _bench.Refused());
    }

    [Fact]
    public void A_job_that_follows_in_number_and_not_in_hash_is_told()
    {
        using (LogBench other = new())
        {
            using JobLog there = other.Own();
            LogBench.Append(there, LogBench.Line("JOB1", 1, "Running", "other"));
            LogBench.Append(there, LogBench.Line("JOB1", 2, "Held"));
            using JobLog log = _bench.Own();
            LogBench.Append(log, LogBench.Line("JOB1", 1, "Running"));
            AppendOutcome outcome = log.Append(NewLine.Imported(there.Read("JOB1").Lines[1].Body, "cd", null));
            Assert.Equal(new AppendRefused(new DoesNotFollow("JOB1", 2)), outcome);
        }
    }

    [Fact]
    public void An_imported_job_keeps_its_bodies_and_goes_on()
    {
        using LogBench other = new();
        using JobLog there = other.Own(), here = _bench.Own();
        for (int i = 1; i <= 3; i++) LogBench.Append(there, LogBench.Line("JOB1", i, "Running"));
        LogBench.Append(here, LogBench.Line("JOB2", 1, "Running"));
        LogBench.Append(here, [.. there.Read("JOB1").Lines.Select(l => NewLine.Imported(l.Body, "cd", null))]);
        LogBench.Append(here, LogBench.Line("JOB1", 4, "Complete") with { After = 3 });
        Assert.Equal(there.Read("JOB1").Lines.Select(l => l.BodyHash), here.Read("JOB1").Lines.Take(3).Select(l => l.BodyHash));
        Assert.Equal([2L, 1, 0, 0], here.Read("JOB1").Lines.Select(l => l.More));
        Assert.All(JobLog.Scan(_bench.Path), i => Assert.IsType<ScannedLine>(i));
    }

    [Theory]
    [InlineData("")]
    [InlineData("{}")]
    [InlineData("{\"v\":1,\"of\":\"../x\",\"n\":1,\"prev\":\"\",\"events\":[]}")]
    [InlineData("{\"v\":1,\"of\":\"JOB1\",\"n\":1,\"prev\":\"\",\n\"events\":[]}")]
    [InlineData("{\"v\":1,\"of\":\"JOB1\",\"n\":1,\"prev\":\"00\",\"events\":[]}")]
    public void A_body_that_is_none_is_not_imported(string body)
    {
        using JobLog log = _bench.Own();
        AppendRefused refused = Assert.IsType<AppendRefused>(log.Append(NewLine.Imported(System.Text.Encoding.UTF8.GetBytes(body), "cd", null)));
        Assert.IsType<DoesNotFollow>(refused.Fault);
        Assert.Equal(0, log.Head.Sequence);
    }

    [Fact]
    public void A_decision_on_an_older_state_is_refused_and_nothing_of_its_append_is_written()
    {
        using JobLog log = _bench.Own();
        LogBench.Append(log, LogBench.Line("JOB1", 1, "Running") with { After = 0 });
        AppendOutcome outcome = log.Append(LogBench.Line("JOB2", 1, "Running"), LogBench.Line("JOB1", 2, "Held") with { After = 0 });
        Assert.Equal(new AppendRefused(new SubjectMoved("JOB1", 0, 1)), outcome);
        Assert.Equal(1, log.Head.Sequence);
        Assert.Empty(log.Read("JOB2").Lines);
        LogBench.Append(log, LogBench.Line("JOB2", 1, "Running"), LogBench.Line("JOB1", 2, "Held") with { After = 1 });
    }

    [Fact]
    public void A_bit_flipped_at_any_byte_is_noticed()
    {
        long[] at = _bench.ThreeLines();
        byte[] bytes = File.ReadAllBytes(_bench.Segment);
        using FileStream file = new(_bench.Segment, FileMode.Open, FileAccess.ReadWrite, FileShare.ReadWrite, bufferSize: 0);
        for (int i = 0; i < bytes.Length; i++)
        {
            for (int bit = 0; bit < 8; bit++)
            {
                Put(file, i, (byte)(bytes[i] ^ (1 << bit)));
                ScannedDamage first = JobLog.Scan(_bench.Path).OfType<ScannedDamage>().First();
                Assert.True(first.Offset == at.Last(a => a <= i), $"bit {bit} of byte {i}: told at {first.Offset}");
            }
            Put(file, i, bytes[i]);
        }
        Assert.DoesNotContain(JobLog.Scan(_bench.Path), i => i is ScannedDamage);
    }

    [Fact]
    public void A_bit_flipped_anywhere_never_shortens_a_job_in_silence()
    {
        long[] at = _bench.ThreeLines();
        byte[] bytes = File.ReadAllBytes(_bench.Segment);
        for (int i = 0; i < bytes.Length; i += i < at[2] ? 7 : 1)
        {
            byte[] flipped = [.. bytes];
            flipped[i] ^= 4;
            File.WriteAllBytes(_bench.Segment, flipped);
            int line = Array.FindLastIndex(at, a => a <= i);
            if (line == 2)
            {
                Damaged refused = Assert.IsType<Damaged>(_bench.Refused());
                Assert.Equal(at[2], refused.Offset);
                continue;
            }
            using JobLog log = _bench.Own();
            SubjectReading whole = log.Read(line == 0 ? "JOB2" : "JOB1"), damaged = log.Read(line == 0 ? "JOB1" : "JOB2");
            Assert.Null(whole.Damage);
            Assert.Equal(("journal-2026.log", at[line]), (damaged.Damage?.File, damaged.Damage?.Offset));
            Assert.Empty(damaged.Lines);
            File.WriteAllBytes(_bench.Segment, bytes);
        }
    }

    private static void Put(FileStream file, int at, byte value)
    {
        file.Position = at;
        file.WriteByte(value);
    }

    public void Dispose() => _bench.Dispose();
}
