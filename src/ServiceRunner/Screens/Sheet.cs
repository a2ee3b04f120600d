using System.Globalization;
using System.Text;
using Wcwidth;

namespace ServiceRunner.Screens;

/// <summary>What a piece of text on a sheet is for. A terminal turns it into colour, or into weight where there is no colour.</summary>
public enum Ink
{
    Plain, Strong, Faint, Title, Bar, Key, Caution, Alarm, Good, Cursor, Clock,
}

/// <summary>
/// One screenful, drawn by a page without knowing the terminal. Whatever is written is clipped to the sheet, and
/// characters that could move a cursor, ring a bell or turn the reading direction become a dot.
/// </summary>
public sealed class Sheet(int width, int height)
{
    private readonly Cell[] _cells = NewCells(width * height);

    public int Width { get; } = width;
    public int Height { get; } = height;

    /// <summary>One column of one row. The column behind a wide character holds an empty text.</summary>
    public readonly record struct Cell(string Text, Ink Ink);

    public Cell this[int x, int y] => _cells[y * Width + x];

    private static Cell[] NewCells(int count)
    {
        Cell[] cells = new Cell[count];
        Array.Fill(cells, new Cell(" ", Ink.Plain));
        return cells;
    }

    /// <summary>Writes from column x of row y; returns the column after the last one written.</summary>
    public int Write(int x, int y, string text, Ink ink = Ink.Plain)
    {
        if (y < 0 || y >= Height) return x;
        TextElementEnumerator elements = StringInfo.GetTextElementEnumerator(text);
        while (elements.MoveNext())
        {
            (string shown, int columns) = Shown(elements.GetTextElement());
            if (columns == 0) continue;
            if (x >= 0 && x + columns <= Width)
            {
                _cells[y * Width + x] = new Cell(shown, ink);
                if (columns == 2) _cells[y * Width + x + 1] = new Cell("", ink);
            }
            x += columns;
        }
        return x;
    }

    /// <summary>Fills a row with one ink from column x on, over what is there.</summary>
    public void Paint(int x, int y, int columns, Ink ink)
    {
        if (y < 0 || y >= Height) return;
        for (int i = Math.Max(0, x); i < Math.Min(Width, x + columns); i++)
            _cells[y * Width + i] = _cells[y * Width + i] with { Ink = ink };
    }

    /// <summary>How many columns a text takes.</summary>
    public static int Columns(string text)
    {
        int columns = 0;
        TextElementEnumerator elements = StringInfo.GetTextElementEnumerator(text);
        while (elements.MoveNext()) columns += Shown(elements.GetTextElement()).Columns;
        return columns;
    }

    private static (string Text, int Columns) Shown(string element)
    {
        Rune first = Rune.GetRuneAt(element, 0);
        if (first.IsAscii && first.Value is >= 0x20 and < 0x7f) return element.Length == 1 ? (element, 1) : (element[..1], 1);
        if (Rune.GetUnicodeCategory(first) is UnicodeCategory.Control or UnicodeCategory.Format or UnicodeCategory.Surrogate
            or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator or UnicodeCategory.PrivateUse)
            return ("·", 1);
        int columns = UnicodeCalculator.GetWidth(first);
        return columns <= 0 ? ("·", 1) : (Clean(element), columns);
    }

    private static string Clean(string element) =>
        element.EnumerateRunes().All(r => Rune.GetUnicodeCategory(r) is not (UnicodeCategory.Control or UnicodeCategory.Format))
            ? element
            : Rune.GetRuneAt(element, 0).ToString();

    /// <summary>One row as text, without the blanks at its end.</summary>
    public string Row(int y)
    {
        StringBuilder row = new();
        for (int x = 0; x < Width; x++) row.Append(_cells[y * Width + x].Text);
        return row.ToString().TrimEnd();
    }

    /// <summary>All rows as text.</summary>
    public override string ToString() => string.Join('\n', Enumerable.Range(0, Height).Select(Row)).TrimEnd('\n');
}
