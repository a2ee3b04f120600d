using ServiceRunner.Core.Jobs;
using ServiceRunner.Files.Sentences;
using ServiceRunner.Files.Yaml;
using ServiceRunner.Session;

namespace ServiceRunner.Screens.Baths;

/// <summary>Asks how much more time a clock gets.</summary>
internal static class ClockTime
{
    public static void Ask(Shell shell, OpenJob job, Soak soak) => shell.Ask(new Prompt(
        $"How much more for {JobWords.Clock(soak.Begun, shell.Session.Workshop)}?",
        "As: 2 min, or 30 s. Its most stays where it is.",
        "1 min",
        text =>
        {
            if (!DurationText.TryRead(text.Trim(), out TimeSpan more)) return $"'{text.Trim()}' is not a length of time; type 2 min or 30 s.";
            ActOutcome outcome = shell.Session.Act(job, new JobAction.LengthenSoak(soak.Begun.Step, more));
            if (!outcome.IsDone) return outcome.Sentence(job.Plan, shell.Session.Folder.Path);
            shell.Say($"{JobWords.Clock(soak.Begun, shell.Session.Workshop)} has {Times.Length(more)} more.");
            return "";
        }));
}
