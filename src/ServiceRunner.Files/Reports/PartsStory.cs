using System.Globalization;
using ServiceRunner.Core.Jobs;
using ServiceRunner.Files.Sentences;

namespace ServiceRunner.Files.Reports;

/// <summary>A line about parts: what became of them, which, and who wrote it down when (empty if it is only counted).</summary>
public sealed record PartsLine(string What, string Which, string Who);

/// <summary>What became of the parts, for the owner: what is old, what is new, what is missing.</summary>
internal static class PartsStory
{
    public static IReadOnlyList<PartsLine> Of(Job job, Plan plan)
    {
        if (plan.Parts.Count == 0 && job.Parts.IsEmpty) return [];
        HashSet<string> renewed = [.. job.Renewals.Select(r => r.Event.Part)];
        List<string> parts = [.. plan.Parts.Select(p => p.Id.Value).Union(job.Parts.Keys.Order(StringComparer.Ordinal))];
        int back = parts.Count(p => !renewed.Contains(p) && job.Parts.GetValueOrDefault(p) is PartPlace.OnMovement);
        int never = parts.Count(p => !renewed.Contains(p) && !job.Parts.ContainsKey(p));
        string jewels = PartWords.Jewels(job, plan);
        return
        [
            .. Count("Original, taken off and back on", back), .. Count("Original, never taken off", never),
            .. job.Renewals.Select(r => new PartsLine(Replaced(r.Event.Origin), $"{plan.NameOf(r.Event.Part)}{(r.Event.Detail.Length > 0 ? $": {r.Event.Detail}" : "")}; the old part is kept for the owner", Who(r.By, r.At.Wall))),
            .. parts.Where(p => job.PlaceOf(p) is PartPlace.Replaced).Select(p => new PartsLine("Replaced", $"{plan.NameOf(p)}{(job.PlaceOf(p) is PartPlace.Replaced { By.Length: > 0 } x ? $": {x.By}" : "")}; the old part is kept for the owner", "")),
            .. job.AddedParts.Select(a => new PartsLine("Not in the procedure, added", a.Count > 1 ? string.Create(CultureInfo.InvariantCulture, $"{a.Name} ({a.Count} of them)") : a.Name, "")),
            .. InTray(parts, job, plan),
            .. parts.Where(p => job.PlaceOf(p) is not (PartPlace.OnMovement or PartPlace.Replaced or PartPlace.InTray)).OrderBy(plan.NameOf, StringComparer.Ordinal).Select(p => new PartsLine("Still off", $"{plan.NameOf(p)}: {JobWords.Of(job.PlaceOf(p))}", "")),
            .. jewels.Length > 0 ? [new PartsLine("Jewels", jewels, "")] : Array.Empty<PartsLine>(),
            .. job.Log.Where(e => !job.TakenBack.Contains(e.Number)).SelectMany(e => e.Events.OfType<JobEvent.TrayChecked>().Select(c => new PartsLine("Tray looked through after a wait", Checked(c, plan), Who(e.By, e.At.Wall)))),
        ];
    }

    private static IEnumerable<PartsLine> Count(string what, int count) => count == 0 ? [] : [new PartsLine(what, Times.Count(count, "part"), "")];

    // In the middle of the work that is nearly all of them: one line, in the order of the tray.
    private static IEnumerable<PartsLine> InTray(List<string> parts, Job job, Plan plan)
    {
        List<(string Part, Compartment At)> lying = [.. parts.Where(p => job.PlaceOf(p) is PartPlace.InTray)
            .Select(p => (p, job.PlaceOf(p) is PartPlace.InTray { Compartment.Length: > 0 } tray ? Compartment.Of(tray.Compartment) : new Compartment("", "", null)))];
        if (lying.Count == 0) return [];
        IEnumerable<string> named = lying.OrderBy(p => p.At, Compartment.InOrder)
            .Select(p => $"{plan.NameOf(p.Part)}{(job.PlaceOf(p.Part) is PartPlace.InTray { Compartment.Length: > 0 } tray ? $" ({JobWords.Compartment(tray.Compartment)})" : "")}");
        return [new PartsLine("Still off, in the tray", $"{Times.Count(lying.Count, "part")}: {string.Join("; ", named)}", "")];
    }

    private static string Replaced(Origin origin) => origin switch
    {
        Origin.Supplied => "Replaced by a supplied part",
        Origin.MadeNew => "Made new",
        Origin.OldStock => "Replaced from an old movement",
        _ => "Replaced, from where was not said",
    };

    private static string Checked(JobEvent.TrayChecked check, Plan plan) =>
        check.Missing.Count == 0 ? $"{Times.Count(check.Seen, "part")} seen, none missing" : $"{Times.Count(check.Seen, "part")} seen; missing: {Times.List(check.Missing.Select(plan.NameOf))}";

    private static string Who(string by, DateTimeOffset at) => $"{by}, {at.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture)}";
}
