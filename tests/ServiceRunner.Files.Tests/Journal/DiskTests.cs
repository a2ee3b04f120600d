using System.Diagnostics;
using System.Globalization;
using ServiceRunner.Files.Data;
using ServiceRunner.Files.Journal;
using ServiceRunner.Tests.Shared;

namespace ServiceRunner.Files.Tests.Journal;

/// <summary>Disks that are full, cannot be written, or fail: the real calls of the real kernel.</summary>
public sealed class DiskTests
{
    [FactMounting]
    public void On_a_full_disk_nothing_is_acknowledged_and_the_log_goes_on_when_there_is_room()
    {
        using SmallDisk disk = new("512k");
        using LogBench bench = new(disk.Path);
        long acknowledged = 0;
        using (JobLog log = bench.Own())
        {
            AppendOutcome outcome;
            while ((outcome = log.Append(LogBench.Line("JOB1", (int)acknowledged + 1, "Running"))) is Appended done) acknowledged = done.Lines[0].Sequence;
            Assert.Equal(new AppendRefused(new DiskFull("journal-2026.log")), outcome);
            Assert.True(acknowledged > 10);
            long length = new FileInfo(bench.Segment).Length;
            // Several at once, of which a part would have had room: nothing of them stays.
            Assert.IsType<DiskFull>(Assert.IsType<AppendRefused>(log.Append([.. Enumerable.Range(1, 50).Select(n => LogBench.Line("JOB2", n, "Running"))])).Fault);
            Assert.Equal(length, new FileInfo(bench.Segment).Length);
            Assert.Equal(acknowledged, log.Head.Sequence);
            Assert.Equal(acknowledged, log.Read("JOB1").Lines.Count);
            disk.Resize("2m");
            LogBench.Append(log, LogBench.Line("JOB2", 1, "Running"));
        }
        using JobLog again = bench.Own();
        Assert.Equal(acknowledged + 1, again.Head.Sequence);
        Assert.All(JobLog.Scan(bench.Path), i => Assert.IsType<ScannedLine>(i));
    }

    [FactMounting]
    public void On_a_full_disk_the_log_still_opens_and_answers()
    {
        using SmallDisk disk = new("512k");
        using LogBench bench = new(disk.Path);
        bench.ThreeLines();
        bench.DropIndex();
        disk.Fill();
        using JobLog log = bench.Own();
        Assert.Equal((3, 2), (log.Head.Sequence, log.Rows("job", openOnly: false).Count));
        Assert.Equal(2, log.Read("JOB1").Lines.Count);
        Assert.IsType<DiskFull>(Assert.IsType<KeptRefused>(new KeptTexts(bench.Folder).Put("a text"u8)).Fault);
        Assert.Equal(new DiskFull("A1.json"), new Owners(bench.Folder).Save("A1", new Owner("a", "b")));
    }

    [FactMounting]
    public void A_folder_that_cannot_be_written_can_be_read()
    {
        using SmallDisk disk = new("1m");
        using LogBench bench = new(disk.Path);
        bench.ThreeLines();
        disk.MakeReadOnly();
        Assert.Equal(new ReadOnlyFolder(bench.Path), bench.Refused());
        using (JobLog log = bench.Beside()) Assert.Equal((3, 2), (log.Head.Sequence, log.Rows("job", openOnly: true).Count));
        string inside = Path.Combine(bench.Path, "new");
        Assert.IsType<ReadOnlyFolder>(Assert.IsType<FolderRefused>(DataFolder.Create(inside)).Fault);
        disk.MakeWritable();
    }

    [FactNeeding("strace")]
    public async Task After_a_sync_that_the_kernel_failed_nothing_more_is_acknowledged()
    {
        using LogBench bench = new() { Options = new OpenOptions() };
        List<string> said = [];
        using (Process child = ChildProcess.Start("append", bench.Path, FactNeedingAttribute.Find("strace")!, "-f", "-qq", "-o", "/dev/null",
            "-e", "trace=fdatasync", "-e", "inject=fdatasync:error=EIO:when=5"))
        {
            while (said.Count < 200 && await child.StandardOutput.ReadLineAsync() is { } line && line != "ready") said.Add(line);
            if (said.Count == 200) child.Kill(entireProcessTree: true);
            else child.StandardInput.WriteLine();
            await child.WaitForExitAsync();
        }
        // Only the fifth sync fails; a further one would have succeeded, and would have been a lie.
        string file = $"journal-{DateTime.UtcNow.Year.ToString(CultureInfo.InvariantCulture)}.log";
        Assert.Equal([new SyncFailed(file, 5).ToString(), new Poisoned(5).ToString()], said[^2..]);
        long acknowledged = long.Parse(said[^3], CultureInfo.InvariantCulture);
        using JobLog log = bench.Own();
        Assert.True(log.Head.Sequence >= acknowledged && acknowledged > 0);
    }

    [FactMounting]
    public void What_a_disk_has_left_is_what_can_be_written_on_it()
    {
        using SmallDisk disk = new("512k");
        string folder = Directory.CreateDirectory(System.IO.Path.Combine(disk.Path, "data")).FullName;
        Assert.InRange(DiskSpace.Left(folder) ?? -1, 400_000, 512 * 1024);
        disk.Fill();
        Assert.Equal(0, DiskSpace.Left(folder));
        Assert.Null(DiskSpace.Left(System.IO.Path.Combine(disk.Path, "none")));
    }
}
