using ServiceRunner.Core.Jobs;
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
        if (Heading(model) is { Length: > 0 } heading) sheet.Write(1, top, heading, Ink.Faint);
        if (jobs.Count == 0)
        {
            sheet.Write(1, top + 1, model.Search.Length > 0 ? Paragraph.Clip(model.Nothing, sheet.Width - 2) : "No job yet.", Ink.Strong);
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

    private static string Heading(BoardModel model) => (model.All, model.Search.Length > 0) switch
    {
        (true, true) => $"Of all years, containing '{model.Search}':",
        (true, false) => "Of all years, the latest first:",
        (false, true) => $"Containing '{model.Search}' (y looks through all years):",
        _ => "",
    };

    private static void Job(Sheet sheet, int y, int tall, SubjectRow row, bool marked, BoardModel model, Shell shell)
    {
        bool wide = sheet.Width >= 100;
        int stands = sheet.Width - (wide ? 52 : 36);
        sheet.Write(1, y, marked ? "›" : " ", Ink.Key);
        sheet.Write(3, y, Paragraph.Clip(row.Number, 10), marked ? Ink.Strong : Ink.Plain);
        string owner = model.OwnerOf(row);
        sheet.Write(14, y, Paragraph.Clip(owner.Length > 0 ? $"{row.Title} ({owner})" : row.Title, stands - 15), marked ? Ink.Strong : Ink.Plain);
        DateTimeOffset now = shell.Session.Now.Wall;
        DateOnly today = DateOnly.FromDateTime(now.Date);
        int end = sheet.Width - 1;
        if (row.Open && row.Promised is { } promised)
        {
            string text = tall == 2 ? IntakeWords.Promised(promised, today) : IntakeWords.PromisedBriefly(promised, today);
            int x0 = end - Sheet.Columns(text);
            sheet.Write(x0, y + tall - 1, text, Promise.Standing(promised, today) is PromiseStanding.Ahead ? Ink.Faint : Ink.Caution);
            end = x0 - 2;
        }
        bool due = row.Until <= today;
        string since = row.Until is { } until ? $"{(due ? "▲ due" : "until")} {Days.Short(until, today)}" : model.All && !row.Open ? Days.Short(DateOnly.FromDateTime(row.Since.ToOffset(now.Offset).Date), today) : row.State == "on the bench" ? $"{row.Done} of {row.Total} steps" : Times.For(now - row.Since);
        int x = sheet.Write(stands, y, row.State, row.State.StartsWith("waiting", StringComparison.Ordinal) ? Ink.Caution : row.State == "ready" ? Ink.Good : Ink.Plain);
        int room = (tall == 2 ? sheet.Width - 1 : end) - x - 2;
        // Beside a promised day half a length of time says nothing.
        if (room >= Sheet.Columns(since) || end == sheet.Width - 1 || tall == 2) sheet.Write(x + 2, y, Paragraph.Clip(since, room), due ? Ink.Alarm : Ink.Faint);
        if (tall == 2) sheet.Write(14, y + 1, Paragraph.Clip(row.State == "on the bench" && row.Waiting.Length > 0 ? $"next: {row.Waiting}" : row.Waiting, end - 14), Ink.Faint);
    }
}
