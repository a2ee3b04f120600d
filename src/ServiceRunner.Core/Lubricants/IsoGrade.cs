namespace ServiceRunner.Core.Lubricants;

/// <summary>
/// Viscosity grades of industrial oils: ISO 3448:1992, eighteen of them, and the two that ASTM D2422 adds (2200, 3200).
/// A grade is a kinematic viscosity in mm²/s at 40 °C, its limits ten per cent to either side.
/// </summary>
public static class IsoGrade
{
    /// <summary>The temperature of every grade, in °C.</summary>
    public const decimal Celsius = 40;

    /// <summary>The grades by their numbers.</summary>
    public static readonly IReadOnlyList<int> All = [2, 3, 5, 7, 10, 15, 22, 32, 46, 68, 100, 150, 220, 320, 460, 680, 1000, 1500, 2200, 3200];

    /// <summary>The mid-point in mm²/s at 40 °C. For the four thinnest grades it is not the number itself.</summary>
    public static decimal MidPoint(int grade) => grade switch { 2 => 2.2m, 3 => 3.2m, 5 => 4.6m, 7 => 6.8m, _ => grade };

    /// <summary>The lowest and highest viscosity of a grade in mm²/s at 40 °C.</summary>
    public static (decimal Least, decimal Most) Limits(int grade) => (MidPoint(grade) * 0.9m, MidPoint(grade) * 1.1m);
}
