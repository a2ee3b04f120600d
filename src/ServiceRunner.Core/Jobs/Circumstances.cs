using ServiceRunner.Core.Lubricants;
using ServiceRunner.Core.Quantities;
using ServiceRunner.Core.Workshops;

namespace ServiceRunner.Core.Jobs;

/// <summary>What a decision needs to know besides the job: who, when, by which plan, on which bench.</summary>
/// <param name="Plan">The job's procedures.</param>
/// <param name="Workshop">What stands on the shelf, and what asks for a reason.</param>
/// <param name="Now">The moment.</param>
/// <param name="By">The repairer's initials.</param>
/// <param name="ActionId">The caller's id for the action.</param>
/// <param name="JarsInUse">Jars with a basket in them, whichever job it is of.</param>
/// <param name="Batches">The batch in use of each lubricant.</param>
public sealed record Circumstances(
    Plan Plan,
    Workshop Workshop,
    Moment Now,
    string By,
    string ActionId,
    IReadOnlySet<string> JarsInUse,
    IReadOnlyDictionary<string, string> Batches)
{
    /// <summary>The jar for a solution: the one named, else the first free one that holds it, else the first that does; null if none.</summary>
    public string? JarFor(string solution, string named)
    {
        if (named.Length > 0 && Workshop.Jars.Any(j => j.Id.Value == named)) return named;
        HashSet<string> liquids = [.. Workshop.Liquids.Where(l => l.Solution.Value == solution).Select(l => l.Id.Value)];
        List<string> jars = [.. Workshop.Jars.Where(j => liquids.Contains(j.Holds) || j.Holds.Value == solution).Select(j => j.Id.Value)];
        return jars.FirstOrDefault(j => !JarsInUse.Contains(j)) ?? jars.FirstOrDefault();
    }

    /// <summary>The instrument in use for each unit, as the bench remembers it.</summary>
    public IReadOnlyDictionary<string, string> Instruments { get; init; } = new Dictionary<string, string>();

    /// <summary>
    /// The instrument for a unit: the one in use, else the only one that the workshop has for it; null if it was said that
    /// none is named, and where there are several and nobody said which: what is not known is not written down.
    /// </summary>
    public Instrument? InstrumentFor(string unit)
    {
        List<Instrument> fit = [.. Workshop.Instruments.Where(i => i.Measures(unit))];
        if (Instruments.TryGetValue(unit, out string? used) && (used.Length == 0 || fit.Any(i => i.Id.Value == used))) return fit.FirstOrDefault(i => i.Id.Value == used);
        return fit is [var only] ? only : null;
    }

    /// <summary>The bottles of the shelf, what was chosen for this session, and the temperature measured today.</summary>
    public LubricantStock Stock { get; init; } = LubricantStock.None;

    /// <summary>The temperature at the bench in °C: as measured today, else the room's usual one; null if neither is known.</summary>
    public decimal? BenchCelsius => Stock.CelsiusToday ?? Workshop.Room?.Celsius;

    /// <summary>The lubricant for a role: the one chosen for this session, else the first of the shelf; null if there is none.</summary>
    public Lubricant? LubricantFor(string role) => Workshop.Lubricants.FirstOrDefault(l => Stock.Chosen.TryGetValue(role, out string? chosen) && l.Id.Value == chosen)
        ?? Workshop.Lubricants.FirstOrDefault(l => l.Roles.Any(r => r.Value == role));

    /// <summary>The batch in use of a lubricant; empty if none was stated.</summary>
    public string BatchOf(string lubricant) => Batches.GetValueOrDefault(lubricant) ?? "";
}
