using ServiceRunner.Core.Jobs;
using ServiceRunner.Core.Quantities;
using ServiceRunner.Files.Sentences;
using ServiceRunner.Screens;
using ServiceRunner.Screens.Alarms;
using ServiceRunner.Screens.Baths;
using ServiceRunner.Session;

namespace ServiceRunner.Lines;

/// <summary>Clocks in words that can be heard: a length as hours, minutes and seconds.</summary>
internal static class ClockLines
{
    /// <summary>Each clock that runs, the most urgent first.</summary>
    public static IEnumerable<Telling> Of(Shell shell) => Screens.Large.LargeClocks.ByUrgency(shell).Select(c => One(c, shell));

    /// <summary>A clock: what is in it, for how long, and where that stands.</summary>
    public static Telling One((OpenJob Job, Soak Soak) clock, Shell shell)
    {
        Moment now = shell.Session.Now;
        Elapsed length = clock.Soak.Length(now);
        Standing standing = clock.Soak.Standing(now);
        string name = $"{JobWords.Clock(clock.Soak.Begun, shell.Session.Workshop)}, {clock.Job.State.Number}";
        string text = $"{name}: {Times.Clock(length.Length)}, {JobWords.Of(standing, clock.Soak.Window, length.Length)}{(length.Certain ? "" : $"; {BathsPage.Doubt}")}";
        return new(SpokenWords.Of(text), $"{name} {standing}");
    }

    /// <summary>An alarm, and what answers it; of a clock that may come out only that.</summary>
    public static string Alarm(OpenAlarm alarm, Shell shell)
    {
        string words = SpokenWords.Of(shell.Alarms.Words(alarm, shell.Session.Now));
        return alarm.Urgency == Urgency.Low ? LineText.Sentence(words) : $"Alarm: {LineText.Sentence(words)} The word answer answers it.";
    }
}
