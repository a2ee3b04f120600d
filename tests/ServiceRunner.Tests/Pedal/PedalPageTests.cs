using System.Diagnostics;
using ServiceRunner.Files.Data;
using ServiceRunner.Pedal;
using ServiceRunner.Tests.EndToEnd;
using ServiceRunner.Tests.Shared;

namespace ServiceRunner.Tests.Pedal;

/// <summary>What docs/pedal.md shows, done as it says.</summary>
public class PedalPageTests
{
    private static string Page => File.ReadAllText(Path.Combine(Repository.Root, "docs", "pedal.md"));

    [FactNeeding("sh")]
    public void The_script_on_the_page_drives_a_bench()
    {
        using TemporaryFolder home = new();
        DataFolder folder = ((FolderReady)DataFolder.Create(Path.Combine(home.Path, ".local", "share", "servicerunner"))).Folder;
        using PedalSocket? socket = PedalSocket.Open(folder, out string whyNot);
        Assert.True(socket is not null, whyNot);
        List<PedalWord> pressed = [];
        socket.Arrived = () =>
        {
            if (!socket.TryTake(out PedalPress? press)) return;
            pressed.Add(press.Word);
            press.Answer($"{pressed.Count}.");
        };
        string bin = Directory.CreateDirectory(Path.Combine(home.Path, "bin")).FullName;
        File.CreateSymbolicLink(Path.Combine(bin, "servicerunner"), Path.GetFullPath(BuiltProgram.Path));
        string script = home.File("switches.sh", Page.Split("```sh\n")[1].Split("```")[0]);
        ProcessStartInfo start = new("sh", [script]) { RedirectStandardInput = true, RedirectStandardOutput = true, RedirectStandardError = true };
        start.Environment["HOME"] = home.Path;
        start.Environment.Remove("XDG_DATA_HOME");
        start.Environment["PATH"] = bin + Path.PathSeparator + Environment.GetEnvironmentVariable("PATH");
        using Process process = Process.Start(start)!;
        process.StandardInput.Write("a\nx\nb\na\nc\n");
        process.StandardInput.Close();
        Task<string> errors = process.StandardError.ReadToEndAsync();
        Assert.Equal("1.\n2.\n3.\n4.\n", process.StandardOutput.ReadToEnd());
        Assert.Equal("", errors.Result);
        Assert.Equal([PedalWord.GoOn, PedalWord.Back, PedalWord.GoOn, PedalWord.SayAgain], pressed);
    }

    [Fact]
    public void The_page_names_every_word_and_every_limit()
    {
        string page = Page;
        foreach (string word in PedalWords.All.Replace(" and ", ", ", StringComparison.Ordinal).Split(", "))
        {
            Assert.NotNull(PedalWords.Read(word));
            Assert.Contains($"| `{word}` |", page, StringComparison.Ordinal);
        }
        Assert.Equal(Enum.GetValues<PedalWord>().Length, PedalWords.All.Replace(" and ", ", ", StringComparison.Ordinal).Split(", ").Length);
        PedalLimits limits = new();
        Assert.Contains($"| a line | {limits.LineBytes} bytes;", page, StringComparison.Ordinal);
        Assert.Contains($"| the bench's answer | {limits.Patience.TotalSeconds:0} s,", page, StringComparison.Ordinal);
        Assert.Contains($"| clients at the same time | {limits.Connections} |", page, StringComparison.Ordinal);
        Assert.Contains($"| presses that wait | {limits.Waiting} |", page, StringComparison.Ordinal);
        Assert.Contains($"at most {PedalPlaces.LongestPath} bytes", page, StringComparison.Ordinal);
    }
}
