using System.Globalization;
using ServiceRunner.Core.Procedures;

namespace ServiceRunner.Screens.Oiling;

/// <summary>
/// One side of a movement in the cells of a terminal: its outline, and each point's mark with its number where it lies. A cell
/// is taken as twice as high as it is wide. Marks that would lie on each other move apart to the nearest free cells.
/// </summary>
internal static class MovementMap
{
    /// <summary>Rows that a side of this width is drawn in, with its title.</summary>
    public static int RowsFor(MapSize size, int wide) => (int)Math.Ceiling(wide * (double)(size.Height / size.Width) / 2) + 1;

    /// <summary>Columns that a side takes within so many rows, its title among them.</summary>
    public static int ColumnsFor(MapSize size, int rows) => (int)((rows - 1) * 2 * (double)(size.Width / size.Height));

    public static void Draw(Sheet sheet, int x, int y, int wide, int rows, MapSize size, bool dial, IReadOnlyList<PointView> points)
    {
        sheet.Write(x, y, Paragraph.Clip(dial ? "Dial side" : "Train side", wide), Ink.Faint);
        int high = rows - 1;
        if (wide < 8 || high < 4) return;
        double perMm = Math.Min((wide - 1) / (2 * (double)size.Width), (high - 1) / (double)size.Height);
        double left = x + (wide - 1 - 2 * perMm * (double)size.Width) / 2;
        Outline(sheet, left, y + 1, perMm, size);
        Placing taken = new(x, y + 1, wide, high);
        foreach (PointView point in points)
        {
            string label = PointView.Mark(point.Stand) + point.Line.Number.ToString(CultureInfo.InvariantCulture);
            int column = (int)Math.Round(left + 2 * perMm * (double)point.Point!.On!.X), row = y + 1 + (int)Math.Round(perMm * (double)point.Point.On.Y);
            if (taken.Take(column, row, label.Length) is not var (cx, cy)) continue;
            sheet.Write(cx, cy, label, PointView.Ink(point.Stand));
        }
    }

    // A round movement has a square map.
    private static void Outline(Sheet sheet, double left, int top, double perMm, MapSize size)
    {
        double width = 2 * perMm * (double)size.Width, height = perMm * (double)size.Height;
        if (size.Width == size.Height)
        {
            int steps = (int)(4 * (width + height));
            for (int i = 0; i < steps; i++)
            {
                double angle = 2 * Math.PI * i / steps;
                sheet.Write((int)Math.Round(left + width / 2 * (1 + Math.Cos(angle))), top + (int)Math.Round(height / 2 * (1 + Math.Sin(angle))), ".", Ink.Faint);
            }
            return;
        }
        (int l, int r, int b) = ((int)Math.Round(left), (int)Math.Round(left + width), top + (int)Math.Round(height));
        for (int c = l; c <= r; c++)
        {
            sheet.Write(c, top, ".", Ink.Faint);
            sheet.Write(c, b, ".", Ink.Faint);
        }
        for (int line = top; line <= b; line++)
        {
            sheet.Write(l, line, ".", Ink.Faint);
            sheet.Write(r, line, ".", Ink.Faint);
        }
    }

    // Which cells hold a label, and where the nearest place for another one is.
    private sealed class Placing(int x, int y, int wide, int high)
    {
        private static readonly (int X, int Y)[] Offsets =
            [.. Enumerable.Range(-14, 29).SelectMany(dx => Enumerable.Range(-7, 15).Select(dy => (dx, dy))).OrderBy(o => o.dx * o.dx + 4 * o.dy * o.dy).ThenBy(o => o.dy).ThenBy(o => o.dx)];

        private readonly bool[,] _taken = new bool[high, wide];

        public (int X, int Y)? Take(int column, int row, int length)
        {
            foreach ((int dx, int dy) in Offsets)
            {
                // The mark itself stands on the place.
                (int c, int r) = (column + dx, row + dy);
                c = Math.Clamp(c, x, x + wide - length);
                if (r < y || r >= y + high || !IsFree(c - x, r - y, length)) continue;
                // One empty cell behind it keeps two numbers apart.
                for (int i = -1; i <= length; i++)
                    if (c - x + i is var cell && cell >= 0 && cell < wide) _taken[r - y, cell] = true;
                return (c, r);
            }
            return null;
        }

        private bool IsFree(int column, int row, int length)
        {
            for (int i = 0; i < length; i++)
                if (_taken[row, column + i]) return false;
            return true;
        }
    }
}
