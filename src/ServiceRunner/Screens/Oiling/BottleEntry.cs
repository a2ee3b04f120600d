using ServiceRunner.Core.Lubricants;
using ServiceRunner.Core.Workshops;
using ServiceRunner.Files.Sentences;

namespace ServiceRunner.Screens.Oiling;

/// <summary>Asks for a bottle: its batch, the day it was opened, its last day. Dates that are not known are left empty.</summary>
internal static class BottleEntry
{
    /// <param name="shell">The shell.</param>
    /// <param name="lubricant">Of what.</param>
    /// <param name="known">The bottle whose dates are to be put right; null for a new one.</param>
    /// <param name="take">Takes it; a sentence if it cannot be taken, else empty.</param>
    public static void Ask(Shell shell, Lubricant lubricant, Bottle? known, Func<Bottle, string> take)
    {
        if (known is not null) shell.Ask(Opened(shell, lubricant, known, take));
        else shell.Ask(Prompt.Words($"Which bottle of {lubricant.Name}?", "The batch as it stands on the bottle.", batch =>
            shell.AskNext(Opened(shell, lubricant, new Bottle(lubricant.Id, batch, null, null), take))));
    }

    private static Prompt Opened(Shell shell, Lubricant lubricant, Bottle bottle, Func<Bottle, string> take) =>
        new($"{bottle.Batch}: opened on which day?", "As 2026-03-02, 2 Mar 2026 or 2 Mar; empty if not known.", Shown(bottle.OpenedOn), text =>
            DayText.Read(text, Today(shell), ahead: false, out DateOnly? day) is { Length: > 0 } no ? no
            : day > Today(shell) ? $"{OilWords.Day(day.Value)} has not come yet; when was it opened?"
            : shell.AskNext(GoodUntil(shell, lubricant, bottle with { OpenedOn = day }, take)));

    private static Prompt GoodUntil(Shell shell, Lubricant lubricant, Bottle bottle, Func<Bottle, string> take)
    {
        string otherwise = (bottle with { GoodUntil = null }).LastDay(lubricant) is { } last ? $"empty: {OilWords.Day(last)}, counted from its opening" : "empty if not known";
        return new($"{bottle.Batch}: good until which day?", $"As 2028-03-31 or Mar 2028; {otherwise}.", Shown(bottle.GoodUntil), text =>
            DayText.Read(text, Today(shell), ahead: true, out DateOnly? day) is { Length: > 0 } no ? no : take(bottle with { GoodUntil = day }));
    }

    private static string Shown(DateOnly? day) => day is { } d ? d.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture) : "";

    private static DateOnly Today(Shell shell) => shell.Session.Now.Day;
}
