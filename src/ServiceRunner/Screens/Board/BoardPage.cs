using ServiceRunner.Files.Index;
using ServiceRunner.Files.Sentences;
using ServiceRunner.Screens.Baths;

namespace ServiceRunner.Screens.Board;

/// <summary>Draws the jobs as a list, two lines each where there is room, and the clocks below.</summary>
internal static class BoardPage
{
    public static void Draw(Sheet sheet, int top, int rows, BoardModel model, Shell shell)
    {
        var clocks = shell.Session.RunningSoaks().ToList();
        int clockRows = clocks.Count == 0 ? 0 : Math.Min(clocks.Count, Math.Max(1, rows / 4)) + 2;
        IReadOnlyList<SubjectRow> jobs = model.Rows;
        if (model.Search.Length > 0) sheet.Write(1, top, $"Containing '{model.Search}':", Ink.Faint);
        if (jobs.Count == 0)
        {
            sheet.Write(1, top + 1, model.Search.Length > 0 ? "Nothing." : "No job yet.", Ink.Strong);
            if (model.Search.Length == 0) sheet.Write(1, top + 2, "n books one in.", Ink.Faint);
        }
        int room = rows - clockRows - 1, tall = jobs.Count * 2 <= room ? 2 : 1, shown = Math.Max(1, room / tall);
        int at = Math.Clamp(model.At, 0, Math.Max(0, jobs.Count - 1)), first = Math.Max(0, Math.Min(at - shown / 2, jobs.Count - shown));
        for (int i = first; i < Math.Min(jobs.Count, first + shown); i++) Job(sheet, top + 1 + (i - first) * tall, tall, jobs[i], i == at, model, shell);
        if (jobs.Count > shown) sheet.Write(sheet.Width - 22, top, $"{at + 1} of {jobs.Count}".PadLeft(20), Ink.Faint);
        if (clocks.Count == 0) return;
        int y = top + rows - clockRows + 1;
        sheet.Write(1, y - 1, "Clocks", Ink.Faint);
        for (int i = 0; i < Math.Min(clocks.Count, clockRows - 2); i++) BathsPage.Line(sheet, y + i, clocks[i], shell, shell.Session.Now);
        if (clocks.Count > clockRows - 2) sheet.Write(11, y + clockRows - 2, $"and {clocks.Count - clockRows + 2} more: F4", Ink.Faint);
    }

    private static void Job(Sheet sheet, int y, int tall, SubjectRow row, bool marked, BoardModel model, Shell shell)
    {
        bool wide = sheet.Width >= 100;
        int stands = sheet.Width - (wide ? 52 : 36);
        sheet.Write(1, y, marked ? "›" : " ", Ink.Key);
        sheet.Write(3, y, Paragraph.Clip(row.Number, 10), marked ? Ink.Strong : Ink.Plain);
        string owner = model.OwnerOf(row);
        sheet.Write(14, y, Paragraph.Clip(owner.Length > 0 ? $"{row.Title} ({owner})" : row.Title, stands - 15), marked ? Ink.Strong : Ink.Plain);
        string since = row.State == "on the bench" ? $"{row.Done} of {row.Total} steps" : Times.For(shell.Session.Now.Wall - row.Since);
        int x = sheet.Write(stands, y, row.State, row.State.StartsWith("waiting", StringComparison.Ordinal) ? Ink.Caution : row.State == "ready" ? Ink.Good : Ink.Plain);
        sheet.Write(x + 2, y, Paragraph.Clip(since, sheet.Width - x - 3), Ink.Faint);
        if (tall == 2) sheet.Write(14, y + 1, Paragraph.Clip(row.State == "on the bench" && row.Waiting.Length > 0 ? $"next: {row.Waiting}" : row.Waiting, sheet.Width - 15), Ink.Faint);
    }
}
