using System.Diagnostics;
using System.Globalization;
using System.Text;
using ServiceRunner.Lines;
using ServiceRunner.Tests.Shared;
using ServiceRunner.Tests.Terminal;

namespace ServiceRunner.Tests.EndToEnd;

/// <summary>The built program told line by line: through a pipe with a kill in the middle, and on a terminal that cannot move its cursor.</summary>
public class LinesTests
{
    [Fact]
    public void A_kill_in_the_middle_loses_nothing_and_the_work_goes_on()
    {
        using TemporaryFolder home = new();
        using (PipedLines first = new(home.Path, "demo", "--lines"))
        {
            first.WaitFor("Enter: 1, Q26-110.");
            first.Say("", "Balance pivots? 1 sound");
            first.Say("1", "Roller jewel?");
            first.Say("finding", "Where is it?");
            first.Say("1", "Where is it?");
            first.Say("rim", "what is it?");
            first.Say("scratched", "how much does it weigh?");
            first.Say("1", "how sure is it?");
            first.Say("1", "The finding is noted.");
            first.Say("go on", "Balance rim?");
            first.Say("clocks", "Wash jar, Q26-108:");
            first.Process.Kill();
            first.Process.WaitForExit();
            first.AssertPrintable();
        }
        using PipedLines second = new(home.Path, "demo", "--lines");
        second.WaitFor("Enter: 1, Q26-110.");
        second.Say("", "Balance rim?");
        second.Say("clocks", "Wash jar, Q26-108:");
        Assert.DoesNotContain("restarted", second.Heard, StringComparison.Ordinal);
        using (PipedLines beside = new(home.Path, "--read", "--lines", "--data", Path.Combine(home.Path, ".local", "share", "servicerunner-demo")))
        {
            beside.Say("1", "Balance rim?");
            beside.Say("1", "read");
            Assert.Equal(0, beside.End());
        }
        second.Say("take back", "Taken back:");
        second.Say("1", "Noted: ");
        Assert.Equal(0, second.Quit());
        second.AssertPrintable();
        Assert.EndsWith("The bench is left. 1 clock goes on counting.\n", second.Heard, StringComparison.Ordinal);
        string report = BuiltProgram.Run(home.Path, "report", "Q26-110", "--data", Path.Combine(home.Path, ".local", "share", "servicerunner-demo")).Output;
        Assert.Contains("scratched", report, StringComparison.Ordinal);
    }

    [Fact]
    public void Two_empty_lines_at_once_go_on_once_and_a_signal_ends_it_in_order()
    {
        using TemporaryFolder home = new();
        using PipedLines lines = new(home.Path, "demo", "--lines");
        lines.WaitFor("Enter: 1, Q26-110.");
        lines.Say("\n", "held or knocked");
        Assert.DoesNotContain("Noted", lines.Heard, StringComparison.Ordinal);
        using (Process kill = Process.Start("kill", ["-TERM", $"{lines.Process.Id}"])) kill.WaitForExit();
        Assert.Equal(143, lines.End());
        Assert.EndsWith("The bench is left. 1 clock goes on counting.\n", lines.Heard, StringComparison.Ordinal);
    }

    [Fact]
    public void It_ends_when_nobody_reads_any_more()
    {
        using TemporaryFolder home = new();
        using PipedLines lines = new(home.Path, "demo", "--lines");
        lines.WaitFor("Enter: 1, Q26-110.");
        lines.StopReading();
        lines.Process.StandardInput.Write("where\nwhere\nwhere\n");
        lines.Process.StandardInput.Flush();
        Assert.True(lines.Process.WaitForExit(TimeSpan.FromSeconds(60)), "the program did not end");
        Assert.Equal(141, lines.Process.ExitCode);
    }

    [FactNeeding("tmux", "bash")]
    public void A_terminal_that_cannot_move_its_cursor_is_told_line_by_line()
    {
        using Tmux tmux = new(120, 40);
        tmux.Run($"TERM=dumb {BuiltProgram.Path} demo");
        string screen = tmux.WaitFor("Enter: 1, Q26-110.", TimeSpan.FromSeconds(60));
        Assert.Contains("This terminal cannot move its cursor (TERM=dumb), so the bench is told line by line.", screen, StringComparison.Ordinal);
        Assert.False(tmux.AlternateScreen);
        tmux.Keys("Enter");
        tmux.WaitFor("Balance pivots?");
        tmux.Text("quit");
        tmux.Keys("Enter");
        Assert.Equal(0, tmux.ExitCode());
        tmux.AssertWhole();
    }

