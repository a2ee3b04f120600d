using ServiceRunner.Files.Data;
using ServiceRunner.Files.Journal;

namespace ServiceRunner.Files.Tests.Journal;

public sealed class RecoveryTests : IDisposable
{
    private readonly LogBench _bench = new();

    [Fact]
    public void Each_subject_is_copied_as_far_as_it_is_whole()
    {
        string hash = Assert.IsType<KeptText>(new KeptTexts(_bench.Folder).Put("a procedure"u8)).Hash;
        Assert.Null(new Owners(_bench.Folder).Save("OWNER1", new Owner("A. B.", "by post")));
        using (JobLog log = _bench.Own())
        {
            for (int i = 1; i <= 10; i++) LogBench.Append(log, LogBench.Line("JOB1", i, "Running"), LogBench.Line("JOB2", i, "Running"));
        }
        List<ScanItem> before = [.. JobLog.Scan(_bench.Path)];
        byte[] bytes = File.ReadAllBytes(_bench.Segment);
        bytes[before[8].Offset + 30] ^= 1;
        File.WriteAllBytes(_bench.Segment, [.. bytes, .. "{\"v\":1,"u8]);

        string to = _bench.In("recovered");
        Recovered recovered = Assert.IsType<Recovered>(JobLog.Recover(_bench.Folder, to));
        Assert.Equal(["JOB1"], recovered.CutSubjects);
        Assert.Equal(14, recovered.Lines);
        Assert.Equal([(before[8].Offset, Damage.LineHash), (before[10].Offset, Damage.SubjectSequence), ((long)bytes.Length, Damage.Unfinished)],
            recovered.Damage.Select(d => (d.Offset, d.What)));
        using JobLog again = Assert.IsType<Opened>(JobLog.Open(recovered.Folder, OpenMode.Own, LogBench.RowOf, _bench.Options)).Log;
        Assert.Equal((4, 10), (again.Read("JOB1").Lines.Count, again.Read("JOB2").Lines.Count));
        Assert.Equal(before.OfType<ScannedLine>().Where(l => l.Line.Subject == "JOB2").Select(l => l.Line.BodyHash), again.Read("JOB2").Lines.Select(l => l.BodyHash));
        Assert.All(JobLog.Scan(to), i => Assert.IsType<ScannedLine>(i));
        Assert.IsType<KeptBytes>(new KeptTexts(recovered.Folder).Get(hash));
        Assert.Equal(new Owner("A. B.", "by post"), new Owners(recovered.Folder).Find("OWNER1"));
        LogBench.Append(again, LogBench.Line("JOB1", 5, "Held"));
    }

    [Fact]
    public void An_append_that_was_never_acknowledged_is_not_recovered()
    {
        using (JobLog log = _bench.Own())
        {
            LogBench.Append(log, LogBench.Line("JOB1", 1, "Running"));
            LogBench.Append(log, LogBench.Line("JOB1", 2, "Running"), LogBench.Line("JOB2", 1, "Running"));
        }
        using (FileStream file = new(_bench.Segment, FileMode.Open)) file.SetLength(file.Length - 5);
        Assert.Equal(1, Assert.IsType<Recovered>(JobLog.Recover(_bench.Folder, _bench.In("recovered"))).Lines);
    }

    [Fact]
    public void Nothing_is_recovered_over_something_else()
    {
        _bench.ThreeLines();
        Assert.IsType<NotADataFolder>(Assert.IsType<RecoverRefused>(JobLog.Recover(_bench.Folder, _bench.Path)).Fault);
    }

    public void Dispose() => _bench.Dispose();
}
