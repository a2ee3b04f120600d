using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Core.Procedures;

/// <summary>
/// Sets the ids of a repair apart from those of the job that it comes into: two jewels replaced in one job are two
/// parts. The part that the repair mends is one of the job's own and keeps its name there.
/// </summary>
internal sealed class Apart(Procedure read, string instance, string mended)
{
    private readonly HashSet<string> _parts = [.. read.Parts.Select(p => p.Id.Value)];

    /// <summary>A procedure with every id of a part, a compartment, a point and a fact set apart (<see cref="ApartId"/>).</summary>
    /// <param name="read">As read.</param>
    /// <param name="instance">Its name in the job.</param>
    /// <param name="mended">The job's part that it mends; empty if none was named.</param>
    public static Procedure From(Procedure read, string instance, string mended) => new Apart(read, instance, mended).Set();

    private Procedure Set() => read with
    {
        Asks = [.. read.Asks.Select(a => a with { Fact = Own(a.Fact) })],
        Parts = [.. read.Parts.Where(x => !StandsFor(x.Id)).Select(Of)],
        OilingPoints = [.. read.OilingPoints.Select(Of)],
        Sheet = read.Sheet is { } sheet ? sheet with { Part = Part(sheet.Part) } : null,
        Stages = [.. read.Stages.Select(s => s with { Steps = [.. s.Steps.Select(Of)] })],
    };

    private bool StandsFor(string part) => mended.Length > 0 && part == read.Mends?.Value;

    private Placed<string> Own(Placed<string> id) => new(ApartId.Of(instance, id), id.At);

    private Placed<string> Part(Placed<string> id) => StandsFor(id) ? new(mended, id.At) : Own(id);

    private Placed<string>? Part(Placed<string>? id) => id is { } i ? Part(i) : null;

    private IReadOnlyList<Placed<string>> Parts(IReadOnlyList<Placed<string>> ids) => [.. ids.Select(Part)];

    private Part Of(Part p) => p with
    {
        Id = Own(p.Id),
        Compartment = p.Compartment.Length == 0 ? "" : ApartId.Of(instance, p.Compartment),
        Seat = Part(p.Seat),
        Under = Parts(p.Under),
    };

    private OilingPoint Of(OilingPoint p) => p with { Id = Own(p.Id), When = p.When is { } when ? when with { Part = Part(when.Part) } : null };

    private Step Of(Step s) => s with
    {
        Removes = Parts(s.Removes),
        Tries = Parts(s.Tries),
        Fits = Parts(s.Fits),
        Replaces = Parts(s.Replaces),
        Clock = s.Clock is { } clock ? clock with { Parts = Parts(clock.Parts) } : null,
        Brush = s.Brush is { } brush ? brush with { Parts = Parts(brush.Parts) } : null,
        Coat = s.Coat is { } coat ? coat with { Parts = Parts(coat.Parts) } : null,
        // A place named by a part's id is that part of the repair, not one of the same name in the job.
        Examine = [.. s.Examine.Select(e => e with { Part = Part(e.Part ?? (_parts.Contains(e.Spot) ? e.Spot : null)) })],
        Oil = [.. s.Oil.Select(Own)],
        OnlyIf = [.. s.OnlyIf.Select(c => c with { Fact = Own(c.Fact) })],
    };
}
