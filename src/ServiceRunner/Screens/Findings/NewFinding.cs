using ServiceRunner.Core.Jobs;
using ServiceRunner.Core.Procedures;
using ServiceRunner.Files.Sentences;
using ServiceRunner.Screens.Pick;

namespace ServiceRunner.Screens.Findings;

/// <summary>Asks for a finding: where, what, how much it weighs, how sure it is.</summary>
internal static class NewFinding
{
    /// <summary>Asks for all of it; a part that is known already is not asked for.</summary>
    public static void Ask(Shell shell, JobScreen screen, string part)
    {
        if (part.Length > 0)
        {
            AskWhat(shell, screen, part);
            return;
        }
        shell.Choose("Where is it?",
        [
            new Choice("A place that is no part, or of another name", "type it", () => shell.Ask(Prompt.Words("Where is it?", "As: dial side, under the keyless cover.", spot => AskAtPlace(shell, screen, spot)))),
            .. AtHandFirst(screen).Select(p => new Choice(p.Name, JobWords.Of(screen.Job.State.PlaceOf(p.Id)), () => AskWhat(shell, screen, p.Id))),
        ]);
    }

    /// <summary>Asks for a weight, then for how sure it is.</summary>
    public static void AskWeight(Shell shell, string what, Action<Weight, Sureness> take) => shell.Choose($"{what}: how much does it weigh?",
    [
        new Choice("It belongs to the service", "it must be decided before the job closes", () => AskSure(shell, what, s => take(Weight.Service, s))),
        new Choice("It stops the work", "nothing goes on over it until it is decided", () => AskSure(shell, what, s => take(Weight.StopsTheWork, s))),
        new Choice("A note", "worth a line in the report", () => AskSure(shell, what, s => take(Weight.Note, s))),
    ]);

    private static void AskSure(Shell shell, string what, Action<Sureness> take) => shell.Choose($"{what}: how sure is it?",
    [
        new Choice("Seen", "", () => take(Sureness.Seen)),
        new Choice("Inferred", "from something else", () => take(Sureness.Inferred)),
        new Choice("Not known", "to be looked at again", () => take(Sureness.Unknown)),
    ]);

    // What the step at hand moves is most likely where something was found.
    private static IEnumerable<Part> AtHandFirst(JobScreen screen)
    {
        HashSet<string> touched = Core.Jobs.Offer.Of(screen.Job.State, screen.Session.Circumstances(screen.Job)).About is { Step: var step }
            ? [.. step.Removes.Concat(step.Tries).Concat(step.Fits).Select(p => p.Value), .. step.Examine.Select(e => e.Part?.Value ?? e.Spot.Value)] : [];
        return screen.Job.Plan.Parts.OrderByDescending(p => touched.Contains(p.Id));
    }

    private static void AskWhat(Shell shell, JobScreen screen, string part)
    {
        string name = screen.Job.Plan.NameOf(part);
        IEnumerable<string> known = screen.Job.Plan.LooksAt(part).SelectMany(l => l.Facet.Choices.Skip(1)).Select(c => c.Value).Distinct();
        List<Choice> choices = [.. known.Select(k => new Choice(k, "", () => Weigh(shell, screen, part, part, k)))];
        choices.Add(new Choice("Something else", "type it", () => AskWords(shell, screen, part, part, name)));
        if (choices.Count == 1) AskWords(shell, screen, part, part, name);
        else shell.Choose($"{name}: what is it?", choices);
    }

    private static void AskWords(Shell shell, JobScreen screen, string spot, string part, string name) =>
        shell.Ask(Prompt.Words($"{name}: what is it?", "As: lower pivot bent.", what =>
        {
            Weigh(shell, screen, spot, part, what);
            return "";
        }));

    private static string AskAtPlace(Shell shell, JobScreen screen, string spot) => shell.AskNext(Prompt.Words($"{spot}: what is it?", "As: a screw of another thread.", what =>
    {
        Weigh(shell, screen, spot, "", what);
        return "";
    }));

    private static void Weigh(Shell shell, JobScreen screen, string spot, string part, string what) =>
        AskWeight(shell, what, (weight, sure) => screen.Act(new JobAction.NoteFinding(spot, part, what, weight, sure), "The finding is noted."));
}
