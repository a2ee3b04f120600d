using ServiceRunner.Core.Workshops;

namespace ServiceRunner.Core.Lubricants;

/// <summary>A viscosity in mm²/s at a temperature in °C, and what it rests on.</summary>
public sealed record ViscosityFigure(decimal SquareMillimetresPerSecond, decimal Celsius, ViscosityFrom From);

/// <summary>What a figure of viscosity rests on.</summary>
public enum ViscosityFrom
{
    /// <summary>The workshop file states it at this very temperature.</summary>
    Stated,

    /// <summary>Computed through two stated points, ASTM D341.</summary>
    TwoPoints,

    /// <summary>Computed from one point and the viscosity index, ASTM D2270 and D341.</summary>
    Index,
}

/// <summary>
/// What can be known of a lubricant's viscosity from what the workshop file states. With one point and no index it is known
/// at that temperature alone: no oil's slope is guessed.
/// </summary>
public static class LubricantViscosity
{
    /// <summary>The stated points: viscosities first, then the grade's mid-point at 40 °C.</summary>
    public static IReadOnlyList<ViscosityAt> Points(Lubricant lubricant)
    {
        List<ViscosityAt> points = [];
        if (lubricant.Viscosity is { } first) points.Add(first);
        if (lubricant.SecondViscosity is { } second) points.Add(second);
        if (lubricant.IsoGrade is { } grade) points.Add(new ViscosityAt(IsoGrade.MidPoint(grade), IsoGrade.Celsius));
        return points;
    }

    /// <summary>The viscosity at a temperature in °C, or null where it cannot be known.</summary>
    public static ViscosityFigure? At(Lubricant lubricant, decimal celsius)
    {
        IReadOnlyList<ViscosityAt> points = Points(lubricant);
        if (points.FirstOrDefault(p => p.Celsius == celsius) is { } stated) return new ViscosityFigure(stated.SquareMillimetresPerSecond, celsius, ViscosityFrom.Stated);
        if (points is [var one, var other, ..] && ViscosityLine.Through(one, other) is { } line) return Figure(line, celsius, ViscosityFrom.TwoPoints);
        return points is [var known, ..] && lubricant.ViscosityIndex is { } index && ViscosityIndex.Line(known, index) is { } byIndex
            ? Figure(byIndex, celsius, ViscosityFrom.Index) : null;
    }

    // Three figures: more would claim what the method does not give.
    private static ViscosityFigure? Figure(ViscosityLine line, decimal celsius, ViscosityFrom from)
    {
        if (line.At((double)celsius) is not { } viscosity || viscosity > 1_000_000) return null;
        int places = Math.Max(0, 2 - (int)Math.Floor(Math.Log10(viscosity)));
        double scale = viscosity >= 1000 ? 10 : 1;
        return new ViscosityFigure((decimal)(Math.Round(viscosity / scale, places) * scale), celsius, from);
    }
}
