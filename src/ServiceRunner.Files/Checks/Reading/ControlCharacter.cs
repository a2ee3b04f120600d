using System.Buffers;
using System.Globalization;
using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Files.Checks.Reading;

internal static class ControlCharacter
{
    public static readonly Rule Rule = new(
        "control-character", Severity.Error, "An unseen control character",
        "A character that moves the cursor, rings the bell or turns the direction of writing has no place in a text that " +
        "is shown on a screen and printed in a report. It usually comes in by copying.");

    // Also the marks that change the direction of writing: text could be made to read as what it is not.
    private static readonly SearchValues<char> Forbidden = SearchValues.Create(
        [.. Enumerable.Range(0, 0x20).Concat(Enumerable.Range(0x7F, 0x21)).Select(c => (char)c).Where(c => c is not ('\n' or '\t')),
         .. "\u200E\u200F\u2028\u2029\u202A\u202B\u202C\u202D\u202E\u2066\u2067\u2068\u2069\uFEFF"]);

    public static char? In(string text)
    {
        int at = text.AsSpan().IndexOfAny(Forbidden);
        return at < 0 ? null : text[at];
    }

    public static Diagnostic Of(string file, Place at, char control) =>
        Rule.At(
            file, at,
            string.Create(CultureInfo.InvariantCulture, $"an unseen control character (U+{(int)control:X4}) stands in this text"),
            "Type the text anew.");
}
