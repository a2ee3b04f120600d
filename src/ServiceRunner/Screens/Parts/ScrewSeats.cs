using ServiceRunner.Core.Jobs;
using ServiceRunner.Core.Procedures;
using ServiceRunner.Files.Sentences;

namespace ServiceRunner.Screens.Parts;

/// <summary>Each part that screws or pins hold, with where each of them is.</summary>
internal static class ScrewSeats
{
    /// <summary>A line for each part with a screw out, the marked one first; then those whose screws are all in, together.</summary>
    public static IReadOnlyList<(string Before, string Text)> Of(Job job, Plan plan, string marked)
    {
        string first = plan.Part(marked)?.Seat?.Value ?? marked;
        List<(string Held, List<string> Screws)> seats = [.. plan.Parts.Select(p => p.Id.Value).Select(p => (p, plan.HoldersOf(p).ToList())).Where(s => s.Item2.Count > 0)];
        List<(string Held, List<string> Screws)> open = [.. seats.Where(s => s.Held == first || s.Screws.Any(x => !IsIn(job, x))).OrderByDescending(s => s.Held == first)];
        List<string> whole = [.. seats.Except(open).Select(s => plan.NameOf(s.Held))];
        return
        [
            .. open.Select(s => ($"{plan.NameOf(s.Held)}: ", string.Join("; ", s.Screws.Select(x => $"{Screw(plan, x, plan.NameOf(s.Held))} {Where(job, plan, x)}")))),
            .. whole.Count > 0 ? [("All screws in: ", string.Join(", ", whole))] : Array.Empty<(string, string)>(),
        ];
    }

    private static bool IsIn(Job job, string screw) => job.PlaceOf(screw) is PartPlace.OnMovement;

    // 'Barrel bridge screw, by the crown' is told from its fellows by what follows the comma.
    private static string Screw(Plan plan, string screw, string held)
    {
        string name = plan.NameOf(screw);
        return name.IndexOf(", ", StringComparison.Ordinal) is > 0 and var comma && !held.EndsWith(name[comma..], StringComparison.Ordinal) ? name[(comma + 2)..] : plan.Part(screw)?.Kind is "pin" ? "pin" : "screw";
    }

    private static string Where(Job job, Plan plan, string screw) => job.StandingOf(plan, screw) switch
    {
        PartStanding.NotYetOff or PartStanding.Fitted => "in",
        PartStanding.TriedDry => "in, tried dry",
        PartStanding.There when job.PlaceOf(screw) is PartPlace.InTray { Compartment.Length: > 0 } tray => $"out, {JobWords.Compartment(tray.Compartment)}",
        PartStanding.There => "out, in the tray",
        var other => $"out, {PartWords.Of(other)}",
    };
}
