using System.Diagnostics;
using System.Globalization;
using ServiceRunner.Tests.Shared;

namespace ServiceRunner.Tests.Terminal;

/// <summary>
/// The built program (the variable SERVICERUNNER names it) in a real terminal: whatever ends or stops it, the terminal is
/// as it was. The invented workshop will do: it opens on a screen, without questions.
/// </summary>
public sealed class LeavingTests
{
    private static string Command => Environment.GetEnvironmentVariable("SERVICERUNNER") + " demo";

    private static Tmux Started(int width = 80, int height = 24, params (string, string?)[] environment)
    {
        Tmux tmux = new(width, height, environment);
        tmux.Run(Command);
        tmux.WaitForScreen();
        return tmux;
    }

    private static void Ends(string signal, int code)
    {
        using Tmux tmux = Started();
        tmux.Signal(signal);
        Assert.Equal(code, tmux.ExitCode());
        tmux.AssertWhole();
    }

    [FactNeeding("tmux", "bash", "SERVICERUNNER")]
    public void Told_to_end() => Ends("TERM", 143);

    [FactNeeding("tmux", "bash", "SERVICERUNNER")]
    public void Told_that_the_line_was_cut() => Ends("HUP", 129);

    [FactNeeding("tmux", "bash", "SERVICERUNNER")]
    public void Interrupted() => Ends("INT", 130);

    [FactNeeding("tmux", "bash", "SERVICERUNNER")]
    public void Told_to_quit() => Ends("QUIT", 131);

    [FactNeeding("tmux", "bash", "SERVICERUNNER")]
    public void Stopped_and_continued()
    {
        using Tmux tmux = Started();
        for (int i = 0; i < 2; i++)
        {
            tmux.Keys("C-z");
            tmux.WaitForShell();
            tmux.WaitFor("Stopped");
            tmux.AssertWhole();
            tmux.Run("fg");
            tmux.WaitForScreen();
            Assert.False(tmux.MouseReported);
        }
        tmux.Signal("TERM");
        Assert.Equal(143, tmux.ExitCode());
        tmux.AssertWhole();
    }

    [FactNeeding("tmux", "bash", "SERVICERUNNER")]
    public void Resized_while_it_runs()
    {
        using Tmux tmux = Started();
        foreach ((int width, int height) in new[] { (20, 5), (200, 60), (2, 1), (80, 24) })
        {
            tmux.Resize(width, height);
            Thread.Sleep(300);
            tmux.WaitForScreen();
        }
        tmux.Signal("TERM");
        Assert.Equal(143, tmux.ExitCode());
        tmux.AssertWhole();
    }

    [FactNeeding("tmux", "bash", "SERVICERUNNER")]
    public void Keys_of_a_pedal_and_of_nobody_do_not_end_it()
    {
        using Tmux tmux = Started();
        tmux.Text("\e[25~\e[34~\e[99~\e[200~paste\e[201~");
        Thread.Sleep(500);
        Assert.True(tmux.AlternateScreen);
        tmux.Signal("TERM");
        Assert.Equal(143, tmux.ExitCode());
    }

    [FactNeeding("tmux", "bash", "SERVICERUNNER")]
    public void A_strangers_configuration_that_cannot_be_read_does_not_matter()
    {
        using Tmux tmux = new();
        Directory.CreateDirectory(Path.Combine(tmux.Home, ".tui"));
        File.WriteAllText(Path.Combine(tmux.Home, ".tui", "config.json"), """{ "Application.QuitKey": "Space", broken""");
        tmux.Run(Command);
        tmux.WaitForScreen();
        tmux.Signal("TERM");
        Assert.Equal(143, tmux.ExitCode());
    }

    [FactNeeding("tmux", "bash", "SERVICERUNNER")]
    public void The_terminal_goes_away_though_the_program_was_told_not_to_mind()
    {
        using Tmux tmux = new();
        tmux.Run($"trap '' HUP; {Command}");
        tmux.WaitForScreen();
        string process = $"/proc/{tmux.Foreground.ToString(CultureInfo.InvariantCulture)}";
        Assert.True(Directory.Exists(process));
        tmux.Kill();
        Stopwatch waited = Stopwatch.StartNew();
        while (Directory.Exists(process) && waited.Elapsed < TimeSpan.FromSeconds(10)) Thread.Sleep(50);
        Assert.False(Directory.Exists(process), "it goes on without a terminal");
    }

    [FactNeeding("tmux", "bash", "SERVICERUNNER")]
    public void An_idle_screen_costs_little()
    {
        using Tmux tmux = Started();
        string stat = $"/proc/{tmux.Foreground}/stat";
        // A busy machine is still compiling the program when its first screen stands; that is not idling.
        long least = long.MaxValue;
        for (int i = 0; i < 5 && least > 60; i++)
        {
            long before = Ticks(stat);
            Thread.Sleep(3000);
            least = Math.Min(least, Ticks(stat) - before);
        }
        Assert.InRange(least, 0, 60); // of 300 in three seconds
        tmux.Signal("TERM");
    }

    private static long Ticks(string stat)
    {
        string[] fields = File.ReadAllText(stat).Split(") ")[^1].Split(' ');
        return long.Parse(fields[11], CultureInfo.InvariantCulture) + long.Parse(fields[12], CultureInfo.InvariantCulture);
    }
}
