using System.Globalization;
using System.Text;

namespace ServiceRunner.Files.Sentences;

/// <summary>
/// What people typed, files say or another bench sent, so that it can be shown: no character of it moves a cursor, rings
/// a bell, turns the direction of writing or hides text.
/// </summary>
public static class PlainText
{
    /// <summary>The text on one line, with a dot for each such character.</summary>
    public static string Of(string text)
    {
        if (!text.Any(c => c > '~' || c < ' ')) return text;
        StringBuilder plain = new(text.Length);
        foreach (Rune rune in text.EnumerateRunes()) // a lone surrogate comes as U+FFFD
            plain.Append(Moves(rune) ? "·" : rune.ToString());
        return plain.ToString();
    }

    /// <summary>True for controls, what turns the direction of writing or hides text, and what no text may hold.</summary>
    public static bool Moves(Rune rune) =>
        Rune.GetUnicodeCategory(rune) is UnicodeCategory.Control or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator
        || rune.Value is 0x061C or 0x200B or 0x200E or 0x200F or (>= 0x202A and <= 0x202E) or (>= 0x2060 and <= 0x206F) or 0xFEFF or (>= 0xFFF9 and <= 0xFFFB) or (>= 0xE0000 and <= 0xE007F)
        || (rune.Value & 0xFFFE) == 0xFFFE || rune.Value is >= 0xFDD0 and <= 0xFDEF;
}
