using ServiceRunner.Core.Jobs;
using ServiceRunner.Files.Sentences;

namespace ServiceRunner.Screens.Findings;

/// <summary>Draws the findings as a list, and all about the marked one below it.</summary>
internal static class FindingsPage
{
    public static void Draw(Sheet sheet, int top, int rows, FindingsModel model, Shell shell)
    {
        IReadOnlyList<FindingEntry> entries = model.Entries;
        if (entries.Count == 0)
        {
            sheet.Write(1, top + 1, "Nothing was found yet.", Ink.Strong);
            sheet.Write(1, top + 2, "What a step's look shows comes here by itself; n notes anything else.", Ink.Faint);
            return;
        }
        int undecided = entries.Count(f => f.Standing == FindingStanding.Undecided), waiting = model.Waits.Waiting.Count;
        string head = $"{Times.Count(entries.Count, "finding")}, {(undecided == 0 ? "all decided" : $"{undecided} to be decided")}.{(waiting > 0 ? $" {FindingWords.Counts(waiting, model.Waits.Free)}" : "")}";
        sheet.Write(1, top, Paragraph.Clip(head, sheet.Width - 2), undecided > 0 || waiting > 0 ? Ink.Caution : Ink.Faint);
        List<(string Text, Ink Ink)> detail = Detail(model, shell, sheet.Width - 4);
        int list = Math.Clamp(entries.Count, 1, Math.Max(3, rows - 2 - Math.Min(detail.Count, rows / 2)));
        int first = Math.Max(0, Math.Min(model.At - list / 2, entries.Count - list));
        for (int i = first; i < Math.Min(entries.Count, first + list); i++) Line(sheet, top + 1 + i - first, entries[i], i == model.At, model);
        if (entries.Count > list) sheet.Write(sheet.Width - 22, top, $"{model.At + 1} of {entries.Count}".PadLeft(20), Ink.Faint);
        int y = top + 2 + list;
        for (int i = 0; i < detail.Count && y < top + rows; i++, y++)
            sheet.Write(2, y, y == top + rows - 1 && i < detail.Count - 1 ? "…" : detail[i].Text, detail[i].Ink);
    }

    private static void Line(Sheet sheet, int y, FindingEntry finding, bool marked, FindingsModel model)
    {
        int stands = sheet.Width - (sheet.Width >= 100 ? 52 : 34);
        sheet.Write(1, y, marked ? "›" : " ", Ink.Key);
        sheet.Write(3, y, finding.IsSettled ? "✓" : finding.Weight == Weight.StopsTheWork ? "▲" : "•", finding.IsSettled ? Ink.Good : Ink.Caution);
        sheet.Write(5, y, Paragraph.Clip(model.Words(finding), stands - 6), marked ? Ink.Strong : finding.IsSettled ? Ink.Faint : Ink.Plain);
        sheet.Write(stands, y, Paragraph.Clip(JobWords.Of(finding), sheet.Width - stands - 1), finding.IsSettled ? Ink.Faint : Ink.Plain);
    }

    private static List<(string Text, Ink Ink)> Detail(FindingsModel model, Shell shell, int width)
    {
        if (model.Marked is not { } finding) return [];
        List<(string Text, Ink Ink)> lines = [];
        void Add(string text, Ink ink = Ink.Plain) => lines.AddRange(Paragraph.Wrap(text, width).Select(l => (l, ink)));
        Add(model.Words(finding), Ink.Title);
        foreach (string line in FindingWords.Detail(finding, model.Job.State, model.Job.Plan, shell.Session.Workshop.Currency, shell.Session.Now.Wall)) Add(line);
        if (finding.Repairs.Count == 0 && !finding.IsSettled && model.SuggestedTitle.Length > 0) Add($"The step where it was seen names a repair: {model.SuggestedTitle}.");
        List<WaitingStep> waiting = [.. model.Waits.Waiting.Where(w => IsOf(w.Because, finding))];
        if (waiting.Count > 0) Add($"Waits for it: {Times.List(waiting.Take(6).Select(w => $"'{w.Step.Step.Do}'"))}{(waiting.Count > 6 ? $", and {waiting.Count - 6} more" : "")}.", Ink.Caution);
        return lines;
    }

    private static bool IsOf(Blocker because, FindingEntry finding) => because switch
    {
        Blocker.FindingStops x => x.Finding == finding.Id,
        Blocker.NoConsent x => x.Finding == finding.Id,
        Blocker.RepairFirst x => finding.Repairs.Any(r => r.Instance == x.Instance),
        _ => false,
    };
}