    [Theory]
    [InlineData(true, true, "dumb", true, "")]
    [InlineData(false, true, "xterm", true, "Standard output is no terminal, so the bench is told line by line.")]
    [InlineData(false, false, "dumb", true, "This terminal cannot move its cursor (TERM=dumb), so the bench is told line by line.")]
    [InlineData(false, false, "xterm", false, "")]
    [InlineData(false, false, null, false, "")]
    public void It_is_chosen_by_itself_where_no_screen_can_be_shown(bool asked, bool redirected, string? term, bool on, string why) =>
        Assert.Equal(new LineMode(on, why), LineMode.Chosen(asked, redirected, term));

    /// <summary>The program with its input and output in pipes.</summary>
    private sealed class PipedLines : IDisposable
    {
        private static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);

        private readonly MemoryStream _heard = new();
        private readonly Task _reading;
        private int _from;

        public PipedLines(string home, params string[] arguments)
        {
            ProcessStartInfo start = new(BuiltProgram.Path, arguments) { RedirectStandardInput = true, RedirectStandardOutput = true, RedirectStandardError = true };
            start.Environment["HOME"] = home;
            start.Environment.Remove("XDG_DATA_HOME");
            start.Environment["TZ"] = "UTC";
            Process = Process.Start(start)!;
            _ = Process.StandardError.ReadToEndAsync();
            _reading = Task.Run(Read);
        }

        public Process Process { get; }

        public string Heard => Encoding.UTF8.GetString(Bytes);

        private byte[] Bytes
        {
            get
            {
                lock (_heard) return _heard.ToArray();
            }
        }

        private void Read()
        {
            byte[] bytes = new byte[4096];
            int count;
            Stream output = Process.StandardOutput.BaseStream;
            while ((count = output.Read(bytes)) > 0)
                lock (_heard) _heard.Write(bytes, 0, count);
        }

        /// <summary>Says a line and waits until its answer has been heard to the end of a line.</summary>
        public void Say(string entry, string answer)
        {
            Thread.Sleep(800); // the pedal's dead time
            _from = Heard.Length;
            Process.StandardInput.Write(entry + "\n");
            Process.StandardInput.Flush();
            WaitFor(answer);
        }

        public void WaitFor(string text)
        {
            Stopwatch patience = Stopwatch.StartNew();
            while (Heard is var heard && (heard.IndexOf(text, Math.Min(_from, heard.Length), StringComparison.Ordinal) < 0 || !heard.EndsWith('\n')))
            {
                Assert.True(patience.Elapsed < Patience, $"'{text}' was never said:\n{heard}");
                Thread.Sleep(50);
            }
        }

        public void StopReading() => Process.StandardOutput.Close();

        public int Quit()
        {
            Process.StandardInput.Write("quit\n");
            Process.StandardInput.Flush();
            return Exit();
        }

        public int End()
        {
            Process.StandardInput.Close();
            return Exit();
        }

        private int Exit()
        {
            Assert.True(Process.WaitForExit(Patience), "the program did not end");
            Assert.True(_reading.Wait(Patience), "the output did not end");
            return Process.ExitCode;
        }

        public void AssertPrintable()
        {
            Assert.True(_reading.Wait(Patience), "the output did not end");
            string text = new UTF8Encoding(false, throwOnInvalidBytes: true).GetString(Bytes);
            Assert.All(text.EnumerateRunes(), r => Assert.True(r.Value == '\n' || Rune.GetUnicodeCategory(r) is not (UnicodeCategory.Control or UnicodeCategory.Format), $"U+{r.Value:X4}"));
        }

        public void Dispose()
        {
            if (!Process.HasExited) Process.Kill();
            Process.Dispose();
            _heard.Dispose();
        }
    }
}
