using System.Text;

namespace ServiceRunner.Screens;

/// <summary>Figures three columns wide and five rows high, to be read from two metres.</summary>
public static class BigFigures
{
    /// <summary>Rows of a figure.</summary>
    public const int Rows = 5;

    private static readonly Dictionary<char, string[]> Figures = new()
    {
        ['0'] = ["███", "█ █", "█ █", "█ █", "███"], ['1'] = [" █ ", "██ ", " █ ", " █ ", "███"],
        ['2'] = ["███", "  █", "███", "█  ", "███"], ['3'] = ["███", "  █", "███", "  █", "███"],
        ['4'] = ["█ █", "█ █", "███", "  █", "  █"], ['5'] = ["███", "█  ", "███", "  █", "███"],
        ['6'] = ["███", "█  ", "███", "█ █", "███"], ['7'] = ["███", "  █", "  █", "  █", "  █"],
        ['8'] = ["███", "█ █", "███", "█ █", "███"], ['9'] = ["███", "█ █", "███", "  █", "███"],
        [':'] = [" ", "█", " ", "█", " "], ['-'] = ["   ", "   ", "███", "   ", "   "], [' '] = ["  ", "  ", "  ", "  ", "  "],
        ['d'] = ["  █", "  █", "███", "█ █", "███"], ['h'] = ["█  ", "█  ", "███", "█ █", "█ █"],
    };

    /// <summary>The rows of a text of figures; each cell <paramref name="wide"/> columns wide.</summary>
    public static IReadOnlyList<string> Of(string text, int wide = 2)
    {
        string[] rows = new string[Rows];
        for (int r = 0; r < Rows; r++)
        {
            StringBuilder row = new();
            foreach (char c in text)
            {
                if (row.Length > 0) row.Append(' ', wide);
                foreach (char cell in Figures.GetValueOrDefault(c, Figures[' '])[r]) row.Append(cell, wide);
            }
            rows[r] = row.ToString();
        }
        return rows;
    }
}
