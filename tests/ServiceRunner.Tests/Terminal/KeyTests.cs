using Terminal.Gui.App;
using Terminal.Gui.Input;

namespace ServiceRunner.Tests.Terminal;

public sealed class KeyTests
{
    [Theory]
    [InlineData("\r", "Enter")]
    [InlineData("\t", "Tab")]
    [InlineData("\e[Z", "Shift+Tab")]
    [InlineData(" ", "Space")]
    [InlineData("\u007f", "Backspace")]
    [InlineData("\e[3~", "Delete")]
    [InlineData("\e[2~", "Insert")]
    [InlineData("\e[5~", "PageUp")]
    [InlineData("\e[6~", "PageDown")]
    [InlineData("\e[A", "Up")]
    [InlineData("\eOB", "Down")]
    [InlineData("\e[D", "Left")]
    [InlineData("\e[C", "Right")]
    [InlineData("\e[H", "Home")]
    [InlineData("\e[7~", "Home")]
    [InlineData("\e[F", "End")]
    [InlineData("\e[8~", "End")]
    [InlineData("\eOP", "F1")]
    [InlineData("\e[24~", "F12")]
    [InlineData("\e[25~", "F13")]
    [InlineData("\e[34~", "F20")]
    [InlineData("\e[57387u", "F24")]
    [InlineData("\e[6;5~", "Ctrl+PageDown")]
    [InlineData("\e[1;2A", "Shift+Up")]
    [InlineData("\e[25;2~", "Shift+F13")]
    [InlineData("\u0001", "Ctrl+A")]
    [InlineData("\u0003", "Ctrl+C")]
    [InlineData("\u001a", "Ctrl+Z")]
    [InlineData("a", "a")]
    [InlineData("A", "A")]
    [InlineData("é", "é")]
    [InlineData("É", "É")]
    [InlineData("?", "?")]
    [InlineData("+", "+")]
    [InlineData("7", "7")]
    [InlineData("漢", "漢")]
    [InlineData("😀", "😀")]
    public void What_a_terminal_sends_gets_its_name(string sent, string name)
    {
        PaperShell shell = new();
        using SheetScreen screen = new(shell);
        screen.Raw(sent);
        Assert.Equal([name], shell.Keys);
    }

    [Theory]
    [InlineData("\e", "Esc")]
    [InlineData("\ex", "Alt+x")]
    [InlineData("\eX", "Alt+X")]
    public void What_could_go_on_is_named_when_nothing_follows(string sent, string name)
    {
        PaperShell shell = new();
        using SheetScreen screen = new(shell);
        screen.Raw(sent).Advance(TimeSpan.FromMilliseconds(100));
        Assert.Equal([name], shell.Keys);
    }

    [Theory]
    [InlineData("\e[99~")]
    [InlineData("\e[35~")]
    [InlineData("\e[27;5;9~")]
    [InlineData("\e[9999999999999~")]
    [InlineData("\e[1;1R")]
    [InlineData("\e[<0;5;5M")]
    [InlineData("\e[I")]
    public void What_has_no_name_is_swallowed_and_ends_nothing(string sent)
    {
        PaperShell shell = new();
        using SheetScreen screen = new(shell);
        screen.Raw(sent).Advance(TimeSpan.FromMilliseconds(100)).Raw("a");
        Assert.Null(screen.Failure);
        Assert.Equal("a", shell.Keys[^1]);
        Assert.DoesNotContain("q", shell.Keys);
    }

    [Fact]
    public void Keys_that_wait_all_come_and_in_their_order()
    {
        PaperShell shell = new();
        using SheetScreen screen = new(shell);
        screen.Raw("ab\e[A\e[A\e[A\e[25~1\r");
        Assert.Equal(["a", "b", "Up", "Up", "Up", "F13", "1", "Enter"], shell.Keys);
    }

    [Fact]
    public void Keys_that_mean_something_to_the_library_only_reach_the_shell()
    {
        PaperShell shell = new();
        using SheetScreen screen = new(shell);
        screen.Press("Esc", "F5", "F6", "Tab", "Ctrl+Z", "Space", "F10");
        Assert.Equal(["Esc", "F5", "F6", "Tab", "Ctrl+Z", "Space", "F10"], shell.Keys);
        Assert.False(screen.Closed);
    }

    [Fact]
    public void Bytes_at_random_end_nothing()
    {
        Random random = new(20300101);
        PaperShell shell = new();
        using SheetScreen screen = new(shell);
        for (int i = 0; i < 300; i++)
        {
            string sent = string.Concat(Enumerable.Range(0, random.Next(1, 12)).Select(_ => random.Next(3) == 0 ? '\e' : (char)random.Next(1, 127)));
            screen.Raw(sent.Replace('x', 'y').Replace('q', 'y'));
        }
        screen.Advance(TimeSpan.FromSeconds(6));
        Assert.Null(screen.Failure);
        Assert.False(screen.Closed);
    }

    [Fact]
    public void A_strangers_configuration_is_read_by_the_library_and_taken_back()
    {
        Assert.Equal([Key.Space], TestInit.QuitKeysOfTheStranger);
        Assert.Equal([Key.Esc], TestInit.QuitKeys());
        Assert.Equal("+", Key.Separator.ToString());
        Assert.Equal(AppModel.FullScreen, Application.AppModel);
    }
}
