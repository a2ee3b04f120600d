using ServiceRunner.Screens;
using ServiceRunner.Terminal;
using Terminal.Gui.Drawing;
using Attribute = Terminal.Gui.Drawing.Attribute;

namespace ServiceRunner.Tests.Terminal;

public sealed class PaletteTests
{
    /// <summary>The 16 colours as the Linux console and most terminals start with them.</summary>
    private static readonly Dictionary<ColorName16, Color> Usual = new()
    {
        [ColorName16.Black] = new(0, 0, 0), [ColorName16.White] = new(255, 255, 255),
        [ColorName16.Red] = new(170, 0, 0), [ColorName16.Blue] = new(0, 0, 170),
        [ColorName16.BrightYellow] = new(255, 255, 85), [ColorName16.BrightCyan] = new(85, 255, 255),
    };

    [Fact]
    public void Where_both_colours_are_ours_the_contrast_is_enough()
    {
        int filled = 0;
        foreach (Ink ink in Enum.GetValues<Ink>())
        {
            Attribute look = Palette.Colour[ink];
            Assert.Equal(look.Foreground == Color.None, look.Background == Color.None);
            if (look.Foreground == Color.None) continue;
            filled++;
            Assert.True(Contrast(look.Foreground, look.Background) >= 4.5, $"{ink}");
            Color front = Usual[look.Foreground.GetClosestNamedColor16()], back = Usual[look.Background.GetClosestNamedColor16()];
            Assert.True(Contrast(front, back) >= 4.5, $"{ink} with 16 colours");
        }
        Assert.Equal(4, filled);
    }

    [Fact]
    public void Alarm_and_good_differ_without_their_hue()
    {
        Attribute alarm = Palette.Colour[Ink.Alarm], good = Palette.Colour[Ink.Good];
        Assert.True(Contrast(alarm.Background, good.Background) >= 3);
        Assert.NotEqual(alarm.Style, good.Style);
    }

    [Fact]
    public void Monochrome_has_no_colour_at_all_and_still_tells_apart()
    {
        foreach (Ink ink in Enum.GetValues<Ink>())
        {
            Assert.Equal(Color.None, Palette.Monochrome[ink].Foreground);
            Assert.Equal(Color.None, Palette.Monochrome[ink].Background);
        }
        Ink[] apart = [Ink.Plain, Ink.Strong, Ink.Faint, Ink.Title, Ink.Caution, Ink.Alarm, Ink.Good, Ink.Cursor];
        Assert.Equal(apart.Length, apart.Select(i => Palette.Monochrome[i].Style).Distinct().Count());
    }

    [Fact]
    public void Monochrome_sends_no_colour()
    {
        PaperShell shell = new();
        using SheetScreen screen = new(shell, 40, 6, monochrome: true);
        Assert.Equal(Palette.Monochrome[Ink.Bar], screen.At(0, 0));
        screen.Resume();
        Assert.DoesNotContain("\e[38", screen.Sent, StringComparison.Ordinal);
        Assert.DoesNotContain("\e[48", screen.Sent, StringComparison.Ordinal);
        Assert.Contains("\e[7", screen.Sent, StringComparison.Ordinal);
    }

    // WCAG 2.1, "contrast ratio" and "relative luminance".
    private static double Contrast(Color a, Color b)
    {
        double x = Luminance(a), y = Luminance(b);
        return (Math.Max(x, y) + 0.05) / (Math.Min(x, y) + 0.05);
    }

    private static double Luminance(Color c) => 0.2126 * Linear(c.R) + 0.7152 * Linear(c.G) + 0.0722 * Linear(c.B);

    private static double Linear(byte value)
    {
        double part = value / 255.0;
        return part <= 0.03928 ? part / 12.92 : Math.Pow((part + 0.055) / 1.055, 2.4);
    }
}
