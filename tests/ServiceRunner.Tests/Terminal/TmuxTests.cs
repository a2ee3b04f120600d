using ServiceRunner.Tests.Shared;
using Xunit.Sdk;

namespace ServiceRunner.Tests.Terminal;

/// <summary>That the tool for trying a real terminal sees what it is there to see.</summary>
public sealed class TmuxTests
{
    [FactNeeding("tmux", "bash")]
    public void A_command_ends_with_its_code_and_the_terminal_is_whole()
    {
        using Tmux tmux = new(60, 10, ("GREETING", "guten Tag"));
        tmux.Run("echo $GREETING; stty size; (exit 7)");
        Assert.Equal(7, tmux.ExitCode());
        Assert.StartsWith("guten Tag\n10 60\n", tmux.Capture(), StringComparison.Ordinal);
        tmux.Resize(30, 5);
        tmux.Run("stty size");
        tmux.WaitFor("5 30");
        tmux.AssertWhole();
    }

    [FactNeeding("tmux", "bash")]
    public void A_terminal_that_was_left_raw_or_on_the_wrong_screen_is_noticed()
    {
        using Tmux raw = new();
        raw.Run("stty -icanon");
        Assert.Equal(0, raw.ExitCode());
        Assert.ThrowsAny<XunitException>(raw.AssertWhole);
        using Tmux alternate = new();
        alternate.Run("printf '\\033[?1049h'");
        Assert.Equal(0, alternate.ExitCode());
        Assert.ThrowsAny<XunitException>(alternate.AssertWhole);
    }

    [FactNeeding("tmux", "bash")]
    public void What_is_sent_arrives()
    {
        using Tmux tmux = new();
        tmux.Run("echo go''on; read -r line; echo \"[$line]\""); // the quotes tell what it says from what was typed
        tmux.WaitFor("goon");
        tmux.Text("né ½");
        tmux.Keys("Enter");
        tmux.WaitFor("[né ½]");
        tmux.Run("echo go''on; cat -v");
        tmux.WaitFor("goon");
        tmux.Text("\e[25~");
        tmux.Paste("été");
        tmux.Keys("Enter");
        tmux.WaitFor("^[[25~");
        tmux.Signal("TERM");
        Assert.Equal(143, tmux.ExitCode());
    }
}
