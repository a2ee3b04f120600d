using ServiceRunner.Core.Jobs;
using ServiceRunner.Files.Sentences;
using ServiceRunner.Screens.Run;
using ServiceRunner.Session;

namespace ServiceRunner.Screens;

/// <summary>What fits below 40×10: the act at hand, the clocks, the message. Going on and looking back still work.</summary>
internal static class SmallPage
{
    public static void Draw(Sheet sheet, Shell shell)
    {
        List<(string Text, Ink Ink)> lines = [];
        if (shell.Open is { } prompt) lines.Add((prompt.Label, Ink.Strong));
        if (shell.Alarms.Open(shell.Session.Now) is [var alarm, ..]) lines.Add(($"▲ {shell.Alarms.Words(alarm, shell.Session.Now)}", Ink.Alarm));
        if (shell.Shown() is { Length: > 0 } message) lines.Add((message, Ink.Caution));
        if (shell.Screen is RunModel { Shown.Step.Cautions: { Count: > 0 } cautions }) lines.Add(($"▲ {string.Join(", ", cautions.Select(c => Cautions.Short(c)))}", Ink.Caution));
        if (shell.Screen is RunModel run) lines.Add((run.Shown?.Step.Do ?? OfferWords.Next(run.Offer), Ink.Strong));
        else lines.Add((shell.Screen.Name, Ink.Strong));
        foreach ((OpenJob job, Soak soak) in shell.Session.RunningSoaks())
            lines.Add(($"{Times.Clock(soak.Length(shell.Session.Now).Length)} {job.State.Number}", Ink.Clock));
        if (shell.Screen is not RunModel) lines.Add(("Too small: 40×10 or more shows all.", Ink.Faint));
        int y = 0;
        foreach ((string text, Ink ink) in lines)
            foreach (string line in Paragraph.Wrap(text, sheet.Width))
                sheet.Write(0, y++, line, ink);
    }
}
