using ServiceRunner.Core.Jobs;
using ServiceRunner.Core.Procedures;
using ServiceRunner.Core.Workshops;
using ServiceRunner.Files.Sentences;
using ServiceRunner.Lines;

namespace ServiceRunner.Screens.Parts;

/// <summary>
/// Draws the tray, below it the marked part's life, then the screw seats; the seats stand beside both where the sheet is
/// wide. A tray that is too high scrolls with the mark, and says that more follows.
/// </summary>
internal static class PartsPage
{
    private const int Beside = 110, Left = 73, LeastTray = 3, LeastSeats = 3;

    private static readonly PartStanding[] Legend = Enum.GetValues<PartStanding>();

    private sealed record Line(string Before, string Text, Ink Ink);

    /// <summary>The columns that the tray has on a sheet of this width.</summary>
    public static int TrayWidth(int width) => width >= Beside ? Left : width - 2;

    public static void Draw(Sheet sheet, int top, int rows, PartsModel model, Shell shell, IReadOnlyList<TrayRow> tray)
    {
        Job job = model.Job.State;
        Plan plan = model.Job.Plan;
        int width = TrayWidth(sheet.Width), end = top + rows;
        bool beside = sheet.Width >= Beside;
        sheet.Write(1, top, Paragraph.Clip(Summary(model, job, plan), sheet.Width - 2), model.Typed.Length > 0 ? Ink.Strong : Ink.Faint);
        if (model.Marked.Length == 0)
        {
            sheet.Write(1, top + 2, "No procedure of this job names a part. + adds one.", Ink.Strong);
            return;
        }
        IReadOnlyList<(int X, string Text, Ink Ink)[]> life = Broken(Life(model, job, plan, shell.Session.Workshop), width);
        IReadOnlyList<string> legend = Paragraph.Wrap(Signs(job, plan), width);
        int room = rows - 1 - legend.Count - 1;
        int trayRows = Math.Min(tray.Count, Math.Max(LeastTray, room - life.Count));
        int y = top + 1;
        Tray(sheet, y, trayRows, tray, model.Marked);
        y += trayRows;
        foreach (string line in legend) sheet.Write(1, y++, line.Replace('\u00a0', ' '), Ink.Faint);
        y++;
        foreach ((int X, string Text, Ink Ink)[] row in life.Take(end - y))
        {
            foreach ((int x, string text, Ink ink) in row) sheet.Write(1 + x, y, text, ink);
            y++;
        }
        if (beside) Seats(sheet, Left + 3, top + 1, end, sheet.Width - Left - 4, job, plan, model.Marked);
        else if (end - y > LeastSeats) Seats(sheet, 1, y + 1, end, width, job, plan, model.Marked);
    }

    private static string Summary(PartsModel model, Job job, Plan plan)
    {
        if (model.Typed.Length > 0) return $"Looking for '{model.Typed}': {Times.Count(model.Found.Count, "part")}{(model.Found.Count > 1 ? "; Tab marks the next" : "")}.";
        int off = plan.Parts.Count(p => !job.PlaceOf(p.Id).IsOn);
        string jewels = PartWords.Jewels(job, plan);
        return $"{off} of {Times.Count(plan.Parts.Count, "part")} off the movement.{(jewels.Length > 0 ? $" {jewels}." : "")}";
    }

    /// <summary>The marked part's life, line by line.</summary>
    public static IEnumerable<Telling> Sentences(PartsModel model, Shell shell)
    {
        yield return Summary(model, model.Job.State, model.Job.Plan);
        if (model.Marked.Length == 0) yield break;
        foreach (Line line in Life(model, model.Job.State, model.Job.Plan, shell.Session.Workshop)) yield return $"{line.Before}{line.Text}";
    }

    private static void Tray(Sheet sheet, int y, int rows, IReadOnlyList<TrayRow> tray, string marked)
    {
        int at = Math.Max(0, tray.ToList().FindIndex(r => r.Cells.Any(c => c.Part == marked)));
        bool all = tray.Count <= rows;
        int first = all ? 0 : Math.Clamp(at - rows / 2, 0, tray.Count - rows);
        for (int i = 0; i < rows; i++)
        {
            int row = first + i;
            // The outermost rows say how much is beyond them, unless the mark is there.
            int before = first + 1, after = tray.Count - first - rows + 1;
            if (!all && i == 0 && first > 0 && row != at) sheet.Write(1, y, $"… {Times.Count(before, "row")} above", Ink.Faint);
            else if (!all && i == rows - 1 && row < tray.Count - 1 && row != at) sheet.Write(1, y + i, $"… {Times.Count(after, "row")} more below", Ink.Faint);
            else Row(sheet, y + i, tray[row], marked);
        }
    }

    private static void Row(Sheet sheet, int y, TrayRow row, string marked)
    {
        sheet.Write(1, y, row.Cells.Count == 0 ? row.Label : row.Label.PadLeft(3), Ink.Faint);
        foreach (TrayCell cell in row.Cells)
        {
            bool here = cell.Part == marked && marked.Length > 0;
            int x = sheet.Write(cell.X, y, cell.Text, here ? Ink.Strong : InkOf(cell.Standing));
            if (here)
            {
                sheet.Write(cell.X - 1, y, "[", Ink.Key);
                sheet.Write(x, y, "]", Ink.Key);
            }
            if (cell.Detail.Length > 0) sheet.Write(x + 2, y, Paragraph.Clip(cell.Detail, Math.Max(0, TrayWidth(sheet.Width) - x - 2)), Ink.Faint);
        }
    }

