using ServiceRunner.Screens;
using Terminal.Gui.Drawing;
using Attribute = Terminal.Gui.Drawing.Attribute;

namespace ServiceRunner.Terminal;

/// <summary>
/// What an ink looks like. Most text keeps the terminal's own two colours, because nobody knows whether they are dark on
/// light or the reverse; only what has to be seen from across the bench is filled, and then both colours are ours.
/// An alarm differs from what is good by weight and by light against dark, not by red against green.
/// </summary>
internal sealed class Palette
{
    private static readonly Color Own = Color.None; // the terminal's own colour, whatever it is

    public static Palette Colour { get; } = With(
        caution: new(new Color(0, 0, 0), new Color(255, 215, 95)),
        alarm: new(new Color(255, 255, 255), new Color(160, 0, 0), TextStyle.Bold),
        good: new(new Color(0, 0, 0), new Color(95, 215, 215)),
        cursor: new(new Color(255, 255, 255), new Color(0, 0, 160)));

    public static Palette Monochrome { get; } = With(
        caution: new(Own, Own, TextStyle.Reverse | TextStyle.Underline),
        alarm: new(Own, Own, TextStyle.Reverse | TextStyle.Bold),
        good: new(Own, Own, TextStyle.Underline),
        cursor: new(Own, Own, TextStyle.Reverse));

    private static Palette With(Attribute caution, Attribute alarm, Attribute good, Attribute cursor) => new(new()
    {
        [Ink.Plain] = new(Own, Own),
        [Ink.Strong] = new(Own, Own, TextStyle.Bold),
        [Ink.Faint] = new(Own, Own, TextStyle.Faint),
        [Ink.Title] = new(Own, Own, TextStyle.Bold | TextStyle.Underline),
        [Ink.Bar] = new(Own, Own, TextStyle.Reverse),
        [Ink.Key] = new(Own, Own, TextStyle.Bold),
        [Ink.Caution] = caution,
        [Ink.Alarm] = alarm,
        [Ink.Good] = good,
        [Ink.Cursor] = cursor,
        [Ink.Clock] = new(Own, Own, TextStyle.Bold),
    });

    private readonly Dictionary<Ink, Attribute> _inks;

    private Palette(Dictionary<Ink, Attribute> inks) => _inks = inks;

    public Attribute this[Ink ink] => _inks[ink];

    /// <summary>A line that is being written: underlined as on a form, so that its length shows.</summary>
    public static Scheme Line { get; } = LineScheme();

    private static Scheme LineScheme()
    {
        Attribute line = new(Own, Own, TextStyle.Underline);
        Attribute marked = new(Own, Own, TextStyle.Reverse);
        return new Scheme(line)
        {
            Normal = line, HotNormal = line, Focus = line, HotFocus = line, Active = marked, HotActive = marked,
            Highlight = line, Editable = line, ReadOnly = line, Disabled = line,
        };
    }
}
