using System.Text.RegularExpressions;
using ServiceRunner.Screens;

namespace ServiceRunner.Lines;

/// <summary>Reads the rows of a drawn screen out: for screens that have no words of their own.</summary>
internal static partial class SheetWords
{
    // Long lists get room; a page that fills its height leaves empty rows, which are not read.
    private const int Width = 110, Height = 120;

    public static IEnumerable<Telling> Of(ScreenModel screen)
    {
        foreach (string row in Rows(screen)) yield return row;
        if (OnEnter(screen) is { Length: > 0 } going) yield return going;
    }

    /// <summary>What an empty line does, as a sentence; empty if it does nothing.</summary>
    public static string OnEnter(ScreenModel screen) =>
        screen.Actions.FirstOrDefault(a => a.Keys.Contains("Enter")) is { Name.Length: > 0 } action && action.WhyNot().Length == 0 ? $"Enter: {action.Name}" : "";

    /// <summary>The rows with something on them, as sentences.</summary>
    public static IEnumerable<string> Rows(ScreenModel screen)
    {
        Sheet sheet = new(Width, Height);
        screen.Draw(sheet, 0, Height);
        for (int y = 0; y < Height; y++)
            if (Row(sheet.Row(y)) is { Length: > 0 } row) yield return row;
    }

    // What a mark or a column says by its place is said in a word.
    internal static string Row(string row)
    {
        string mark = Marked().IsMatch(row) ? "Marked: " : row.TrimStart().StartsWith('▲') ? "Caution: " : "";
        string words = LineText.Of(Columns().Replace(Drawn().Replace(row, " ").Trim().TrimStart('›', '▲').Trim(), ", "));
        return words.Any(char.IsLetterOrDigit) ? mark + words : "";
    }

    [GeneratedRegex(@"^\s*›")]
    private static partial Regex Marked();

    [GeneratedRegex(@"[─-◿]+")]
    private static partial Regex Drawn();

    [GeneratedRegex(@"(?<=\S)\s{2,}(?=\S)")]
    private static partial Regex Columns();
}
