using ServiceRunner.Core.Workshops;

namespace ServiceRunner.Core.Lubricants;

/// <summary>
/// The viscosity that a role usually has, in mm²/s at 20 °C. These are trade practice written down from memory, not taken from
/// a published table: where they are shown, they are called "common practice".
/// </summary>
/// <param name="Least">Lowest usual viscosity in mm²/s.</param>
/// <param name="Most">Highest usual viscosity in mm²/s.</param>
public sealed record RoleRange(decimal Least, decimal Most)
{
    /// <summary>The temperature in °C at which the ranges are meant.</summary>
    public const decimal Celsius = 20;

    /// <summary>The range of a role, or null where none is usual: greases, friction, striking work.</summary>
    public static RoleRange? Of(string role) => role switch
    {
        "fast-pivot" or "endstone" => new RoleRange(80, 180), // balance, escape and fourth pivots; from memory
        "slow-pivot" => new RoleRange(300, 1300), // third, centre and barrel arbor; from memory
        "escapement" => new RoleRange(80, 150), // stones and escape teeth, where it is an oil; from memory
        _ => null,
    };
}

/// <summary>How a lubricant's viscosity stands against a role.</summary>
public abstract record RoleFit
{
    private RoleFit() { }

    /// <summary>There is nothing to compare: a grease, or a role without a range.</summary>
    public sealed record NoRange : RoleFit;

    /// <summary>Nothing is stated that could be compared.</summary>
    public sealed record NotKnown(RoleRange Range) : RoleFit;

    /// <summary>Within the range.</summary>
    public sealed record Within(ViscosityFigure Figure, RoleRange Range) : RoleFit;

    /// <summary>Thinner or thicker.</summary>
    public sealed record Outside(ViscosityFigure Figure, RoleRange Range) : RoleFit;

    /// <summary>
    /// The viscosity at the bench's temperature in °C against the role; where only the viscosity at 20 °C can be known, that one.
    /// The figure says which it was.
    /// </summary>
    public static RoleFit Of(Lubricant lubricant, string role, decimal? bench)
    {
        if (lubricant.Grease || RoleRange.Of(role) is not { } range) return new NoRange();
        ViscosityFigure? figure = LubricantViscosity.At(lubricant, bench ?? RoleRange.Celsius) ?? LubricantViscosity.At(lubricant, RoleRange.Celsius);
        if (figure is null) return new NotKnown(range);
        return figure.SquareMillimetresPerSecond < range.Least || figure.SquareMillimetresPerSecond > range.Most ? new Outside(figure, range) : new Within(figure, range);
    }
}
