using ServiceRunner.Files.Data;
using ServiceRunner.Files.Journal;
using ServiceRunner.Files.Tests.Journal;

namespace ServiceRunner.Files.Tests.Data;

public sealed class BackupTests : IDisposable
{
    private readonly LogBench _bench = new();
    private readonly string _place = Directory.CreateTempSubdirectory("backup-").FullName;

    private string Target => In("workshop.backup");

    private string In(string name) => Path.Combine(_place, name);

    private static Dictionary<string, string> Content(string folder) =>
        Directory.GetFiles(folder, "*", SearchOption.AllDirectories).Where(f => !Path.GetFileName(f).StartsWith("index", StringComparison.Ordinal) && !Path.GetFileName(f).StartsWith("lock", StringComparison.Ordinal))
            .ToDictionary(f => Path.GetRelativePath(folder, f), f => Convert.ToHexString(File.ReadAllBytes(f)));

    private void Fill()
    {
        _bench.ThreeLines();
        Assert.IsType<KeptText>(new KeptTexts(_bench.Folder).Put("steps: []"u8));
        Assert.Null(new Owners(_bench.Folder).Save("A1", new Owner("A. Fabricated", "12 Any Lane")));
        File.WriteAllText(_bench.In("workshop.yaml"), "workshop: x\n");
        Directory.CreateDirectory(_bench.In("procedures"));
        File.WriteAllText(_bench.In("procedures/ours für Uhren.yaml"), "procedure: x\n");
    }

    private BackedUp Made(bool replace = false) => Assert.IsType<BackedUp>(Backup.Write(_bench.Folder, Target, replace));

    private Restored Back(string name = "restored") => Assert.IsType<Restored>(Restore.Read(Target, In(name)));

    private DataFault Refused(string name = "restored") => Assert.IsType<RestoreRefused>(Restore.Read(Target, In(name))).Fault;

    private void NothingIsLeft(params string[] names) => Assert.Equal(names.Order(StringComparer.Ordinal), Directory.GetFileSystemEntries(_place).Select(e => Path.GetFileName(e)!).Order(StringComparer.Ordinal));

    [Fact]
    public void A_folder_comes_back_byte_for_byte_without_its_index()
    {
        Fill();
        BackedUp made = Made();
        Assert.Equal((3L, 2, 0, 0), (made.Lines, made.Logs, made.Damage.Count, made.LeftOut.Count));
        NothingIsLeft("workshop.backup");
        Restored back = Back();
        Assert.Equal((3L, 2, 0), (back.Lines, back.Logs, back.Ignored.Count));
        Assert.Equal(Content(_bench.Path), Content(back.Folder.Path));
        Assert.False(File.Exists(Path.Combine(back.Folder.Path, "index.db")));
        Assert.Equal(LogBench.BenchId, back.Folder.Bench);
        NothingIsLeft("restored", "workshop.backup");
        using JobLog log = Assert.IsType<Opened>(JobLog.Open(back.Folder, OpenMode.Own, LogBench.RowOf, _bench.Options)).Log;
        Assert.Equal(2, log.Read("JOB1").Lines.Count);
        LogBench.Append(log, LogBench.Line("JOB1", 3, "Running"));
    }

    [Fact]
    public void A_backup_and_what_is_made_of_it_are_for_their_owner_only()
    {
        if (OperatingSystem.IsWindows()) return;
        Fill();
        Made();
        Back();
        const UnixFileMode Own = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        Assert.Equal(Own, File.GetUnixFileMode(Target));
        foreach (string file in Directory.GetFiles(In("restored"), "*", SearchOption.AllDirectories)) Assert.Equal((file, Own), (file, File.GetUnixFileMode(file)));
        foreach (string folder in (string[])[In("restored"), .. Directory.GetDirectories(In("restored"))])
            Assert.Equal((folder, Own | UnixFileMode.UserExecute), (folder, File.GetUnixFileMode(folder)));
    }

    [Fact]
    public void A_file_that_is_there_stays_unless_it_may_be_replaced()
    {
        Fill();
        File.WriteAllText(Target, "a letter");
        Assert.Equal(new BackupExists(Target), Assert.IsType<BackupRefused>(Backup.Write(_bench.Folder, Target)).Fault);
        Assert.Equal("a letter", File.ReadAllText(Target));
        Made(replace: true);
        Assert.Equal(3, Back().Lines);
        Assert.Equal(new BackupExists(_place), Assert.IsType<BackupRefused>(Backup.Write(_bench.Folder, _place, replace: true)).Fault);
        Assert.Equal(new BackupPlaceMissing(In("none")), Assert.IsType<BackupRefused>(Backup.Write(_bench.Folder, In("none/x"))).Fault);
    }

