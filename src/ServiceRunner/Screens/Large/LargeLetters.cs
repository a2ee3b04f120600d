using System.Globalization;
using System.Text;

namespace ServiceRunner.Screens.Large;

/// <summary>How large a pixel of a letter is drawn.</summary>
public enum LetterSize
{
    /// <summary>One column wide, half a row high: a line takes four rows.</summary>
    Single,

    /// <summary>Two columns wide, one row high: a line takes eight rows.</summary>
    Double,
}

/// <summary>
/// Letters made of blocks, to be read from two metres. Eight pixels high, of which a capital takes seven, a small
/// letter five, and what hangs below the line one. Widths differ from letter to letter; one pixel stands between two.
/// </summary>
public static class LargeLetters
{
    /// <summary>Pixels of a letter's height.</summary>
    public const int Pixels = 8;

    /// <summary>Pixels of a capital's height; in <see cref="LetterSize.Single"/> two of them make a row.</summary>
    public const int CapitalPixels = 7;

    private const int Gap = 1, SpaceWidth = 2;

    private static readonly string[] Box = ["####", "#..#", "#..#", "#..#", "#..#", "#..#", "####", "...."];
    private static readonly string[] Space = [.. Enumerable.Repeat(new string('.', SpaceWidth), Pixels)];

    // Characters that look the same at this size.
    private static readonly Dictionary<char, string> Same = new()
    {
        ['’'] = "'", ['‘'] = "'", ['′'] = "'", ['“'] = "\"", ['”'] = "\"", ['″'] = "\"", ['—'] = "–", ['−'] = "–", ['‐'] = "-", ['‑'] = "-", ['μ'] = "µ", ['⁄'] = "/", ['º'] = "°",
        ['æ'] = "ae", ['Æ'] = "AE", ['œ'] = "oe", ['Œ'] = "OE", ['ẞ'] = "SS",
    };

    private static readonly Dictionary<char, string[]> Shapes = Capitals.Plates.Concat(SmallLetters.Plates).Concat(FiguresAndMarks.Plates).SelectMany(Read).ToDictionary();

    /// <summary>Every character that has a shape of its own, without those composed of a letter and a mark.</summary>
    public static IEnumerable<char> Drawn => Shapes.Keys;

    /// <summary>Rows of a line.</summary>
    public static int Rows(LetterSize size) => size == LetterSize.Single ? Pixels / 2 : Pixels;

    /// <summary>How many rows of the terminal a capital is high.</summary>
    public static double CapitalRows(LetterSize size) => size == LetterSize.Single ? CapitalPixels / 2.0 : CapitalPixels;

    /// <summary>How many columns a text takes in one line.</summary>
    public static int Width(string text, LetterSize size)
    {
        int pixels = -Gap;
        foreach ((_, string[] shape) in Of(text)) pixels += shape[0].Length + Gap;
        return Math.Max(0, pixels) * Columns(size);
    }

    /// <summary>Breaks between words; a word longer than a line is broken where it must.</summary>
    public static IReadOnlyList<string> Wrap(string text, int columns, LetterSize size)
    {
        List<string> lines = [];
        string line = "";
        foreach (string word in Words(text))
        {
            string rest = word;
            if (line.Length > 0 && Width($"{line} {rest}", size) <= columns)
            {
                line += " " + rest;
                continue;
            }
            if (line.Length > 0) lines.Add(line);
            while (Width(rest, size) > columns && Head(rest, columns, size) is var head && head.Length < rest.Length)
            {
                lines.Add(head);
                rest = rest[head.Length..];
            }
            line = rest;
        }
        if (line.Length > 0) lines.Add(line);
        return lines;
    }

    /// <summary>True if no word of a text is longer than a line.</summary>
    public static bool KeepsWordsWhole(string text, int columns, LetterSize size) => Array.TrueForAll(Words(text), w => Width(w, size) <= columns);

