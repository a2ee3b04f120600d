using ServiceRunner.Files.Data;
using ServiceRunner.Files.Journal;

namespace ServiceRunner.Files.Tests.Journal;

public sealed class TornTailTests : IDisposable
{
    private readonly LogBench _bench = new();

    [Fact]
    public void A_last_line_torn_at_any_byte_is_moved_aside_and_the_log_goes_on()
    {
        long[] at = _bench.ThreeLines();
        byte[] bytes = File.ReadAllBytes(_bench.Segment);
        for (int length = 1; length < at[3] - at[2]; length++)
        {
            byte[] torn = bytes[..(int)(at[2] + length)];
            File.WriteAllBytes(_bench.Segment, torn);
            _bench.DropIndex();
            using (JobLog log = _bench.Own())
            {
                TornTail note = Assert.Single(log.Notes.OfType<TornTail>());
                Assert.Equal(("journal-2026.log", at[2], length), (note.File, note.Offset, note.Length));
                Assert.Equal(torn[(int)at[2]..], File.ReadAllBytes(_bench.In(note.MovedTo)));
                Assert.Equal(2, log.Head.Sequence);
                Assert.Equal([new LineId(3, 2, default)], LogBench.Append(log, LogBench.Line("JOB1", 2, "Held")).Lines.Select(l => l with { BodyHash = default }));
            }
            Assert.Equal(bytes, File.ReadAllBytes(_bench.Segment));
        }
    }

    [Fact]
    public void An_append_of_several_lines_torn_at_any_byte_goes_whole()
    {
        _bench.ThreeLines();
        long start = new FileInfo(_bench.Segment).Length;
        using (JobLog log = _bench.Own())
            LogBench.Append(log, LogBench.Line("JOB1", 3, "Running"), LogBench.Line("JOB2", 2, "Held"), LogBench.Line("JOB3", 1, "Running"));
        byte[] bytes = File.ReadAllBytes(_bench.Segment);
        for (int length = (int)start + 1; length < bytes.Length; length += 3)
        {
            File.WriteAllBytes(_bench.Segment, bytes[..length]);
            _bench.DropIndex();
            using (JobLog beside = _bench.Beside()) Assert.Equal(3, beside.Head.Sequence);
            using JobLog log = _bench.Own();
            Assert.Equal(3, log.Head.Sequence);
            Assert.Equal((start, length - start), log.Notes.OfType<TornTail>().Select(t => (t.Offset, t.Length)).Single());
            Assert.Equal(start, new FileInfo(_bench.Segment).Length);
            Assert.Equal((2, 1, 0), (log.Read("JOB1").Lines.Count, log.Read("JOB2").Lines.Count, log.Read("JOB3").Lines.Count));
        }
    }

    [Fact]
    public void If_the_index_knew_the_torn_line_that_is_said()
    {
        long[] at = _bench.ThreeLines();
        using (FileStream file = new(_bench.Segment, FileMode.Open)) file.SetLength(at[2] + 10);
        using JobLog log = _bench.Own();
        Assert.Equal(new EndsBeforeIndex(3, 2), Assert.Single(log.Notes.OfType<EndsBeforeIndex>()));
        Assert.Single(log.Notes.OfType<TornTail>());
        Assert.Equal(new IndexRebuilt(RebuildReason.DoesNotMatch, 2), Assert.Single(log.Notes.OfType<IndexRebuilt>()));
    }

    [Fact]
    public void If_the_index_knew_a_line_that_is_gone_whole_that_is_said()
    {
        long[] at = _bench.ThreeLines();
        using (FileStream file = new(_bench.Segment, FileMode.Open)) file.SetLength(at[2]);
        using JobLog log = _bench.Own();
        Assert.Contains(new EndsBeforeIndex(3, 2), log.Notes);
    }

    [Fact]
    public void A_whole_last_line_that_does_not_verify_is_damage_and_not_a_torn_tail()
    {
        long[] at = _bench.ThreeLines();
        byte[] bytes = File.ReadAllBytes(_bench.Segment);
        bytes[at[2] + 20] ^= 1;
        File.WriteAllBytes(_bench.Segment, bytes);
        Assert.Equal(new Damaged("journal-2026.log", at[2], Damage.LineHash), _bench.Refused());
        Assert.Equal(bytes, File.ReadAllBytes(_bench.Segment));
        using JobLog beside = _bench.Beside();
        Assert.Equal([new ReadsUpTo(new Damaged("journal-2026.log", at[2], Damage.LineHash))], beside.Notes);
        Assert.Equal((1, 1), (beside.Read("JOB1").Lines.Count, beside.Read("JOB2").Lines.Count));
    }

    [Fact]
    public void Sectors_that_a_power_cut_left_unwritten_are_a_torn_tail()
    {
        long[] at = _bench.ThreeLines();
        byte[] bytes = File.ReadAllBytes(_bench.Segment);
        byte[] line = [.. bytes[(int)at[2]..^70], .. new byte[4096], .. bytes[^70..]];
        File.WriteAllBytes(_bench.Segment, [.. bytes[..(int)at[2]], .. line]);
        _bench.DropIndex();
        using JobLog log = _bench.Own();
        Assert.Equal((at[2], (long)line.Length), log.Notes.OfType<TornTail>().Select(t => (t.Offset, t.Length)).Single());
        Assert.Equal(2, log.Head.Sequence);
    }

    [Fact]
    public void Zeros_before_a_good_line_are_damage()
    {
        using (JobLog log = _bench.Own())
        {
            LogBench.Append(log, LogBench.Line("JOB1", 1, "Running", [.. Enumerable.Range(1, 200).Select(i => $"B-{i}")]));
            LogBench.Append(log, LogBench.Line("JOB1", 2, "Held"));
        }
        byte[] bytes = File.ReadAllBytes(_bench.Segment);
        bytes.AsSpan(100, 1000).Clear();
        File.WriteAllBytes(_bench.Segment, bytes);
        _bench.DropIndex();
        Assert.Equal(new Damaged("journal-2026.log", 0, Damage.LineHash), _bench.Refused());
        Assert.Equal(bytes, File.ReadAllBytes(_bench.Segment));
    }

    public void Dispose() => _bench.Dispose();
}