    [Fact]
    public async Task While_a_run_appends_whole_actions_are_taken_that_hold()
    {
        Fill();
        using JobLog log = _bench.Own();
        bool stop = false;
        long acknowledged = 3;
        // A thread of its own, and some way on before the first copy: a busy machine may start it late.
        Task appending = Task.Factory.StartNew(() =>
        {
            for (int n = 1; !Volatile.Read(ref stop); n++)
                Volatile.Write(ref acknowledged, LogBench.Append(log, LogBench.Line("JOB3", n, "Running"), LogBench.Line("JOB4", n, new string('x', n * 997 % 9000))).Lines[^1].Sequence);
        }, CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default);
        while (Volatile.Read(ref acknowledged) < 33 && !appending.IsCompleted) Thread.Sleep(1);
        long last = 0;
        for (int i = 0; i < 15; i++)
        {
            long before = Volatile.Read(ref acknowledged);
            BackedUp made = Made(replace: true);
            Assert.Empty(made.Damage);
            Assert.True(made.Lines >= before && made.Lines % 2 == 1, $"{before} acknowledged, {made.Lines} taken");
            Assert.Equal(made.Lines, Back("r" + i).Lines);
            Assert.All(JobLog.Scan(In("r" + i)), item => Assert.IsType<ScannedLine>(item));
            last = made.Lines;
        }
        Volatile.Write(ref stop, true);
        await appending;
        Assert.True(last > 30, $"{last} lines");
    }

    [Theory]
    [InlineData("{\"v\":1,\"of\":")]
    [InlineData("")]
    public void What_was_never_acknowledged_is_not_taken_and_is_no_damage(string torn)
    {
        Fill();
        if (torn.Length > 0) File.AppendAllText(_bench.Segment, torn);
        else
        {
            using (JobLog log = _bench.Own()) LogBench.Append(log, LogBench.Line("JOB1", 3, "Running"), LogBench.Line("JOB2", 2, "Running"));
            using FileStream file = new(_bench.Segment, FileMode.Open);
            file.SetLength(file.Length - 5);
        }
        byte[] before = File.ReadAllBytes(_bench.Segment);
        Assert.Equal((3L, 0), (Made().Lines, Made(replace: true).Damage.Count));
        Assert.Equal(3, Back().Lines);
        Assert.Equal(before, File.ReadAllBytes(_bench.Segment));
    }

    [Fact]
    public void Of_a_damaged_journal_what_is_whole_is_taken_and_the_damage_told()
    {
        Fill();
        ScanItem second = JobLog.Scan(_bench.Path).ElementAt(1);
        byte[] bytes = File.ReadAllBytes(_bench.Segment);
        bytes[second.Offset + 30] ^= 1;
        File.WriteAllBytes(_bench.Segment, bytes);
        string kept = Directory.GetFiles(_bench.In("kept")).Single();
        File.AppendAllText(kept, "x");
        Dictionary<string, string> before = Content(_bench.Path);
        BackedUp made = Made();
        Assert.Equal([new KeptTextChanged(Path.GetFileName(kept)), new Damaged("journal-2026.log", second.Offset, Damage.LineHash)], made.Damage);
        Assert.Equal((2L, 1), (made.Lines, made.Logs));
        Assert.Equal(before, Content(_bench.Path));
        Assert.Equal(2, Back().Lines);
        Assert.All(JobLog.Scan(In("restored")), i => Assert.Equal("JOB1", Assert.IsType<ScannedLine>(i).Line.Subject));
        // An earlier backup may hold more than the damaged folder.
        BackupRefused refused = Assert.IsType<BackupRefused>(Backup.Write(_bench.Folder, Target, replace: true));
        Assert.Equal((new BackupNotReplaced(Target), 2), (refused.Fault, refused.Damage.Count));
    }

    [Fact]
    public void What_an_ended_run_left_is_cleared_and_what_is_not_ours_is_not()
    {
        Fill();
        Directory.CreateDirectory(Target + ".part/copy/procedures");
        File.WriteAllText(Target + ".part/servicerunner-part", "");
        File.WriteAllText(Target + ".part/copy/journal-2026.log", "half");
        File.WriteAllText(Target + ".part/copy/procedures/erased.yaml", "of an earlier day");
        Made();
        Directory.CreateDirectory(In("restored.part"));
        File.WriteAllText(In("restored.part/letter.txt"), "dear");
        Assert.Equal(new PartTaken(In("restored.part")), Refused());
        Assert.Equal("dear", File.ReadAllText(In("restored.part/letter.txt")));
        File.Move(In("restored.part/letter.txt"), In("restored.part/servicerunner-part"));
        Assert.Equal(Content(_bench.Path), Content(Back().Folder.Path));
        NothingIsLeft("restored", "workshop.backup");
    }

    [FactMounting]
    public void On_a_full_disk_no_half_backup_and_no_half_folder_stays()
    {
        Fill();
        using (JobLog log = _bench.Own())
            for (int n = 1; n <= 200; n++) LogBench.Append(log, LogBench.Line("JOB3", n, Convert.ToHexString(System.Security.Cryptography.RandomNumberGenerator.GetBytes(1000))));
        Made();
        using SmallDisk disk = new("256k");
        string file = Path.Combine(disk.Path, "b");
        Assert.IsType<DiskFull>(Assert.IsType<BackupRefused>(Backup.Write(_bench.Folder, file)).Fault);
        Assert.IsType<DiskFull>(Assert.IsType<RestoreRefused>(Restore.Read(Target, Path.Combine(disk.Path, "data"))).Fault);
        Assert.Empty(Directory.GetFileSystemEntries(disk.Path));
        disk.Resize("4m");
        Assert.IsType<BackedUp>(Backup.Write(_bench.Folder, file));
        Assert.Equal(203, Assert.IsType<Restored>(Restore.Read(file, Path.Combine(disk.Path, "data"))).Lines);
    }

    public void Dispose()
    {
        _bench.Dispose();
        Directory.Delete(_place, recursive: true);
    }
}
