using System.Diagnostics;
using ServiceRunner.Files.Data;
using ServiceRunner.Files.Machine;

namespace ServiceRunner.Tests.EndToEnd;

/// <summary>The built program backs up, restores, and erases a person; what it says is held word for word.</summary>
public sealed class BackupTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();
    private readonly string _data;

    public BackupTests()
    {
        _data = In("data");
        Assert.Null(ServiceRunner.Demo.DemoWorkshop.Make(_data, new MachineClock()));
    }

    private string In(string name) => Path.Combine(_folder.Path, name);

    private (int Exit, string Output, string Errors) Run(params string[] arguments) => BuiltProgram.Run(_folder.Path, arguments);

    private (long Lines, int Logs) Counted()
    {
        List<Files.Journal.ScannedLine> lines = [.. Files.Journal.JobLog.Scan(_data).Cast<Files.Journal.ScannedLine>()];
        return (lines.Count, lines.Select(l => l.Line.Subject).Distinct().Count());
    }

    [Fact]
    public void A_restored_folder_gives_the_same_jobs_and_reports()
    {
        (long lines, int logs) = Counted();
        Assert.Equal((0, $"backed up {lines} lines of {logs} logs to {In("b")}.\n", ""), Run("backup", In("b"), "--data", _data));
        Assert.Equal((0, $"restored {lines} lines of {logs} logs to {In("new")}.\n", ""), Run("restore", In("b"), "--data", In("new")));
        Assert.True(File.Exists(Path.Combine(In("new"), "index.db")));
        foreach (string[] verb in (string[][])[["jobs", "--all"], ["report", "Q26-101"], ["report", "Q26-110"], ["audit"]])
            Assert.Equal(Run([.. verb, "--data", _data]), Run([.. verb, "--data", In("new")]));
        Assert.Equal((4, "", $"servicerunner: {In("new")} is not empty, and a backup is only restored where there is nothing yet; name another folder with --data.\n"),
            Run("restore", In("b"), "--data", In("new")));
    }

    [Fact]
    public void A_backup_is_made_while_a_bench_has_the_folder()
    {
        using ServiceRunner.Session.BenchSession? session = ServiceRunner.Verbs.House.Open(_data, Files.Journal.OpenMode.Own, new MachineClock(), out _);
        Assert.NotNull(session);
        Assert.Equal(0, Run("backup", In("b"), "--data", _data).Exit);
        Assert.Equal(5, Run("erase-person", "Halvorsen", "--data", _data).Exit);
    }

    [Fact]
    public void What_cannot_be_done_is_one_sentence()
    {
        string file = _folder.File("letter.txt", "dear");
        Assert.Equal((4, "", $"servicerunner: {file} is there already and was not overwritten; name another file, or add --replace.\n"), Run("backup", file, "--data", _data));
        Assert.Equal((4, "", $"servicerunner: {file} is not a backup of this program. Nothing was changed.\n"), Run("restore", file, "--data", In("new")));
        Assert.Equal((3, "", $"servicerunner: There is no file {In("none")}.\n"), Run("restore", In("none"), "--data", In("new")));
        Assert.Equal((4, "", $"servicerunner: There is no folder {In("no")} to put the backup in; make it, or name another file.\n"), Run("backup", In("no/b"), "--data", _data));
        Assert.Equal(0, Run("backup", file, "--replace", "--data", _data).Exit);
        byte[] bytes = File.ReadAllBytes(file);
        File.WriteAllBytes(file, bytes[..^7]);
        Assert.Equal((6, "", $"servicerunner: {file} is damaged and nothing was restored from it; use another backup.\n"), Run("restore", file, "--data", In("new")));
        Assert.Equal([_data, file], Directory.GetFileSystemEntries(_folder.Path).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Of_a_damaged_folder_the_whole_is_backed_up_and_the_exit_code_tells()
    {
        string journal = Directory.GetFiles(_data, "journal-*.log").Order().Last();
        byte[] bytes = File.ReadAllBytes(journal);
        bytes[bytes.Length - 300] ^= 1;
        File.WriteAllBytes(journal, bytes);
        (int exit, string output, string errors) = Run("backup", In("b"), "--data", _data);
        Assert.Equal(6, exit);
        Assert.Matches(@"^servicerunner: \S+journal-\d{4}\.log: byte \d+: a line does not match its hash\n", errors);
        Assert.Contains(": what is whole. The data folder is damaged (", output, StringComparison.Ordinal);
        Assert.Equal(bytes, File.ReadAllBytes(journal));
        Assert.Equal(0, Run("restore", In("b"), "--data", In("new")).Exit);
        Assert.Contains("no damage", Run("audit", "--data", In("new")).Output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_person_is_listed_and_erased_and_the_chains_still_hold()
    {
        string before = Run("audit", "--data", _data).Output;
        Directory.CreateDirectory(Path.Combine(_data, "printed"));
        foreach (string job in new[] { "Q26-101", "Q26-104" })
            foreach (string slip in new[] { "receipt", "label" })
                Assert.Equal(0, Run(slip, job, "--html", "--data", _data, "--out", Path.Combine(_data, "printed", $"{job}-{slip}.html")).Exit);
        File.WriteAllText(Path.Combine(_data, "printed", "old-receipt.html"), "<p>555 0101</p>");
        (int exit, string listed, string errors) = Run("erase-person", "halvor", "--data", _data);
        Assert.Equal((0, ""), (exit, errors));
        string[] rows = listed.TrimEnd().Split('\n');
        Assert.Equal((2, "Nothing was erased; --yes erases this one."), (rows.Length, rows[1]));
        string[] columns = rows[0].Split('\t');
        Assert.Equal(["M. Halvorsen", "Q26-101"], columns[1..]);
        Assert.Contains("M. Halvorsen", Run("jobs", "--all", "--data", _data).Output, StringComparison.Ordinal);

        // A dot is in the name of more than one.
        (int several, _, string why) = Run("erase-person", ".", "--yes", "--data", _data);
        Assert.Equal((3, "servicerunner: there are several of that name, so nothing was erased; name one by the id.\n"), (several, why));
        Assert.Equal(3, Run("erase-person", "Nobody", "--yes", "--data", _data).Exit);
        Assert.Contains("M. Halvorsen", Run("jobs", "--all", "--data", _data).Output, StringComparison.Ordinal);

        (int erased, string said, _) = Run("erase-person", columns[0], "--yes", "--data", _data);
        Assert.Equal(0, erased);
        Assert.Contains("The job log keeps the id only", said, StringComparison.Ordinal);
        Assert.Contains("Backups made earlier still hold the name", said, StringComparison.Ordinal);
        Assert.Contains("(erased)", Run("jobs", "--all", "--data", _data).Output, StringComparison.Ordinal);
        foreach (string text in new[] { "Halvorsen", "halvorsen@example.org", "555 0101", "3 Invented Row" })
            Assert.DoesNotContain(Directory.GetFiles(_data, "*", SearchOption.AllDirectories), f => File.ReadAllText(f).Contains(text, StringComparison.Ordinal));
        Assert.Equal(["Q26-104-label.html", "Q26-104-receipt.html"], Directory.GetFiles(Path.Combine(_data, "printed")).Select(Path.GetFileName).Order());
        Assert.Equal(before, Run("audit", "--data", _data).Output);
        Assert.Equal(3, Run("erase-person", columns[0], "--yes", "--data", _data).Exit);
    }

    [Fact]
    public void A_restore_or_backup_that_is_killed_leaves_nothing_half()
    {
        Owners owners = new(((FolderReady)DataFolder.Open(_data)).Folder);
        for (int i = 0; i < 400; i++) Assert.Null(owners.Save($"MADE{i}", new Owner($"Invented {i}", "")));
        Assert.Equal(0, Run("backup", In("b"), "--data", _data).Exit);
        int files = Directory.GetFiles(Path.Combine(_data, "owners")).Length, half = 0;
        for (int round = 0; round < 12; round++)
        {
            half += Killed(["restore", In("b"), "--data", In("new")], In("new.part"), round * 4);
            if (Directory.Exists(In("new")))
            {
                Assert.Equal(files, Directory.GetFiles(Path.Combine(In("new"), "owners")).Length);
                Directory.Delete(In("new"), recursive: true);
            }
            half += Killed(["backup", In("b2"), "--replace", "--data", _data], In("b2.part"), round * 4);
            if (!File.Exists(In("b2"))) continue;
            Assert.IsType<Restored>(Restore.Read(In("b2"), In("from-b2")));
            Directory.Delete(In("from-b2"), recursive: true);
        }
        Assert.True(half > 0, "no run was killed in the middle");
        Assert.Equal(0, Run("restore", In("b"), "--data", In("new")).Exit);
        Assert.Equal(0, Run("backup", In("b2"), "--replace", "--data", _data).Exit);
        Assert.Equal([In("b"), In("b2"), _data, In("new")], Directory.GetFileSystemEntries(_folder.Path).Order(StringComparer.Ordinal));
    }

    /// <summary>Kills the program a while after it has begun to write; 1 if it had not come to its end.</summary>
    private int Killed(string[] arguments, string part, int milliseconds)
    {
        ProcessStartInfo start = new(BuiltProgram.Path, arguments) { RedirectStandardOutput = true, RedirectStandardError = true };
        start.Environment["HOME"] = _folder.Path;
        using Process process = Process.Start(start)!;
        Stopwatch patience = Stopwatch.StartNew();
        while (!Directory.Exists(part) && !process.HasExited && patience.Elapsed < TimeSpan.FromSeconds(20)) Thread.Sleep(1);
        Thread.Sleep(milliseconds);
        process.Kill();
        process.WaitForExit();
        return Directory.Exists(part) ? 1 : 0;
    }

    public void Dispose() => _folder.Dispose();
}
