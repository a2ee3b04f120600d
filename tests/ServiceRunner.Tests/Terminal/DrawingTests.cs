using ServiceRunner.Screens;

namespace ServiceRunner.Tests.Terminal;

public sealed class DrawingTests
{
    private static readonly TimeSpan OneTick = TimeSpan.FromMilliseconds(200);

    [Fact]
    public void The_sheet_is_shown_with_its_inks()
    {
        using SheetScreen screen = new(new PaperShell { Line = "Lift the balance, 漢字, ½ °C" }, 40, 6);
        Assert.Equal("paper 40×6\n Lift the balance, 漢字, ½ °C\n keys 0", screen.Text);
        Assert.Equal("Strong: 2:1-6\nBar: 0:0-39", screen.Legend);
        Assert.Equal(screen.Palette[Ink.Bar], screen.At(39, 0));
        Assert.Equal(screen.Palette[Ink.Strong], screen.At(1, 2));
        Assert.Equal(screen.Palette[Ink.Plain], screen.At(39, 5));
    }

    [Fact]
    public void A_key_is_on_the_screen_at_once()
    {
        using SheetScreen screen = new(new PaperShell());
        screen.Press("a");
        Assert.Equal(" keys 1", screen.Rows[2]);
    }

    [Fact]
    public void One_changed_cell_costs_a_few_bytes()
    {
        using SheetScreen screen = new(new PaperShell(), 120, 40);
        screen.Press("a");
        Assert.Contains("1", screen.Sent, StringComparison.Ordinal);
        Assert.InRange(screen.Sent.Length, 1, 60);
    }

    [Theory]
    [InlineData("a")]
    [InlineData("e")] // with an entry open, and its cursor
    public void Nothing_is_sent_while_nothing_changes(string key)
    {
        PaperShell shell = new();
        using SheetScreen screen = new(shell);
        screen.Press(key).Advance(OneTick);
        int ticks = shell.Ticks;
        for (int i = 0; i < 10; i++)
        {
            screen.Advance(OneTick);
            Assert.Equal("", screen.Sent);
        }
        Assert.Equal(ticks + 10, shell.Ticks);
    }

    [Fact]
    public void What_changes_by_itself_is_shown_at_the_next_tick()
    {
        PaperShell shell = new();
        using SheetScreen screen = new(shell);
        shell.Line = "the soak is over";
        screen.Advance(OneTick);
        Assert.Equal(" the soak is over", screen.Rows[1]);
    }

    [Theory]
    [InlineData(20, 5)]
    [InlineData(200, 60)]
    [InlineData(3, 1)]
    [InlineData(1, 1)]
    public void Every_size_is_filled(int width, int height)
    {
        using SheetScreen screen = new(new PaperShell { Line = "漢字" });
        screen.Resize(width, height);
        Assert.Equal(height, screen.Rows.Length);
        Assert.All(screen.Rows, row => Assert.True(Sheet.Columns(row) <= width));
        string title = $"paper {width}×{height}";
        Assert.Equal(title[..Math.Min(width, title.Length)].TrimEnd(), screen.Rows[0]);
        Assert.Equal(screen.Palette[Ink.Bar], screen.At(width - 1, 0));
        screen.Press("e").Type("ab").Resize(80, 24);
        Assert.Equal(" Note   ab", screen.Rows[3]);
    }

    [Fact]
    public void Wide_characters_that_move_by_a_column_leave_no_halves()
    {
        PaperShell shell = new() { Line = "漢字 a漢b" };
        using SheetScreen screen = new(shell);
        foreach (string line in new[] { "a漢字 漢b", "漢字漢字", "ab漢cd", "漢", "x漢y漢z" })
        {
            shell.Line = line;
            screen.Advance(OneTick);
            Assert.Equal(" " + line, screen.Rows[1]);
        }
    }

    [Fact]
    public void After_a_resumption_all_is_drawn_again()
    {
        PaperShell shell = new();
        using SheetScreen screen = new(shell, 40, 6);
        screen.Resume();
        Assert.Equal(1, shell.Resumptions);
        Assert.Contains("paper 40×6", screen.Sent, StringComparison.Ordinal);
        Assert.Equal("paper 40×6\n\n keys 0", screen.Text);
    }

    [Fact]
    public void The_bell_rings_once()
    {
        using SheetScreen screen = new(new PaperShell());
        screen.Press("b");
        Assert.Equal(1, screen.Sent.Count(c => c == '\a'));
        screen.Press("a");
        Assert.DoesNotContain('\a', screen.Sent);
    }

    [Fact]
    public void Done_closes_the_screen()
    {
        using SheetScreen screen = new(new PaperShell());
        Assert.False(screen.Closed);
        screen.Press("q");
        Assert.True(screen.Closed);
        Assert.Null(screen.Failure);
    }

    [Fact]
    public void An_error_in_a_key_closes_the_screen_and_is_kept()
    {
        PaperShell shell = new();
        using SheetScreen screen = new(shell);
        screen.Press("x", "a");
        Assert.True(screen.Closed);
        Assert.Equal("out of ink", screen.Failure?.Message);
        Assert.Equal(["x"], shell.Keys);
    }

    [Fact]
    public void An_error_in_a_tick_closes_the_screen_and_is_kept()
    {
        PaperShell shell = new() { Line = "torn" };
        using SheetScreen screen = new(shell);
        screen.Advance(OneTick);
        Assert.True(screen.Closed);
        Assert.Equal("torn", screen.Failure?.Message);
    }
}
