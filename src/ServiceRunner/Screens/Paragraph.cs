using System.Globalization;

namespace ServiceRunner.Screens;

/// <summary>Text broken into lines that fit, by columns and not by characters.</summary>
public static class Paragraph
{
    /// <summary>Breaks between words; a word longer than a line is broken where it must.</summary>
    public static IReadOnlyList<string> Wrap(string text, int columns)
    {
        columns = Math.Max(1, columns);
        List<string> lines = [];
        string line = "";
        foreach (string word in text.Split([' ', '\n', '\r', '\t'], StringSplitOptions.RemoveEmptyEntries))
        {
            string rest = word;
            if (line.Length > 0 && Sheet.Columns(line) + 1 + Sheet.Columns(rest) <= columns)
            {
                line += " " + rest;
                continue;
            }
            if (line.Length > 0) lines.Add(line);
            while (Sheet.Columns(rest) > columns)
            {
                string head = Fit(rest, columns);
                lines.Add(head);
                rest = rest[head.Length..];
            }
            line = rest;
        }
        if (line.Length > 0) lines.Add(line);
        return lines;
    }

    /// <summary>A text cut to fit, with an ellipsis if anything was cut.</summary>
    public static string Clip(string text, int columns) =>
        Sheet.Columns(text) <= columns ? text : columns <= 1 ? "…"[..Math.Max(0, columns)] : Fit(text, columns - 1).TrimEnd() + "…";

    private static string Fit(string text, int columns)
    {
        int used = 0, end = 0;
        TextElementEnumerator elements = StringInfo.GetTextElementEnumerator(text);
        while (elements.MoveNext())
        {
            string element = elements.GetTextElement();
            int wide = Sheet.Columns(element);
            if (used + wide > columns && end > 0) break;
            used += wide;
            end = elements.ElementIndex + element.Length;
        }
        return text[..end];
    }
}
