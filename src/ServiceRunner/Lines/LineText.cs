using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;

namespace ServiceRunner.Lines;

/// <summary>Text that any terminal can take and any screen reader can say: one line, printable, nothing drawn.</summary>
internal static partial class LineText
{
    /// <summary>The text, ending as a sentence does.</summary>
    public static string Sentence(string text)
    {
        string plain = Of(text);
        return plain.Length == 0 || plain[^1] is '.' or '?' or '!' or ':' or '…' ? plain : plain + ".";
    }

    /// <summary>The text without what moves a cursor, turns the reading direction or is a drawing; an arrow between words is "to".</summary>
    public static string Of(string text)
    {
        StringBuilder plain = new(text.Length);
        foreach (Rune rune in text.TrimStart(' ', '→').EnumerateRunes()) plain.Append(rune.Value == '→' ? " to " : IsSaid(rune) ? rune.ToString() : " ");
        return Blanks().Replace(plain.ToString(), " ").Trim();
    }

    // Boxes, blocks, bars and marks are U+2500 to U+27BF; the guillemet marks a line.
    private static bool IsSaid(Rune rune) => rune.Value is not ((>= 0x2190 and <= 0x21FF) or (>= 0x2300 and <= 0x27BF) or (>= 0x2800 and <= 0x2BFF) or '›' or '·' or 0xFFFD)
        && Rune.GetUnicodeCategory(rune) is not (UnicodeCategory.Control or UnicodeCategory.Format or UnicodeCategory.Surrogate or UnicodeCategory.LineSeparator
            or UnicodeCategory.ParagraphSeparator or UnicodeCategory.PrivateUse or UnicodeCategory.OtherNotAssigned);

    [GeneratedRegex(@"\s+")]
    private static partial Regex Blanks();
}
