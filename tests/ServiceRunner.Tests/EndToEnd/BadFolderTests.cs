using ServiceRunner.Files.Machine;
using ServiceRunner.Tests.Shared;
using ServiceRunner.Tests.Terminal;

namespace ServiceRunner.Tests.EndToEnd;

/// <summary>A data folder that cannot be used gets one clear sentence and an exit code of its own, and nothing is lost.</summary>
public class BadFolderTests
{
    private static string Demo(TemporaryFolder folder)
    {
        string data = Path.Combine(folder.Path, "data");
        Assert.Null(ServiceRunner.Demo.DemoWorkshop.Make(data, new MachineClock()));
        return data;
    }

    // One bit, in a line near the end.
    private static (string Journal, byte[] Bytes) Damage(string data)
    {
        string journal = Directory.GetFiles(data, "journal-*.log").Order().Last();
        byte[] bytes = File.ReadAllBytes(journal);
        bytes[^300] ^= 1;
        File.WriteAllBytes(journal, bytes);
        return (journal, bytes);
    }

    private static Dictionary<string, byte[]> Content(string data) =>
        Directory.GetFiles(data, "journal-*.log").ToDictionary(f => f, File.ReadAllBytes);

    [Fact]
    public void No_folder_yet()
    {
        using TemporaryFolder folder = new();
        (int exit, string output, string errors) = BuiltProgram.Run(folder.Path, "jobs", "--data", Path.Combine(folder.Path, "none"));
        Assert.Equal((4, ""), (exit, output));
        Assert.StartsWith("servicerunner: There is no data folder at", errors, StringComparison.Ordinal);
    }

    [Fact]
    public void A_folder_of_other_things()
    {
        using TemporaryFolder folder = new();
        folder.File("letter.txt", "dear");
        (int exit, _, string errors) = BuiltProgram.Run(folder.Path, "jobs", "--data", folder.Path);
        Assert.Equal(4, exit);
        Assert.Contains("is not a data folder of this program", errors, StringComparison.Ordinal);
    }

    [Fact]
    public void An_unknown_job()
    {
        using TemporaryFolder folder = new();
        (int exit, string output, string errors) = BuiltProgram.Run(folder.Path, "report", "X-1", "--data", Demo(folder));
        Assert.Equal((3, ""), (exit, output));
        Assert.Contains("there is no job 'X-1'", errors, StringComparison.Ordinal);
    }

    [Fact]
    public void A_damaged_line_is_named_and_the_whole_is_recovered_beside_it()
    {
        using TemporaryFolder folder = new();
        string data = Demo(folder);
        (string journal, byte[] bytes) = Damage(data);
        (int audit, string found, _) = BuiltProgram.Run(folder.Path, "audit", "--data", data);
        Assert.Equal(1, audit);
        Assert.Contains(Path.GetFileName(journal), found, StringComparison.Ordinal);
        string saved = Path.Combine(folder.Path, "saved");
        (_, string recovered, _) = BuiltProgram.Run(folder.Path, "audit", "--data", data, "--recover", saved);
        Assert.Contains($"copied to {saved}", recovered, StringComparison.Ordinal);
        Assert.Equal(bytes, File.ReadAllBytes(journal));
        (int again, string clean, _) = BuiltProgram.Run(folder.Path, "audit", "--data", saved);
        Assert.Equal(0, again);
        Assert.Contains("no damage", clean, StringComparison.Ordinal);
    }

    [FactNeeding("tmux", "bash")]
    public void A_damaged_journal_is_not_opened_for_writing()
    {
        using TemporaryFolder folder = new();
        string data = Demo(folder);
        (string journal, byte[] bytes) = Damage(data);
        using Tmux tmux = new(100);
        tmux.Run($"{BuiltProgram.Path} --data {data}");
        Assert.Equal(6, tmux.ExitCode());
        Assert.Contains("is damaged at byte", tmux.Capture().Replace("\n", "", StringComparison.Ordinal), StringComparison.Ordinal);
        Assert.Equal(bytes, File.ReadAllBytes(journal));
    }

    [FactNeeding("tmux", "bash")]
    public void A_second_start_is_told_so_and_may_read()
    {
        using TemporaryFolder folder = new();
        string data = Demo(folder);
        using Tmux first = new();
        first.Run($"{BuiltProgram.Path} --data {data}");
        first.WaitForScreen();
        using Tmux second = new(100);
        second.Run($"{BuiltProgram.Path} --data {data}");
        Assert.Equal(5, second.ExitCode());
        Assert.Contains("is in use by another run", second.Capture().Replace("\n", "", StringComparison.Ordinal), StringComparison.Ordinal);
        (int exit, string output, _) = BuiltProgram.Run(folder.Path, "jobs", "--data", data);
        Assert.Equal(0, exit);
        Assert.Contains("Q26-104\twaiting for a part", output, StringComparison.Ordinal);
        second.Run($"{BuiltProgram.Path} --read --data {data}");
        second.WaitFor("reading only");
    }

    [FactNeeding("tmux", "bash", "mount", "umount")]
    public void A_full_disk_keeps_what_was_done_and_says_that_the_rest_was_not()
    {
        if (Environment.UserName != "root") return;
        using TemporaryFolder folder = new();
        string disk = Path.Combine(folder.Path, "disk"), data = Path.Combine(disk, "data");
        Directory.CreateDirectory(disk);
        Command("mount", "-t", "tmpfs", "-o", "size=4m", "tmpfs", disk);
        try
        {
            Assert.Null(ServiceRunner.Demo.DemoWorkshop.Make(data, new MachineClock()));
            using Tmux tmux = new(100);
            tmux.Run($"{BuiltProgram.Path} --data {data}");
            tmux.WaitFor("Q26-110");
            for (int i = 0; i < 5 && !tmux.Capture().Contains("MiB are left", StringComparison.Ordinal); i++)
            {
                // Another notice may have come first.
                Thread.Sleep(3200);
                tmux.Keys("Up");
                Thread.Sleep(300);
            }
            tmux.WaitFor("MiB are left");
            tmux.Keys("Enter");
            tmux.WaitFor("Balance pivots?");
            Dictionary<string, byte[]> before = Content(data);
            using (FileStream fill = File.Create(Path.Combine(disk, "fill")))
                try
                {
                    while (true) fill.Write(new byte[4096]);
                }
                catch (IOException)
                {
                }
            for (int i = 0; i < 12 && !tmux.Capture().Contains("The disk is full", StringComparison.Ordinal); i++)
            {
                Thread.Sleep(900);
                tmux.Keys("PageDown");
                Thread.Sleep(300);
            }
            tmux.WaitFor("The disk is full");
            File.Delete(Path.Combine(disk, "fill"));
            Thread.Sleep(900);
            tmux.Keys("PageDown");
            Thread.Sleep(500);
            Assert.DoesNotContain("The disk is full", tmux.Capture(), StringComparison.Ordinal);
            tmux.Signal("TERM");
            Assert.Equal(143, tmux.ExitCode());
            (int exit, string output, _) = BuiltProgram.Run(folder.Path, "audit", "--data", data);
            Assert.Equal(0, exit);
            Assert.Contains("no damage", output, StringComparison.Ordinal);
            Assert.All(before, b => Assert.Equal(b.Value, File.ReadAllBytes(b.Key)[..b.Value.Length]));
        }
        finally
        {
            Command("umount", "-l", disk);
        }
    }

    private static void Command(string program, params string[] arguments)
    {
        using System.Diagnostics.Process process = System.Diagnostics.Process.Start(program, arguments);
        process.WaitForExit();
        Assert.Equal(0, process.ExitCode);
    }
}