    private static Ink InkOf(PartStanding standing) => standing switch
    {
        PartStanding.Lost => Ink.Alarm,
        PartStanding.SetAside or PartStanding.SentOut or PartStanding.InRepair or PartStanding.Wet => Ink.Caution,
        PartStanding.InBasket => Ink.Clock,
        PartStanding.Fitted => Ink.Good,
        PartStanding.NotYetOff => Ink.Faint,
        _ => Ink.Plain,
    };

    // Only the signs that stand in the picture, each with how many there are.
    private static string Signs(Job job, Plan plan)
    {
        Dictionary<PartStanding, int> counts = plan.Parts.GroupBy(p => job.StandingOf(plan, p.Id)).ToDictionary(g => g.Key, g => g.Count());
        return string.Join(' ', Legend.Where(counts.ContainsKey).Select(s => $"{TrayPicture.Sign(s)}\u00a0{PartWords.Of(s).Replace(' ', '\u00a0')}\u00a0{counts[s]}\u00a0"));
    }

    private static IEnumerable<Line> Life(PartsModel model, Job job, Plan plan, Workshop workshop)
    {
        string id = model.Marked;
        Part? part = plan.Part(id);
        List<string> about = [];
        if (part is { Compartment.Length: > 0 }) about.Add(JobWords.Compartment(part.Compartment));
        if (part is { Count: > 1 }) about.Add($"{part.Count} of them");
        if (part is { Jewels: > 0 }) about.Add(Times.Count(part.Jewels, "jewel"));
        if (part?.Seat is { } seat) about.Add($"holds {plan.NameOf(seat)}");
        yield return new Line("", $"{plan.NameOf(id)}{(about.Count > 0 ? $" ({string.Join(", ", about)})" : "")}", Ink.Title);
        yield return new Line("It is: ", PartWords.Where(job, plan, workshop, id), Ink.Plain);
        if (PartsLedger.LeftOutOf(job, plan, id) is { Count: > 0 } missed) yield return new Line("Left out of: ", string.Join(", ", missed.Select(s => $"'{plan.Find(s.Key)?.Step.Do ?? s.Step}'")), Ink.Caution);
        yield return new Line("Care: ", PartWords.Care(job, plan, id), Ink.Plain);
        List<string> next = [.. PartWords.Next(job, plan, id)];
        yield return new Line("Next: ", next.Count == 0 ? "no step moves it any more" : $"{string.Join("; ", next.Take(3))}{(next.Count > 3 ? $"; and {next.Count - 3} more" : "")}", Ink.Plain);
        foreach (FindingEntry finding in FindingsLedger.Of(job, plan).Where(f => f.Noted.Event.Part == id))
            yield return new Line("Finding: ", $"{finding.Noted.Event.What} ({JobWords.Of(finding.Weight)}, {JobWords.Of(finding.Sure)}): {JobWords.Of(finding)}", finding.IsSettled ? Ink.Plain : Ink.Caution);
        if (plan.HoldersOf(id).Any() && ScrewSeats.Of(job, plan, id) is [var seats, ..]) yield return new Line("Screws: ", seats.Text, Ink.Plain);
        yield return new Line("Piece: ", PartWords.Piece(job, id), Ink.Plain);
    }

    private static IReadOnlyList<(int X, string Text, Ink Ink)[]> Broken(IEnumerable<Line> lines, int width)
    {
        List<(int X, string Text, Ink Ink)[]> rows = [];
        foreach (Line line in lines)
        {
            int indent = Sheet.Columns(line.Before);
            // Behind a long name the text would stand in a column of single words.
            if (indent > width / 3) rows.AddRange(Paragraph.Wrap(line.Before + line.Text, width - 2).Select((text, i) => new[] { (i == 0 ? 0 : 2, text, line.Ink) }));
            else rows.AddRange(Paragraph.Wrap(line.Text, width - indent).Select((text, i) => i == 0 ? new[] { (0, line.Before, Ink.Faint), (indent, text, line.Ink) } : [(indent, text, line.Ink)]));
        }
        return rows;
    }

    private static void Seats(Sheet sheet, int x, int y, int end, int width, Job job, Plan plan, string marked)
    {
        IReadOnlyList<(string Before, string Text)> seats = ScrewSeats.Of(job, plan, marked);
        if (seats.Count == 0 || y >= end) return;
        sheet.Write(x, y++, "Screw seats", Ink.Faint);
        IReadOnlyList<(int X, string Text, Ink Ink)[]> rows = Broken(seats.Select(s => new Line(s.Before, s.Text, Ink.Plain)), width);
        int room = rows.Count <= end - y ? rows.Count : end - y - 1;
        foreach ((int X, string Text, Ink Ink)[] row in rows.Take(room))
        {
            foreach ((int dx, string text, Ink ink) in row) sheet.Write(x + dx, y, text, ink);
            y++;
        }
        if (room < rows.Count) sheet.Write(x, y, Paragraph.Clip($"… {Times.Count(rows.Count - room, "row")} more", width), Ink.Faint);
    }
}
