using System.Globalization;
using ServiceRunner.Core.Jobs;
using ServiceRunner.Core.Procedures;
using ServiceRunner.Core.Workshops;

namespace ServiceRunner.Core.Lubricants;

/// <summary>
/// What speaks against serving a point with a lubricant from a bottle. It stands before the act; what is served all the same
/// becomes a deviation of <see cref="Kind"/>, with the figures that were compared.
/// </summary>
public abstract record PointConcern
{
    private PointConcern(string kind) => Kind = kind;

    /// <summary>The kind of deviation that serving all the same makes.</summary>
    public string Kind { get; }

    /// <summary>The lubricant is not for the point's role.</summary>
    public sealed record OtherRole(Lubricant Lubricant, string Role) : PointConcern(Deviation.PointOtherLubricant);

    /// <summary>The bottle is past its last day.</summary>
    public sealed record PastDate(Lubricant Lubricant, string Batch, DateOnly LastDay, DateOnly Today) : PointConcern(Deviation.LubricantPastDate);

    /// <summary>The viscosity is outside what the role usually has.</summary>
    public sealed record OtherViscosity(Lubricant Lubricant, string Role, ViscosityFigure Figure, RoleRange Range) : PointConcern(Deviation.PointOtherViscosity);

    /// <summary>The facts of it in stored words, for the record of a deviation at a point.</summary>
    public string Brief(OilingPoint point) => this switch
    {
        OtherRole x => $"{point.Id.Value}: {x.Lubricant.Id.Value} for {x.Role}",
        PastDate x => string.Create(CultureInfo.InvariantCulture, $"{point.Id.Value}: {x.Lubricant.Id.Value} {x.Batch} good until {x.LastDay:yyyy-MM-dd}, used {x.Today:yyyy-MM-dd}"),
        OtherViscosity x => string.Create(CultureInfo.InvariantCulture, $"{point.Id.Value}: {x.Lubricant.Id.Value} {x.Figure.SquareMillimetresPerSecond} mm2/s at {x.Figure.Celsius} °C, {x.Role} {x.Range.Least} to {x.Range.Most} mm2/s by common practice"),
        _ => throw new InvalidOperationException($"no words for {GetType().Name}"),
    };

    /// <summary>Everything that speaks against it; empty if nothing does.</summary>
    /// <param name="point">The point.</param>
    /// <param name="lubricant">With what.</param>
    /// <param name="batch">From which bottle; empty if nobody said.</param>
    /// <param name="at">When and where.</param>
    /// <param name="on">The day it was done, if that is not today.</param>
    public static IReadOnlyList<PointConcern> Of(OilingPoint point, Lubricant lubricant, string batch, Circumstances at, DateOnly? on = null)
    {
        List<PointConcern> found = [];
        string role = point.Role;
        if (!lubricant.Roles.Any(r => r.Value == role)) found.Add(new OtherRole(lubricant, role));
        DateOnly today = on ?? at.Now.Day;
        if (at.Stock.Find(lubricant.Id, batch) is { } bottle && bottle.Standing(lubricant, today) == BottleStanding.Past)
            found.Add(new PastDate(lubricant, batch, bottle.LastDay(lubricant)!.Value, today));
        if (RoleFit.Of(lubricant, role, at.BenchCelsius) is RoleFit.Outside outside)
            found.Add(new OtherViscosity(lubricant, role, outside.Figure, outside.Range));
        return found;
    }
}
