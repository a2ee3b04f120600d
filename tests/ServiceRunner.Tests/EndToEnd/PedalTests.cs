using ServiceRunner.Tests.Shared;
using ServiceRunner.Tests.Terminal;

namespace ServiceRunner.Tests.EndToEnd;

/// <summary>Another program presses the pedal of the open bench; keys of a real pedal go on once however long they are held.</summary>
public class PedalTests
{
    [FactNeeding("tmux", "bash")]
    public void Another_program_goes_on_marks_and_looks_back()
    {
        using Tmux tmux = new();
        tmux.Run($"{BuiltProgram.Path} demo");
        tmux.WaitFor("Q26-110", TimeSpan.FromSeconds(60));
        tmux.Keys("Enter");
        tmux.WaitFor("Balance pivots?");
        string data = Directory.GetDirectories(Path.Combine(tmux.Home, ".local", "share")).Single();
        Thread.Sleep(1000);
        (int exit, string said, string errors) = BuiltProgram.Run(tmux.Home, "pedal", "go-on", "--data", data);
        Assert.Equal((0, ""), (exit, errors));
        Assert.Equal("Noted. 2 questions left in this step.\n", said);
        tmux.WaitFor("Roller jewel?");
        Assert.Equal("The moment is marked.\n", BuiltProgram.Run(tmux.Home, "pedal", "mark", "--data", data).Output);
        Assert.Equal("No alarm wants an answer.\n", BuiltProgram.Run(tmux.Home, "pedal", "answer", "--data", data).Output);
        Assert.Equal(0, BuiltProgram.Run(tmux.Home, "pedal", "back", "--data", data).Exit);
        tmux.WaitFor("Looking back");
        Assert.Equal(2, BuiltProgram.Run(tmux.Home, "pedal", "stop", "--data", data).Exit);
        tmux.Signal("TERM");
        Assert.Equal(143, tmux.ExitCode());
        Assert.Equal(7, BuiltProgram.Run(tmux.Home, "pedal", "go-on", "--data", data).Exit);
    }

    [FactNeeding("tmux", "bash")]
    public void F13_answers_and_a_held_pedal_goes_on_once()
    {
        using Tmux tmux = new();
        tmux.Run($"{BuiltProgram.Path} demo");
        tmux.WaitFor("Q26-110", TimeSpan.FromSeconds(60));
        tmux.Keys("Enter");
        tmux.WaitFor("Balance pivots?");
        Thread.Sleep(1000);
        for (int i = 0; i < 25; i++) tmux.Keys("PageDown");
        Thread.Sleep(300);
        Assert.Contains("› Roller jewel?", tmux.Capture(), StringComparison.Ordinal);
        tmux.Text("\e[25~");
        Thread.Sleep(300);
        Assert.DoesNotContain("does nothing here", tmux.Capture(), StringComparison.Ordinal);
        tmux.Text("\e[24;2~");
        Thread.Sleep(300);
        Assert.Contains("› Roller jewel?", tmux.Capture(), StringComparison.Ordinal);
    }
}
