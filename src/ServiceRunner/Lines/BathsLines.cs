using ServiceRunner.Screens;
using ServiceRunner.Screens.Baths;

namespace ServiceRunner.Lines;

/// <summary>The clocks of the bench as sentences; the jars when more is asked for.</summary>
internal static class BathsLines
{
    public static IEnumerable<Telling> Of(BathsModel model, Shell shell)
    {
        if (model.Clocks.Count == 0)
        {
            yield return "No clock runs";
            yield break;
        }
        foreach (var clock in model.Clocks) yield return ClockLines.One(clock, shell);
        if (SheetWords.OnEnter(model) is { Length: > 0 } going) yield return going;
    }

    public static IEnumerable<Telling> Jars(Shell shell) => shell.Session.Workshop.Jars.Count == 0
        ? ["The workshop file names no jars"]
        : shell.Session.Workshop.Jars.Select(j => (Telling)$"{j.Name}: {BathsPage.JarLife(shell, j)}");
}
