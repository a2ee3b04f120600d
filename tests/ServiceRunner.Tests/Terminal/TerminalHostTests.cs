using ServiceRunner.Terminal;

namespace ServiceRunner.Tests.Terminal;

public sealed class TerminalHostTests
{
    [Fact]
    public void With_a_terminal_nothing_is_missing() => Assert.Null(TerminalHost.Missing(false, false, "xterm-256color"));

    [Fact]
    public void Without_a_terminal_one_sentence_says_which_side_is_missing()
    {
        Assert.Equal("servicerunner: there is no terminal to read keys from (standard input is redirected); --lines reads lines from it", TerminalHost.Missing(true, true, "xterm"));
        Assert.Equal("servicerunner: there is no terminal to show the screen on (standard output is redirected)", TerminalHost.Missing(false, true, "xterm"));
        Assert.Equal("servicerunner: this terminal cannot move its cursor (TERM=dumb)", TerminalHost.Missing(false, false, "dumb"));
    }

    [Fact]
    public void An_error_becomes_one_line_without_what_could_move_the_cursor()
    {
        Assert.Equal("servicerunner: the screen was closed by an unexpected error: a b [2Jc (IOException)", TerminalHost.Sentence(new IOException("a\nb\e[2Jc")));
    }
}
