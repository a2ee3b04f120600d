using System.Text;
using ServiceRunner.Files.Sentences;

namespace ServiceRunner.Files.Reports;

/// <summary>Lines of plain text: what people typed must not move the cursor of whoever reads them.</summary>
internal static class TextLines
{
    public static void Line(StringBuilder text, string line) => text.Append(PlainText.Of(line).TrimEnd()).Append('\n');

    /// <summary>Breaks between words; a longer word stands over. Nothing gives no line.</summary>
    public static IEnumerable<string> Wrap(string text, int width)
    {
        string current = "";
        foreach (string word in PlainText.Of(text).Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            if (current.Length > 0 && current.Length + 1 + word.Length > width)
            {
                yield return current;
                current = "";
            }
            current += current.Length == 0 ? word : $" {word}";
        }
        if (current.Length > 0) yield return current;
    }
}