    /// <summary>Draws one line; the cells between and inside the letters get the ink too. Returns the column after it.</summary>
    public static int Draw(Sheet sheet, int x, int y, string text, LetterSize size, Ink ink)
    {
        IReadOnlyList<string> rows = RowsOf(text, size);
        for (int r = 0; r < rows.Count; r++) sheet.Write(x, y + r, rows[r], ink);
        return x + Width(text, size);
    }

    /// <summary>The rows of one line as text.</summary>
    public static IReadOnlyList<string> RowsOf(string text, LetterSize size)
    {
        StringBuilder[] pixels = [.. Enumerable.Range(0, Pixels).Select(_ => new StringBuilder())];
        foreach ((_, string[] shape) in Of(text))
            for (int r = 0; r < Pixels; r++)
                pixels[r].Append(pixels[r].Length > 0 ? "." : "").Append(shape[r]);
        return size == LetterSize.Double
            ? [.. pixels.Select(row => string.Concat(row.ToString().Select(p => p == '#' ? "██" : "  ")))]
            : [.. pixels.Chunk(2).Select(pair => string.Concat(pair[0].ToString().Zip(pair[1].ToString(), Half)))];
    }

    /// <summary>The shape of each character of a text, and where it begins in it. Marks that stand alone join the letter before them.</summary>
    internal static IReadOnlyList<(int Start, string[] Shape)> Of(string text)
    {
        List<(int Start, string[] Shape)> shapes = [];
        char letter = ' ';
        int at = 0;
        foreach (Rune rune in text.EnumerateRunes())
        {
            char c = rune.IsBmp ? (char)rune.Value : '\uFFFD';
            if (Rune.GetUnicodeCategory(rune) is UnicodeCategory.NonSpacingMark or UnicodeCategory.EnclosingMark)
            {
                if (shapes.Count > 0) shapes[^1] = (shapes[^1].Start, Marked(letter, Accents.OfCombining(c), shapes[^1].Shape));
            }
            else
            {
                letter = c;
                foreach (char part in Same.GetValueOrDefault(c, c.ToString())) shapes.Add((at, ShapeOf(part, rune)));
            }
            // A half of a pair that stands alone counts as one character and is read as the replacement character.
            at += rune.Utf16SequenceLength;
        }
        return shapes;
    }

    private static string[] ShapeOf(char c, Rune rune) =>
        Rune.IsWhiteSpace(rune) ? Space
        : Shapes.GetValueOrDefault(c) is { } shape ? shape
        : Accents.TryTakeApart(c, out char letter, out char mark) ? Accents.Put(mark, Shapes[letter], char.IsUpper(letter))
        : Box;

    private static string[] Marked(char letter, char mark, string[] shape) =>
        Accents.Put(mark, letter == 'i' && mark != '¸' ? Shapes['ı'] : shape, char.IsUpper(letter));

    private static string[] Words(string text) => text.Split([' ', '\n', '\r', '\t'], StringSplitOptions.RemoveEmptyEntries);

    // As many characters as fit, at least one.
    private static string Head(string word, int columns, LetterSize size)
    {
        int pixels = -Gap;
        foreach ((int start, string[] shape) in Of(word))
        {
            pixels += shape[0].Length + Gap;
            if (pixels * Columns(size) > columns && start > 0) return word[..start];
        }
        return word;
    }

    private static int Columns(LetterSize size) => size == LetterSize.Single ? 1 : 2;

    private static char Half(char upper, char lower) => (upper, lower) switch { ('#', '#') => '█', ('#', _) => '▀', (_, '#') => '▄', _ => ' ' };

    // A plate shows letters side by side: their names in the first row, a picture of each below its name.
    private static IEnumerable<KeyValuePair<char, string[]>> Read(string plate)
    {
        string[][] rows = [.. plate.Split('\n').Select(row => row.Split([' ', '\r'], StringSplitOptions.RemoveEmptyEntries))];
        return rows[0].Select((name, i) => KeyValuePair.Create(name[0], rows[1..].Select(r => r[i]).ToArray()));
    }
}
