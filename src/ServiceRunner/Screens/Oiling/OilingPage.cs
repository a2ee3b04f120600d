using ServiceRunner.Core.Jobs;
using ServiceRunner.Core.Lubricants;
using ServiceRunner.Files.Sentences;

namespace ServiceRunner.Screens.Oiling;

/// <summary>
/// Draws what comes next and what speaks against it, the sides of the movement (both where there is room, else one), and
/// the list beside them.
/// </summary>
internal static class OilingPage
{
    private static readonly bool[] Sides = [false, true];
    private const int ListLeast = 34, MapLeast = 22, BothFrom = 100, OneFrom = 62;

    public static void Draw(Sheet sheet, int top, int rows, OilingModel model, Shell shell)
    {
        IReadOnlyList<PointView> points = model.Points;
        int y = Next(sheet, top, model, shell, points) + 1, end = top + rows - 1;
        Legend(sheet, end, points);
        int x = y < end ? Maps(sheet, y, end - y, model, points) : 1;
        List(sheet, x, y, end - y, model.At(points), points);
    }

    private static int Next(Sheet sheet, int y, OilingModel model, Shell shell, IReadOnlyList<PointView> points)
    {
        int width = sheet.Width - 2;
        Offer offer = model.Run.Offer;
        if (model.Question is not { } ask)
        {
            int left = points.Count(p => p.Stand == PointStand.ToCome);
            string next = OfferWords.Next(offer);
            return Lines(sheet, y, $"{(left == 0 ? "No point is left to serve." : $"{Times.Count(left, "point")} to come.")}{(next.Length > 0 ? $" At hand: {next}." : "")}", Ink.Plain, width);
        }
        string number = ask is Ask.Oil at ? $"{points.First(p => p.Line.Id == at.Point.Id.Value).Line.Number} " : "";
        y = Lines(sheet, y, $"{PointView.Mark(PointStand.Next)} {number}{AskWords.Question(ask)}", Ink.Title, width);
        if (ask is Ask.Oil oil)
        {
            Circumstances circumstances = shell.Session.Circumstances(model.Run.Job);
            y = Lines(sheet, y, OilWords.Serving(oil.Point, model.Run.Job.Plan, circumstances), Ink.Strong, width);
            foreach (PointConcern concern in model.Run.Concerns) y = Lines(sheet, y, $"Mind: {OilWords.Concern(concern, circumstances.BenchCelsius)}.", Ink.Caution, width);
        }
        else
        {
            int x = 3;
            for (int i = 0; i < ask.Choices.Count; i++) x = sheet.Write(sheet.Write(x, y, $"{i + 1}", Ink.Key) + 1, y, ask.Choices[i], Ink.Strong) + 3;
            y++;
        }
        foreach (Blocker blocker in model.Run.Against) y = Lines(sheet, y, $"Not yet: {RejectionWords.Sentence(blocker, model.Run.Job.Plan)}.", Ink.Caution, width);
        return y;
    }

    private static int Lines(Sheet sheet, int y, string text, Ink ink, int width)
    {
        foreach (string line in Paragraph.Wrap(text, width)) sheet.Write(1, y++, line, ink);
        return y;
    }

    private static void Legend(Sheet sheet, int y, IReadOnlyList<PointView> points)
    {
        int x = 1;
        foreach (PointStand stand in points.Select(p => p.Stand).Distinct().Order())
        {
            string words = PointView.Words(stand);
            if (x + words.Length + 2 >= sheet.Width) return;
            x = sheet.Write(x, y, PointView.Mark(stand), PointView.Ink(stand));
            x = sheet.Write(x + 1, y, words, Ink.Faint) + 3;
        }
    }

    // The column after the maps.
    private static int Maps(Sheet sheet, int y, int rows, OilingModel model, IReadOnlyList<PointView> points)
    {
        if (model.Run.Job.Plan.Maps is not [var map, ..] || sheet.Width < OneFrom || rows < 6) return 1;
        HashSet<string> on = [.. map.Points.Select(p => p.Id.Value)];
        List<PointView> drawn = [.. points.Where(p => on.Contains(p.Line.Id))];
        List<bool> sides = [.. Sides.Where(dial => drawn.Any(p => p.Point!.On!.DialSide == dial))];
        if (sheet.Width < BothFrom && sides.Count > 1) sides = [model.DialSide(points)];
        int wide = Math.Clamp((sheet.Width - ListLeast - 2) / sides.Count - 2, MapLeast, Math.Max(MapLeast, MovementMap.ColumnsFor(map.Size, rows)));
        int x = 1;
        foreach (bool dial in sides)
        {
            MovementMap.Draw(sheet, x, y, wide, Math.Min(rows, MovementMap.RowsFor(map.Size, wide)), map.Size, dial, [.. drawn.Where(p => p.Point!.On!.DialSide == dial)]);
            x += wide + 2;
        }
        return x;
    }

    private static void List(Sheet sheet, int x, int y, int rows, int at, IReadOnlyList<PointView> points)
    {
        int width = sheet.Width - x - 1, tall = width >= 72 ? 1 : 2, shown = Math.Max(1, rows / tall);
        if (rows < 1) return;
        int first = Math.Max(0, Math.Min(at - shown / 2, points.Count - shown));
        for (int i = first; i < Math.Min(points.Count, first + shown); i++)
        {
            PointView point = points[i];
            int line = y + (i - first) * tall;
            Ink ink = PointView.Ink(point.Stand);
            sheet.Write(x, line, i == at ? "›" : " ", Ink.Key);
            sheet.Write(x + 1, line, PointView.Mark(point.Stand), ink);
            sheet.Write(x + 2, line, $"{point.Line.Number}".PadRight(3), ink);
            int name = tall == 1 ? width / 2 - 5 : width - 5;
            sheet.Write(x + 5, line, Paragraph.Clip(point.Line.Name, name), i == at || point.Stand == PointStand.Next ? Ink.Strong : Ink.Plain);
            if (tall == 1) sheet.Write(x + width / 2 + 1, line, Paragraph.Clip(point.Detail, width - width / 2 - 1), Ink.Faint);
            else sheet.Write(x + 5, line + 1, Paragraph.Clip(point.Detail, width - 5), Ink.Faint);
        }
    }
}
