using ServiceRunner.Core.Benches;
using ServiceRunner.Core.Jobs;
using ServiceRunner.Core.Lubricants;
using ServiceRunner.Core.Workshops;
using ServiceRunner.Files.Sentences;
using ServiceRunner.Screens.Pick;
using ServiceRunner.Session;

namespace ServiceRunner.Screens.Oiling;

/// <summary>The bottle for each role: asked for once in a session where there is a choice, told once where none is stated.</summary>
internal static class RoleBottles
{
    /// <summary>Lubricants of the shelf for a role.</summary>
    public static IReadOnlyList<Lubricant> Lubricants(Shell shell, string role) => [.. shell.Session.Workshop.Lubricants.Where(l => l.Roles.Any(r => r.Value == role))];

    /// <summary>True if the repairer is asked or told something first, so that going on must not act yet.</summary>
    public static bool AskFirst(Shell shell, string role)
    {
        IReadOnlyList<Lubricant> lubricants = Lubricants(shell, role);
        if (lubricants.Count == 0 || shell.Session.ReadsOnly) return false;
        List<(Lubricant Lubricant, Bottle Bottle)> bottles = [.. Bottles(shell, lubricants)];
        if (bottles.Count == 1 || !shell.Session.Bottles.IsFirst(role)) return false;
        if (bottles.Count > 1)
        {
            Choose(shell, role);
            return true;
        }
        shell.Say($"No bottle is stated for {lubricants[0].Name} ({JobWords.Role(role)}): b names it. Going on serves without, and this is not said again.", refusal: true);
        return true;
    }

    /// <summary>Asks which bottle the role gets in this session; a new one can be named.</summary>
    public static void Choose(Shell shell, string role)
    {
        IReadOnlyList<Lubricant> lubricants = Lubricants(shell, role);
        List<(Lubricant Lubricant, Bottle Bottle)> known = [.. lubricants.SelectMany(l => shell.Session.Bench.BottlesOf(l.Id).Select(b => (l, b)))];
        if (known.Count == 0 && lubricants is [var only])
        {
            TakeNew(shell, only, role);
            return;
        }
        shell.Choose($"Which bottle for this role: {JobWords.Role(role)}?",
        [
            .. known.Select(k => new Choice($"{k.Lubricant.Name}, {k.Bottle.Batch}", Detail(shell, k.Lubricant, k.Bottle), () => Take(shell, k.Lubricant, k.Bottle, role))),
            .. lubricants.Select(l => new Choice($"Another bottle of {l.Name}", OilWords.Class(l), () => TakeNew(shell, l, role))),
        ]);
    }

    /// <summary>Asks for a new bottle with its dates and takes it into use.</summary>
    /// <param name="shell">The shell.</param>
    /// <param name="lubricant">Of what.</param>
    /// <param name="role">For which role it is chosen; empty for none.</param>
    public static void TakeNew(Shell shell, Lubricant lubricant, string role) => BottleEntry.Ask(shell, lubricant, null, bottle =>
    {
        ActOutcome outcome = shell.Session.Act(new BenchAction.TakeBatch(bottle.Lubricant, bottle.Batch, bottle.OpenedOn, bottle.GoodUntil));
        if (!outcome.IsDone) return outcome.Sentence(new Plan([]), shell.Session.Folder.Path);
        if (role.Length > 0) shell.Session.Bottles.Choose(role, lubricant.Id);
        shell.Say($"In use: {lubricant.Name}, {bottle.Batch}.");
        return "";
    });

    private static void Take(Shell shell, Lubricant lubricant, Bottle bottle, string role)
    {
        ActOutcome outcome = shell.Session.Act(new BenchAction.TakeBatch(bottle.Lubricant, bottle.Batch, bottle.OpenedOn, bottle.GoodUntil));
        if (outcome.IsDone) shell.Session.Bottles.Choose(role, lubricant.Id);
        shell.Tell(outcome, new Plan([]), $"{JobWords.Role(role)}: {lubricant.Name}, {bottle.Batch}.");
    }

    // What is past its date and not in use was only not struck off: it is no choice to be asked for.
    private static IEnumerable<(Lubricant, Bottle)> Bottles(Shell shell, IReadOnlyList<Lubricant> lubricants)
    {
        DateOnly today = shell.Session.Now.Day;
        foreach (Lubricant lubricant in lubricants)
            foreach (Bottle bottle in shell.Session.Bench.BottlesOf(lubricant.Id))
                if (shell.Session.Bench.IsInUse(bottle) || bottle.Standing(lubricant, today) != BottleStanding.Past) yield return (lubricant, bottle);
    }

    private static string Detail(Shell shell, Lubricant lubricant, Bottle bottle)
    {
        string standing = OilWords.Standing(bottle, lubricant, shell.Session.Now.Day);
        return $"{(shell.Session.Bench.IsInUse(bottle) ? "in use, " : "")}{OilWords.Dates(bottle, lubricant)}{(standing.Length > 0 ? $"; {standing}" : "")}";
    }
}
