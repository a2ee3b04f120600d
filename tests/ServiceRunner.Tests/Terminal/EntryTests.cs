using ServiceRunner.Screens;

namespace ServiceRunner.Tests.Terminal;

public sealed class EntryTests
{
    private static readonly TimeSpan AMoment = TimeSpan.FromSeconds(1);

    private static (SheetScreen Screen, PaperShell Shell) Opened(string start = "")
    {
        PaperShell shell = new() { Start = start };
        SheetScreen screen = new(shell);
        return (screen.Press("e").Advance(AMoment), shell);
    }

    [Fact]
    public void What_is_typed_stands_in_the_line_and_is_accepted()
    {
        (SheetScreen screen, PaperShell shell) = Opened();
        using SheetScreen _ = screen;
        screen.Type("Größe 3,5 – é");
        Assert.Equal(" Note   öße 3,5 – é", screen.Rows[3]);
        screen.Press("Enter");
        Assert.Equal(["Größe 3,5 – é"], shell.Accepted);
        Assert.Equal(["e"], shell.Keys);
        Assert.Equal("", screen.Rows[3]);
    }

    [Fact]
    public void The_cursor_is_seen_only_while_an_entry_is_open()
    {
        PaperShell shell = new();
        using SheetScreen screen = new(shell);
        Assert.Null(screen.CursorAt);
        screen.Press("e");
        Assert.Equal(new System.Drawing.Point(8, 3), screen.CursorAt);
        screen.Type("ab");
        Assert.Equal(new System.Drawing.Point(10, 3), screen.CursorAt);
        screen.Press("Enter");
        Assert.Null(screen.CursorAt);
    }

    [Fact]
    public void Opening_and_closing_an_entry_does_not_send_the_whole_screen()
    {
        PaperShell shell = new();
        using SheetScreen screen = new(shell, 120, 40);
        screen.Press("e");
        Assert.InRange(screen.Sent.Length, 1, 250);
        screen.Advance(AMoment).Type("a").Press("Enter");
        Assert.InRange(screen.Sent.Length, 1, 250);
        Assert.Equal("paper 120×40\n\n keys 1", screen.Text);
    }

    [Fact]
    public void Esc_leaves_and_what_was_typed_comes_along()
    {
        (SheetScreen screen, PaperShell shell) = Opened();
        using SheetScreen _ = screen;
        screen.Type("half").Press("Esc");
        Assert.Equal(["half"], shell.Left);
        Assert.Empty(shell.Accepted);
    }

    [Fact]
    public void Escape_sent_as_a_byte_leaves_too()
    {
        (SheetScreen screen, PaperShell shell) = Opened();
        using SheetScreen _ = screen;
        screen.Type("half").Raw("\e").Advance(AMoment);
        Assert.Equal(["half"], shell.Left);
    }

    [Theory]
    [InlineData("Enter", "PageDown")]
    [InlineData("Esc", "PageUp")]
    public void A_pedal_says_yes_and_back(string key, string pedal)
    {
        foreach (string pressed in new[] { key, pedal })
        {
            (SheetScreen screen, PaperShell shell) = Opened();
            using SheetScreen _ = screen;
            screen.Type("n").Press(pressed);
            Assert.Equal(["n"], key == "Enter" ? shell.Accepted : shell.Left);
        }
    }

    [Fact]
    public void What_stood_there_stays_and_is_written_on()
    {
        (SheetScreen screen, PaperShell shell) = Opened("0.03");
        using SheetScreen _ = screen;
        screen.Type("5").Press("Home").Type("1").Press("End", "Backspace", "Left", "Delete").Press("Enter");
        Assert.Equal(["10.0"], shell.Accepted);
    }

    [Fact]
    public void A_paste_keeps_its_accents_and_becomes_one_line()
    {
        (SheetScreen screen, PaperShell shell) = Opened();
        using SheetScreen _ = screen;
        screen.Paste("né à\r\nBesançon\t½\u202e\n").Press("Enter");
        Assert.Equal(["né à Besançon ½"], shell.Accepted);
    }

    [Fact]
    public void A_paste_outside_an_entry_presses_no_keys()
    {
        PaperShell shell = new();
        using SheetScreen screen = new(shell);
        screen.Paste("quit e x").Press("a", "e").Advance(AMoment).Press("Enter");
        screen.Paste("quit e x").Press("b");
        Assert.Equal(["a", "e", "b"], shell.Keys);
        Assert.Equal([""], shell.Accepted);
        Assert.Null(screen.Failure);
    }

    [Fact]
    public void A_huge_paste_is_cut_and_does_not_hang()
    {
        (SheetScreen screen, PaperShell shell) = Opened();
        using SheetScreen _ = screen;
        screen.Paste(new string('ü', 200_000)).Press("Enter");
        Assert.Equal(4000, shell.Accepted.Single().Length);
    }

    [Fact]
    public void The_same_entry_keeps_what_was_typed_when_the_screen_changes()
    {
        (SheetScreen screen, PaperShell shell) = Opened();
        using SheetScreen _ = screen;
        screen.Type("ab");
        shell.Line = "a clock ran out";
        screen.Advance(AMoment).Resize(30, 8).Type("c").Press("Enter");
        Assert.Equal(["abc"], shell.Accepted);
    }

    [Fact]
    public void The_next_entry_starts_empty()
    {
        (SheetScreen screen, PaperShell shell) = Opened();
        using SheetScreen _ = screen;
        shell.EntryAgain = true;
        screen.Type("first").Press("Enter").Advance(AMoment);
        Assert.Equal(" Note", screen.Rows[3]);
        screen.Type("second").Press("Enter");
        Assert.Equal(["first", "second"], shell.Accepted);
    }

    [Fact]
    public void Ctrl_C_gets_through_to_the_shell()
    {
        (SheetScreen screen, PaperShell shell) = Opened();
        using SheetScreen _ = screen;
        screen.Type("a").Press("Ctrl+C", "F1", "Ctrl+V", "Tab");
        Assert.Equal(["e", "Ctrl+C"], shell.Keys);
        screen.Press("Enter");
        Assert.Equal(["a"], shell.Accepted);
    }

    [Fact]
    public void Backspace_sent_the_old_way_deletes()
    {
        (SheetScreen screen, PaperShell shell) = Opened();
        using SheetScreen _ = screen;
        screen.Type("abc").Raw("\b").Raw("\u007f").Press("Enter");
        Assert.Equal(["a"], shell.Accepted);
    }

    [Fact]
    public void A_line_of_one_column_takes_text()
    {
        PaperShell shell = new();
        using SheetScreen screen = new(shell, 1, 1);
        screen.Press("e").Advance(AMoment).Type("漢b").Press("Enter");
        Assert.Equal(["漢b"], shell.Accepted);
    }
}
