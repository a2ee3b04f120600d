namespace ServiceRunner.Tests.Terminal;

/// <summary>The key that opens an entry is still down: it must not write, and nothing that is written may be lost.</summary>
public sealed class HeldKeyTests
{
    private static (SheetScreen Screen, PaperShell Shell) Open(string key)
    {
        PaperShell shell = new();
        return (new SheetScreen(shell).Press(key), shell);
    }

    private static TimeSpan Ms(int milliseconds) => TimeSpan.FromMilliseconds(milliseconds);

    private static void Hold(SheetScreen screen, string key, int first, int every, int times)
    {
        screen.Advance(Ms(first)).Press(key);
        for (int i = 1; i < times; i++) screen.Advance(Ms(every)).Press(key);
    }

    [Theory]
    [InlineData(250, 30)]
    [InlineData(500, 33)]
    [InlineData(660, 100)]
    public void A_held_letter_does_not_write(int first, int every)
    {
        (SheetScreen screen, PaperShell shell) = Open("e");
        using SheetScreen _ = screen;
        Hold(screen, "e", first, every, 20);
        screen.Advance(Ms(400)).Type("text").Press("Enter");
        Assert.Equal(["text"], shell.Accepted);
    }

    [Theory]
    [InlineData(250, 30)]
    [InlineData(500, 33)]
    [InlineData(660, 100)]
    public void A_held_pedal_does_not_accept(int first, int every)
    {
        (SheetScreen screen, PaperShell shell) = Open("PageDown");
        using SheetScreen _ = screen;
        Hold(screen, "PageDown", first, every, 20);
        Assert.Empty(shell.Accepted);
        screen.Advance(Ms(400)).Press("PageDown");
        Assert.Equal([""], shell.Accepted);
    }

    [Fact]
    public void A_held_Enter_does_not_accept_the_entry_that_follows()
    {
        (SheetScreen screen, PaperShell shell) = Open("e");
        using SheetScreen _ = screen;
        shell.EntryAgain = true;
        screen.Advance(Ms(1000)).Type("a").Press("Enter");
        Hold(screen, "Enter", 500, 33, 10);
        Assert.Equal(["a"], shell.Accepted);
    }

    [Fact]
    public void Another_key_writes_at_once()
    {
        (SheetScreen screen, PaperShell shell) = Open("e");
        using SheetScreen _ = screen;
        screen.Type("nerve").Press("Enter");
        Assert.Equal(["nerve"], shell.Accepted);
    }

    [Fact]
    public void The_same_letter_typed_soon_after_is_not_lost()
    {
        (SheetScreen screen, PaperShell shell) = Open("e");
        using SheetScreen _ = screen;
        screen.Advance(Ms(400)).Type("e").Advance(Ms(200));
        Assert.Equal(" Note   e", screen.Rows[3]);
        screen.Type("nd").Press("Enter");
        Assert.Equal(["end"], shell.Accepted);
    }

    [Fact]
    public void The_same_letter_followed_at_once_by_another_keeps_its_place()
    {
        (SheetScreen screen, PaperShell shell) = Open("e");
        using SheetScreen _ = screen;
        screen.Advance(Ms(400)).Type("e").Advance(Ms(60)).Type("n").Press("Enter");
        Assert.Equal(["en"], shell.Accepted);
    }

    [Fact]
    public void The_same_letter_after_a_second_is_typed()
    {
        (SheetScreen screen, PaperShell shell) = Open("e");
        using SheetScreen _ = screen;
        screen.Advance(Ms(1000)).Type("ee").Press("Enter");
        Assert.Equal(["ee"], shell.Accepted);
    }

    [Fact]
    public void A_terminal_that_tells_repeats_and_releases_is_believed()
    {
        (SheetScreen screen, PaperShell shell) = Open("e");
        using SheetScreen _ = screen;
        screen.Advance(Ms(900)).Raw("\e[101;1:2u").Raw("\e[101;1:2u"); // repeats
        Assert.Equal(" Note", screen.Rows[3]);
        screen.Raw("\e[101;1:3u").Raw("\e[101;1:1u"); // up, and down again at once
        Assert.Equal(" Note   e", screen.Rows[3]);
        screen.Press("Enter");
        Assert.Equal(["e"], shell.Accepted);
    }
}
