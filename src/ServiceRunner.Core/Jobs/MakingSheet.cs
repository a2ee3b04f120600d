using ServiceRunner.Core.Procedures;
using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Core.Jobs;

/// <summary>
/// A part to be made, with the sizes that follow from what was measured in the job. A size whose measure is missing is
/// missing: nothing is taken for it.
/// </summary>
/// <param name="Procedure">The joined procedure that it belongs to.</param>
/// <param name="Title">What stands above it.</param>
/// <param name="Part">The part to be made, by its name; empty if the procedure names none.</param>
/// <param name="Old">Where its old one is, once it was taken out; null before.</param>
/// <param name="Lines">Its sizes.</param>
public sealed record MakingSheet(JobEvent.ProcedureJoined Procedure, string Title, string Part, PartPlace? Old, IReadOnlyList<MakingLine> Lines)
{
    /// <summary>True if every size is known.</summary>
    public bool IsWhole => Lines.All(l => l.Size is not null);

    /// <summary>The sheet of a procedure that joined the job, or null if it has none.</summary>
    /// <param name="job">The job.</param>
    /// <param name="plan">Its plan.</param>
    /// <param name="instance">Which joined procedure.</param>
    public static MakingSheet? Of(Job job, Plan plan, string instance)
    {
        if (plan.SheetOf(instance) is not { } sheet || job.Procedures.Find(p => p.Instance == instance) is not { } joined) return null;
        Dictionary<string, MeasuredFigure> figures = new(StringComparer.Ordinal);
        PartPlace? old = null;
        foreach (LogEntry entry in job.Log)
        {
            if (job.TakenBack.Contains(entry.Number)) continue;
            foreach (JobEvent happened in entry.Events)
            {
                if (happened is JobEvent.Measured m && m.Step.Instance == instance) figures[m.What] = new MeasuredFigure(m.Value, m.Unit, entry.By, entry.At);
                if (sheet.Part is { } made) old = OldPlace(happened, made) ?? old;
            }
        }
        if (sheet.Part is { } part && old is null && job.PlaceOf(part) is PartPlace.InTray tray) old = tray;
        MakingFigure Figure(string what) => new(what, figures.GetValueOrDefault(what));
        return new MakingSheet(
            joined, sheet.Title, sheet.Part is { } named ? plan.NameOf(named) : "", old,
            [.. sheet.Lines.Select(l => new MakingLine(l.Name, Figure(l.From), l.Less is { } less ? Figure(less) : null))]);
    }

    // The new part goes in under the same id; the old one stays where it was laid.
    private static PartPlace? OldPlace(JobEvent happened, string part) => happened switch
    {
        JobEvent.PartRenewed x when x.Part == part => new PartPlace.Replaced(""),
        JobEvent.PartMoved { To: PartPlace.Replaced or PartPlace.SetAside or PartPlace.SentOut or PartPlace.Lost } x when x.Part == part => x.To,
        _ => null,
    };
}

/// <summary>A size of the part to be made.</summary>
/// <param name="Name">What it is called.</param>
/// <param name="From">What it is taken from.</param>
/// <param name="Less">What is taken off that; null if nothing is.</param>
public sealed record MakingLine(string Name, MakingFigure From, MakingFigure? Less)
{
    /// <summary>The size, in <see cref="Unit"/>; null if it cannot be reckoned, and then <see cref="Lacks"/> says why.</summary>
    public decimal? Size => Lacks == SheetLack.Nothing ? Difference : null;

    /// <summary>The unit of the size as the procedure writes it; empty if the first figure is missing.</summary>
    public string Unit => From.Measured?.Unit ?? "";

    /// <summary>Why there is no size.</summary>
    public SheetLack Lacks =>
        From.Measured is null || Less is { Measured: null } ? SheetLack.Figures
        : Less is { } less && less.Measured!.Unit != Unit ? SheetLack.OneUnit
        : Difference <= 0 ? SheetLack.Sense
        : SheetLack.Nothing;

    /// <summary>What was not measured yet.</summary>
    public IEnumerable<string> Missing => new[] { From, Less }.Where(f => f is { Measured: null }).Select(f => f!.What);

    private decimal Difference => From.Measured!.Value.Value - (Less?.Measured!.Value.Value ?? 0);
}

/// <summary>Something that a size is reckoned from.</summary>
/// <param name="What">What was to be measured.</param>
/// <param name="Measured">The latest figure that was not taken back; null if there is none.</param>
public sealed record MakingFigure(string What, MeasuredFigure? Measured);

/// <summary>A figure as it was measured.</summary>
/// <param name="Value">The number as typed.</param>
/// <param name="Unit">Its unit as the procedure writes it.</param>
/// <param name="By">Who measured.</param>
/// <param name="At">When it was written down.</param>
public sealed record MeasuredFigure(TypedNumber Value, string Unit, string By, Moment At);

/// <summary>What a size of a sheet lacks.</summary>
public enum SheetLack
{
    /// <summary>Nothing: it is known.</summary>
    Nothing,

    /// <summary>A figure was not measured yet.</summary>
    Figures,

    /// <summary>The two figures have different units.</summary>
    OneUnit,

    /// <summary>No more is left than nothing: one of the figures cannot be right.</summary>
    Sense,
}
