using ServiceRunner.Core.Jobs;
using ServiceRunner.Core.Quantities;
using ServiceRunner.Screens.Baths;
using ServiceRunner.Session;

namespace ServiceRunner.Screens.Large;

/// <summary>The clocks of the large view, the most urgent first: some in big figures side by side, the rest a line each.</summary>
internal static class LargeClocks
{
    private const int MostLines = 3;

    /// <summary>What is over its most first, by how far; then what is nearest to its aim or longest past it.</summary>
    public static IReadOnlyList<(OpenJob Job, Soak Soak)> ByUrgency(Shell shell)
    {
        Moment now = shell.Session.Now;
        return [.. shell.Session.RunningSoaks()
            .OrderByDescending(c => c.Soak.Standing(now) == Standing.Over)
            .ThenByDescending(c => c.Soak.Length(now).Length - c.Soak.Window.Aim)];
    }

    /// <summary>A block of the clocks with so many in big figures; no rows if no clock runs.</summary>
    public static LargeBlock Block(Sheet sheet, IReadOnlyList<(OpenJob Job, Soak Soak)> clocks, int big, Shell shell)
    {
        Moment now = shell.Session.Now;
        big = Math.Min(big, clocks.Count);
        int bigRows = big == 0 ? 0 : BathsPage.BigRows + (clocks.Take(big).All(c => c.Soak.Length(now).Certain) ? 0 : 1);
        int rest = clocks.Count - big, lines = Math.Min(rest, MostLines), more = rest > MostLines ? 1 : 0;
        return new(bigRows + lines + more, y =>
        {
            int wide = sheet.Width / Math.Max(1, big);
            for (int i = 0; i < big; i++) BathsPage.Big(sheet, 2 + i * wide, y, wide - 4, clocks[i], shell, now);
            for (int i = 0; i < lines; i++) BathsPage.Line(sheet, y + bigRows + i, clocks[big + i], shell, now);
            if (more == 1) sheet.Write(1, y + bigRows + lines, $"{rest - MostLines} more; F4 shows all.", Ink.Faint);
        });
    }
}
