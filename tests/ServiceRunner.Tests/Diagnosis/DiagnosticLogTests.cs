using Microsoft.Extensions.Time.Testing;
using ServiceRunner.Diagnosis;
using ServiceRunner.Files.Data;
using ServiceRunner.Tests.EndToEnd;
using ServiceRunner.Tests.Shared;
using ServiceRunner.Tests.Terminal;

namespace ServiceRunner.Tests.Diagnosis;

/// <summary>What the program went through, without anybody's name, number or words.</summary>
public class DiagnosticLogTests
{
    [Fact]
    public void An_exception_is_written_with_its_place_and_without_its_message()
    {
        using TemporaryFolder folder = new();
        DiagnosticLog log = Open(folder);
        try
        {
            throw new InvalidOperationException("M. Halvorsen's watch, Q26-101", new FormatException("scratched at 4"));
        }
        catch (InvalidOperationException e)
        {
            log.Fault(e);
        }
        string text = Text(folder);
        Assert.Contains("fault InvalidOperationException 0x80131509", text, StringComparison.Ordinal);
        Assert.Contains("caused by FormatException", text, StringComparison.Ordinal);
        Assert.Contains($"at ServiceRunner.Tests.Diagnosis.DiagnosticLogTests.{nameof(An_exception_is_written_with_its_place_and_without_its_message)}()", text, StringComparison.Ordinal);
        Assert.DoesNotContain("Halvorsen", text, StringComparison.Ordinal);
        Assert.DoesNotContain("scratched", text, StringComparison.Ordinal);
        Assert.DoesNotContain(Repository.Root, text, StringComparison.Ordinal);
    }

    [Fact]
    public void Slow_and_refused_writes_are_noted_and_quick_ones_only_on_demand()
    {
        using TemporaryFolder folder = new();
        DiagnosticLog log = Open(folder);
        log.Wrote(TimeSpan.FromMilliseconds(5), null);
        log.Wrote(TimeSpan.FromMilliseconds(350), null);
        log.Wrote(TimeSpan.FromMilliseconds(1), new DiskFull("journal-2026.log"));
        log.Closely = true;
        log.Wrote(TimeSpan.FromMilliseconds(7), null);
        log.Stop(143);
        Assert.Equal(["slow write 350 ms", "write refused: DiskFull", "write 7 ms", "stop exit=143 after=0 s"], Text(folder).TrimEnd().Split('\n').Skip(1).Select(l => l[(l.IndexOf('Z', StringComparison.Ordinal) + 2)..]));
    }

    [Fact]
    public void Two_files_are_kept_and_neither_grows_without_end()
    {
        using TemporaryFolder folder = new();
        DiagnosticLog log = Open(folder);
        string line = new('x', 4000);
        for (int i = 0; i < 400; i++) log.Note(line);
        Assert.Equal([DiagnosticLog.Before, DiagnosticLog.Name], Directory.GetFiles(folder.Path).Select(f => Path.GetFileName(f)!).Order(StringComparer.Ordinal));
        Assert.All(Directory.GetFiles(folder.Path), f => Assert.InRange(new FileInfo(f).Length, 1, DiagnosticLog.Most + 5000));
    }

    [Fact]
    public void Where_it_cannot_be_written_the_work_goes_on()
    {
        using TemporaryFolder folder = new();
        Directory.CreateDirectory(Path.Combine(folder.Path, DiagnosticLog.Name));
        DiagnosticLog log = Open(folder);
        log.Note("anything");
        Assert.Null(log.Path);
    }

    [FactNeeding("tmux", "bash")]
    public void A_walked_demo_leaves_no_name_no_number_and_no_text_in_it()
    {
        using Tmux tmux = new(120, 40);
        string data = Path.Combine(tmux.Home, "data");
        tmux.Run($"{BuiltProgram.Path} demo --diagnose --data {data}");
        tmux.WaitFor("Q26-110", TimeSpan.FromSeconds(60));
        tmux.Keys("Enter");
        tmux.WaitFor("steps done");
        tmux.Keys("f");
        tmux.WaitFor("Where is it?");
        tmux.Keys("1");
        tmux.WaitFor("Enter takes it");
        tmux.Text("the cannon pinion of Mr Overbury");
        tmux.Keys("Enter");
        tmux.WaitFor("what is it?");
        tmux.Text("it slips");
        tmux.Keys("Enter");
        tmux.WaitFor("how much does it weigh");
        tmux.Keys("1");
        tmux.WaitFor("how sure is it");
        tmux.Keys("1");
        tmux.WaitFor("The finding is noted.");
        tmux.Keys("F2");
        tmux.WaitFor("new job");
        tmux.Keys("/");
        tmux.WaitFor("A part of a number");
        tmux.Text("Lindqvist");
        tmux.Keys("Enter");
        tmux.WaitFor("Containing 'Lindqvist'");
        tmux.Resize(90, 30);
        tmux.WaitFor("Containing 'Lindqvist'");
        tmux.Keys("q");
        Assert.Equal(0, tmux.ExitCode());
        string text = File.ReadAllText(Path.Combine(data, DiagnosticLog.Name));
        foreach (string told in new[] { " start bench version=", " players: ", " write ", " shows BoardModel 120x40", " shows RunModel 120x40", " shows BoardModel 90x30", " stop exit=0 after=" }) Assert.Contains(told, text, StringComparison.Ordinal);
        Owners owners = new(((FolderReady)DataFolder.Open(data)).Folder);
        List<string> names = [.. owners.Ids().Select(id => owners.Find(id)!.Name), "Ilse", "Varnau", "Quay", "Q26-", "Overbury", "cannon", "Lindqvist", "watch", tmux.Home];
        Assert.True(names.Count > 12);
        foreach (string name in names.SelectMany(n => n.Split(' ')).Where(n => n.Length > 2)) Assert.DoesNotContain(name, text, StringComparison.OrdinalIgnoreCase);
    }

    private static DiagnosticLog Open(TemporaryFolder folder)
    {
        DiagnosticLog log = new(new FakeTimeProvider(new DateTimeOffset(2026, 3, 2, 9, 0, 0, TimeSpan.Zero)));
        log.OpenIn(folder.Path, "bench");
        return log;
    }

    private static string Text(TemporaryFolder folder) => File.ReadAllText(Path.Combine(folder.Path, DiagnosticLog.Name));
}
