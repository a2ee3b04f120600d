using System.Globalization;
using ServiceRunner.Core.Jobs;
using ServiceRunner.Files.Sentences;
using ServiceRunner.Session;

namespace ServiceRunner.Screens.Parts;

/// <summary>A tray check that is under way: nothing of it is written down before its end, and the program keeps it until it ends itself.</summary>
public sealed class TrayMarks
{
    /// <summary>Parts that were marked as not lying there.</summary>
    public HashSet<string> Missing { get; } = [];

    /// <summary>How many rows were gone through.</summary>
    public int At { get; set; }
}

/// <summary>Some parts of the tray that are looked at together: a row, or nine of it at most, so that each has a key.</summary>
/// <param name="Title">Which row.</param>
/// <param name="Parts">Their ids in the order of the compartments.</param>
internal sealed record TrayPortion(string Title, IReadOnlyList<string> Parts);

/// <summary>What there is to look at before a wait ends.</summary>
internal static class TrayChecks
{
    private const int Keys = 9;

    /// <summary>The portions of a tray, row by row.</summary>
    public static IReadOnlyList<TrayPortion> Portions(Job job)
    {
        List<TrayPortion> portions = [];
        var lying = PartsLedger.InTray(job).Select(p => (Part: p, At: job.PlaceOf(p) is PartPlace.InTray { Compartment.Length: > 0 } tray ? Compartment.Of(tray.Compartment) : (Compartment?)null));
        foreach (var row in lying.OrderBy(p => p.At is null).ThenBy(p => p.At ?? new Compartment("", "", null), Compartment.InOrder).GroupBy(p => p.At is { } at ? (at.Tray, at.Number is null ? null : at.Row) : ("", "")))
        {
            List<(string Part, Compartment? At)> all = [.. row];
            foreach ((string Part, Compartment? At)[] some in all.Chunk(Keys))
                portions.Add(new TrayPortion(Title(some, all.Count > Keys), [.. some.Select(p => p.Part)]));
        }
        return portions;
    }

    private static string Title((string Part, Compartment? At)[] parts, bool split)
    {
        if (parts[0].At is not { } first) return "Without a compartment";
        string tray = first.Tray.Length > 0 ? $" of tray {first.Tray}" : "";
        if (first.Number is null) return $"Places with a name of their own{tray}";
        string span = split ? string.Create(CultureInfo.InvariantCulture, $", {first.Row}{first.Number} to {first.Row}{parts[^1].At!.Value.Number}") : "";
        return $"{(first.Row.Length > 0 ? $"Row {first.Row}" : "The row without a letter")}{span}{tray}";
    }

    /// <summary>How the check of a waiting job stands, as a sentence; empty if nothing lies in its tray.</summary>
    public static string Stands(Shell shell, OpenJob job)
    {
        int parts = PartsLedger.InTray(job.State).Count;
        if (parts == 0) return "";
        IReadOnlyList<TrayPortion> portions = Portions(job.State);
        if (shell.TrayMarks.GetValueOrDefault(job.Id) is not { } marks) return $"{Times.Count(parts, "part")} should lie in it. h looks row by row whether they do, and then ends the wait.";
        int missing = marks.Missing.Intersect(PartsLedger.InTray(job.State)).Count();
        return $"{Math.Min(marks.At, portions.Count)} of {Times.Count(portions.Count, "row")} looked at{(missing > 0 ? $", {Times.Count(missing, "part")} not there" : "")}; nothing is written down yet. h goes on with it.";
    }
}
