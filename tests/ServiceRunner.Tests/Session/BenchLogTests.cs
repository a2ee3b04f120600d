using System.Text;
using ServiceRunner.Core.Benches;
using ServiceRunner.Files.Data;
using ServiceRunner.Files.Journal;
using ServiceRunner.Files.Machine;
using ServiceRunner.Files.Sentences;
using ServiceRunner.Screens;
using ServiceRunner.Session;
using ServiceRunner.Tests.Screens;
using ServiceRunner.Verbs;

namespace ServiceRunner.Tests.Session;

/// <summary>A bench whose log cannot be read to its end is not written on, and is never shown as if it were whole.</summary>
public class BenchLogTests
{
    [Fact]
    public void A_damaged_bench_log_is_not_opened_to_be_written_on()
    {
        using PaperBench bench = new();
        foreach (string jar in new[] { "J1", "J2", "J3" }) bench.Session.Act(new BenchAction.FillJar(jar));
        bench.Session.Dispose();
        string journal = Directory.GetFiles(bench.Path, "journal-*.log").Single();
        byte[] bytes = File.ReadAllBytes(journal);
        // The second line of three hundred: what the index says of the end is still true.
        bytes[Array.IndexOf(bytes, (byte)'\n') + 40] ^= 1;
        File.WriteAllBytes(journal, bytes);
        Assert.Null(House.Open(bench.Path, OpenMode.Own, new MachineClock(), out int exit));
        Assert.Equal(ExitCodes.Damaged, exit);
        Assert.Equal(bytes, File.ReadAllBytes(journal));
        using BenchSession reader = House.Open(bench.Path, OpenMode.Read, new MachineClock(), out exit)!;
        Assert.Equal(ExitCodes.Done, exit);
        Assert.Contains(reader.Notes, n => n is ReadsUpTo);
        Assert.Null(reader.Bench.JarOf("J3").FilledAt);
    }

    [Fact]
    public void A_bench_that_a_later_program_went_on_with_can_only_be_read_and_says_so()
    {
        using PaperBench bench = new();
        bench.Session.Act(new BenchAction.FillJar("J1"));
        bench.Session.Dispose();
        Append(bench.Path, """[{"kind":"bench-moved.3"}]""");
        Assert.Null(House.Open(bench.Path, OpenMode.Own, new MachineClock(), out int exit));
        Assert.Equal(ExitCodes.Folder, exit);
        // Made anew, the index says as much as before.
        foreach (string index in Directory.GetFiles(bench.Path, "index*")) File.Delete(index);
        Assert.Null(House.Open(bench.Path, OpenMode.Own, new MachineClock(), out exit));
        Assert.Equal(ExitCodes.Folder, exit);
        using BenchSession reader = House.Open(bench.Path, OpenMode.Read, new MachineClock(), out exit)!;
        Assert.Equal(new BenchFromTheFuture("bench-moved.3"), reader.BenchFault);
        Assert.NotNull(reader.Bench.JarOf("J1").FilledAt);
        Shell shell = new(reader, TimeProvider.System);
        shell.Tick();
        Assert.Contains(
            "Jars, bottles, clocks and who is signed in are shown as they stood before the end of the bench's log, which cannot be read: a later version of this program wrote 'bench-moved.3'.",
            string.Join(' ', shell.Draw(80, 24).ToString().Split('\n').TakeLast(5).Select(l => l.Trim())), StringComparison.Ordinal);
    }

    [Fact]
    public void Each_fault_has_its_sentence()
    {
        Assert.Equal("A later version of this program went on with the bench in DATA ('bench-moved.3'); use that version, or open it with --read.", FaultWords.Sentence(new BenchFromTheFuture("bench-moved.3"), "DATA"));
        Assert.Equal("Entry 7 of the bench in DATA is whole but makes no sense (no time); open it with --read, or bring a backup back. Nothing was changed.", FaultWords.Sentence(new BenchMakesNoSense(7, "no time."), "DATA"));
    }

    [Fact]
    public void A_notice_stands_until_it_was_there_long_enough_to_be_read()
    {
        using PaperBench bench = new();
        bench.Shell.Notice("The disk is nearly full.");
        bench.Shell.Notice("And another thing.");
        Assert.Contains("nearly full", bench.Picture(), StringComparison.Ordinal);
        bench.Keys("Down", "Down");
        Assert.Contains("nearly full", bench.Picture(), StringComparison.Ordinal);
        bench.Wait(TimeSpan.FromSeconds(3)).Keys("Down");
        Assert.Contains("And another thing.", bench.Picture(), StringComparison.Ordinal);
        bench.Wait(TimeSpan.FromSeconds(3)).Keys("Down");
        Assert.DoesNotContain("thing", bench.Picture(), StringComparison.Ordinal);
    }

    private static void Append(string path, string events)
    {
        DataFolder folder = ((FolderReady)DataFolder.Open(path)).Folder;
        using JobLog log = ((Opened)JobLog.Open(folder, OpenMode.Own, new JobReader(folder).RowOf)).Log;
        Assert.IsType<Appended>(log.Append([new NewLine(folder.Bench, "future", "IV", new MachineClock().Now(), Encoding.UTF8.GetBytes(events))]));
    }
}
