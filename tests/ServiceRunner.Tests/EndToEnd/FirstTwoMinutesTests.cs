using System.Diagnostics;
using ServiceRunner.Tests.Shared;
using ServiceRunner.Tests.Terminal;

namespace ServiceRunner.Tests.EndToEnd;

/// <summary>What a stranger does first: look around, go on, be interrupted by a crash, find everything again.</summary>
public class FirstTwoMinutesTests
{
    [FactNeeding("tmux", "bash")]
    public void Ten_steps_and_a_soak_survive_a_kill()
    {
        using Tmux tmux = new();
        tmux.Run($"{BuiltProgram.Path} demo");
        tmux.WaitFor("Q26-110", TimeSpan.FromSeconds(60));
        tmux.Keys("Enter");
        string screen = tmux.WaitFor("Inspect the balance, its pivots and roller");
        Stopwatch patience = Stopwatch.StartNew();
        while (!(screen = tmux.Capture()).Contains("The clock runs", StringComparison.Ordinal))
        {
            Assert.True(patience.Elapsed < TimeSpan.FromMinutes(2), screen);
            if (screen.Contains("Enter takes it", StringComparison.Ordinal))
            {
                tmux.Text("as drawn on the card");
                tmux.Keys("Enter");
            }
            else
            {
                tmux.Keys("PageDown");
            }
            Thread.Sleep(850);
        }
        int done = Done(screen);
        Assert.True(done >= 41, screen);
        string before = Clock(screen);
        Thread.Sleep(1500);
        Assert.NotEqual(before, Clock(tmux.Capture()));

        tmux.Signal("KILL");
        Assert.Equal(137, tmux.ExitCode());
        tmux.Text("reset\n");
        tmux.Run($"{BuiltProgram.Path} demo");
        tmux.WaitFor("Q26-110");
        tmux.Keys("Enter");
        screen = tmux.WaitFor("steps done");
        Assert.Equal(done, Done(screen));
        Assert.Contains("Degreasing jar, Q26-110", screen, StringComparison.Ordinal);
        Assert.DoesNotContain("restarted", screen, StringComparison.Ordinal);
    }

    private static int Done(string screen) =>
        int.Parse(System.Text.RegularExpressions.Regex.Match(screen, @"(\d+) of \d+ steps done").Groups[1].Value, System.Globalization.CultureInfo.InvariantCulture);

    private static string Clock(string screen) => screen.Split('\n').First(l => l.Contains("Degreasing jar, Q26-110", StringComparison.Ordinal));

    [FactNeeding("tmux", "bash")]
    public void The_first_start_asks_for_initials_makes_the_folder_and_says_where()
    {
        using Tmux tmux = new();
        string data = Path.Combine(tmux.Home, "watches");
        tmux.Run($"{BuiltProgram.Path} --data {data}");
        tmux.WaitFor("Your initials");
        tmux.Text("?!");
        tmux.Keys("Enter");
        tmux.WaitFor("Initials are one to six letters or digits.");
        tmux.Text("mk");
        tmux.Keys("Enter");
        tmux.WaitFor("Your name");
        tmux.Keys("Enter");
        tmux.WaitFor("A name has at least one letter.");
        tmux.Text("Mara O'Keel");
        tmux.Keys("Enter");
        tmux.WaitFor("What the workshop is called");
        tmux.Keys("Enter");
        tmux.WaitFor($"{data}/workshop.yaml");
        tmux.Keys("Enter");
        tmux.WaitFor("My workshop: bench");
        tmux.WaitFor("Mara O'Keel");
        tmux.Keys("q");
        Assert.Equal(0, tmux.ExitCode());
        tmux.AssertWhole();
        (int exit, string output, _) = BuiltProgram.Run(tmux.Home, "check", $"{data}/workshop.yaml");
        Assert.Equal(0, exit);
        Assert.Contains("nothing to say", output, StringComparison.Ordinal);
    }
}
