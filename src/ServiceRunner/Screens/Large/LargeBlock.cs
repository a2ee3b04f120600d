using ServiceRunner.Files.Sentences;

namespace ServiceRunner.Screens.Large;

/// <summary>Some rows of the large view, and how they are drawn from a row on.</summary>
internal sealed record LargeBlock(int Rows, Action<int> Draw)
{
    /// <summary>Sentences in plain size.</summary>
    public static LargeBlock Plain(Sheet sheet, string text, Ink ink, int margin)
    {
        IReadOnlyList<string> lines = Paragraph.Wrap(text, sheet.Width - 2 * margin);
        return new(lines.Count, y => Each(lines, (line, i) => sheet.Write(margin, y + i, line, ink)));
    }

    /// <summary>A sentence in plain size on a band as wide as the sheet, so that from far it is at least seen that there is one.</summary>
    public static LargeBlock Band(Sheet sheet, string text, int margin)
    {
        IReadOnlyList<string> lines = Paragraph.Wrap(text, sheet.Width - 2 * margin - 2);
        return new(lines.Count, y => Each(lines, (line, i) =>
        {
            sheet.Write(margin, y + i, (i == 0 ? "▲ " : "  ") + line);
            sheet.Paint(0, y + i, sheet.Width, Ink.Caution);
        }));
    }

    /// <summary>The cautions in one row, where there is no room for their sentences.</summary>
    public static LargeBlock ShortBand(Sheet sheet, IReadOnlyList<string> cautions, int margin) =>
        Band(sheet, string.Join("; ", cautions.Select(Cautions.Short)), margin);

    /// <summary>A text in large letters, or null if a word of it would have to be broken.</summary>
    public static LargeBlock? Letters(Sheet sheet, string text, LetterSize size, int leading, Ink ink, int margin)
    {
        int columns = sheet.Width - 2 * margin;
        return LargeLetters.KeepsWordsWhole(text, columns, size) ? Lines(sheet, LargeLetters.Wrap(text, columns, size), size, leading, ink, margin) : null;
    }

    /// <summary>Choices in large letters, as many in a line as fit; null if a word would have to be broken.</summary>
    public static LargeBlock? LetterChoices(Sheet sheet, IReadOnlyList<string> choices, LetterSize size, int leading, int margin)
    {
        int columns = sheet.Width - 2 * margin;
        return choices.All(c => LargeLetters.KeepsWordsWhole(c, columns, size))
            ? Lines(sheet, Flow(choices, c => LargeLetters.Wrap(c, columns, size), c => LargeLetters.Width(c, size) <= columns), size, leading, Ink.Plain, margin)
            : null;
    }

    /// <summary>Choices in plain size.</summary>
    public static LargeBlock PlainChoices(Sheet sheet, IReadOnlyList<string> choices, int margin)
    {
        int columns = sheet.Width - 2 * margin;
        List<string> lines = Flow(choices, c => Paragraph.Wrap(c, columns), c => Sheet.Columns(c) <= columns);
        return new(lines.Count, y => Each(lines, (line, i) => sheet.Write(margin, y + i, line, Ink.Strong)));
    }

    private static LargeBlock Lines(Sheet sheet, IReadOnlyList<string> lines, LetterSize size, int leading, Ink ink, int margin)
    {
        int pitch = LargeLetters.Rows(size) + leading;
        return new(lines.Count * pitch - leading, y => Each(lines, (line, i) => LargeLetters.Draw(sheet, margin, y + i * pitch, line, size, ink)));
    }

    // A choice goes to the next line whole; only one that is longer than a line is broken.
    private static List<string> Flow(IReadOnlyList<string> choices, Func<string, IReadOnlyList<string>> wrap, Func<string, bool> fits)
    {
        List<string> lines = [];
        foreach (string choice in choices)
        {
            if (lines.Count > 0 && fits($"{lines[^1]}   {choice}")) lines[^1] += "   " + choice;
            else lines.AddRange(wrap(choice));
        }
        return lines;
    }

    private static void Each(IReadOnlyList<string> lines, Action<string, int> draw)
    {
        for (int i = 0; i < lines.Count; i++) draw(lines[i], i);
    }
}
