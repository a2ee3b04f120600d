using System.Globalization;
using ServiceRunner.Core.Benches;
using ServiceRunner.Core.Lubricants;
using ServiceRunner.Files.Sentences;

namespace ServiceRunner.Screens.Stock;

/// <summary>Draws each lubricant with what is stated of it, and a line for each of its bottles.</summary>
internal static class StockPage
{
    public static void Draw(Sheet sheet, int top, int rows, StockModel model, Shell shell)
    {
        (decimal? celsius, bool today) = model.Temperature;
        string bench = celsius is { } c ? string.Create(CultureInfo.InvariantCulture, $"At the bench: {c} °C, {(today ? "read today" : "as usual")}.") : "The temperature at the bench is not stated: t states today's.";
        sheet.Write(1, top, Paragraph.Clip(bench, sheet.Width - 2), Ink.Faint);
        IReadOnlyList<StockLine> lines = model.Rows;
        if (lines.Count == 0)
        {
            sheet.Write(1, top + 2, "No lubricants.", Ink.Strong);
            sheet.Write(1, top + 3, "The workshop file names them, under 'lubricants'.", Ink.Faint);
            return;
        }
        int at = Math.Clamp(model.At, 0, lines.Count - 1);
        List<(int Line, Action<int> Draw)> drawn = [];
        for (int i = 0; i < lines.Count; i++)
        {
            StockLine line = lines[i];
            bool marked = i == at;
            if (line.Bottle is { } bottle) drawn.Add((i, y => BottleRow(sheet, y, line, bottle, marked, shell)));
            else
            {
                if (drawn.Count > 0) drawn.Add((i, _ => { }));
                drawn.Add((i, y => LubricantRow(sheet, y, line, marked)));
                if (OilWords.AtBench(line.Lubricant, celsius) is { Length: > 0 } here) drawn.Add((i, y => sheet.Write(5, y, Paragraph.Clip(here, sheet.Width - 6), Ink.Faint)));
                if (!shell.Session.Bench.BottlesOf(line.Lubricant.Id).Any()) drawn.Add((i, y => sheet.Write(5, y, "no bottle stated: n names one", Ink.Caution)));
            }
        }
        int room = Math.Max(1, rows - 2), last = drawn.FindLastIndex(d => d.Line == at);
        int first = Math.Clamp(last - room / 2, 0, Math.Max(0, drawn.Count - room));
        for (int i = first; i < Math.Min(drawn.Count, first + room); i++) drawn[i].Draw(top + 2 + i - first);
    }

    private static void LubricantRow(Sheet sheet, int y, StockLine line, bool marked)
    {
        sheet.Write(1, y, marked ? "›" : " ", Ink.Key);
        int x = sheet.Write(3, y, Paragraph.Clip(line.Lubricant.Name, 28), Ink.Strong);
        string rest = $"{OilWords.Class(line.Lubricant)}; for {Times.List(line.Lubricant.Roles.Select(r => JobWords.Role(r)))}";
        sheet.Write(x + 2, y, Paragraph.Clip(rest, sheet.Width - x - 3));
    }

    private static void BottleRow(Sheet sheet, int y, StockLine line, Bottle bottle, bool marked, Shell shell)
    {
        DateOnly today = shell.Session.Now.Day;
        BottleStanding standing = bottle.Standing(line.Lubricant, today);
        sheet.Write(1, y, marked ? "›" : " ", Ink.Key);
        sheet.Write(5, y, shell.Session.Bench.IsInUse(bottle) ? "in use" : "", Ink.Good);
        sheet.Write(13, y, Paragraph.Clip(bottle.Batch, 14), marked ? Ink.Strong : Ink.Plain);
        string words = OilWords.Standing(bottle, line.Lubricant, today);
        int x = sheet.Write(28, y, Paragraph.Clip(words, sheet.Width - 30), standing == BottleStanding.Past ? Ink.Alarm : Ink.Caution);
        sheet.Write(words.Length > 0 ? x + 2 : 28, y, Paragraph.Clip(OilWords.Dates(bottle, line.Lubricant), sheet.Width - (words.Length > 0 ? x + 2 : 28) - 1), Ink.Faint);
    }
}
