using ServiceRunner.Core.Workshops;

namespace ServiceRunner.Core.Lubricants;

/// <summary>
/// How the viscosity of one oil changes with temperature: the straight line of ASTM D341,
/// log10 log10(ν + 0.7) = A − B·log10 T, with ν in mm²/s and T in kelvin. It needs two known points of that very oil; from
/// one alone nothing can be said about another temperature. This simple form holds from 2 mm²/s up.
/// </summary>
public sealed class ViscosityLine
{
    // ASTM D341, simple form: below this the standard adds an exponential term, which no oil of a bench needs.
    private const double Least = 2;

    private readonly double _a, _b;

    private ViscosityLine(double a, double b) => (_a, _b) = (a, b);

    /// <summary>The constant A.</summary>
    public double A => _a;

    /// <summary>The constant B.</summary>
    public double B => _b;

    /// <summary>The line through two points; null if they are no two points of an oil that gets thinner as it warms, or one is under 2 mm²/s.</summary>
    public static ViscosityLine? Through(ViscosityAt one, ViscosityAt other)
    {
        (ViscosityAt cold, ViscosityAt warm) = one.Celsius <= other.Celsius ? (one, other) : (other, one);
        double thick = (double)cold.SquareMillimetresPerSecond, thin = (double)warm.SquareMillimetresPerSecond;
        if (cold.Celsius == warm.Celsius || thin >= thick || thin < Least) return null;
        (double w1, double w2) = (Log(thick), Log(thin));
        (double t1, double t2) = (Math.Log10(Kelvin((double)cold.Celsius)), Math.Log10(Kelvin((double)warm.Celsius)));
        double b = (w1 - w2) / (t2 - t1);
        return new ViscosityLine(w1 + b * t1, b);
    }

    /// <summary>Viscosity in mm²/s at a temperature in °C; null where the line comes under 2 mm²/s or past all sense.</summary>
    public double? At(double celsius)
    {
        double viscosity = Math.Pow(10, Math.Pow(10, _a - _b * Math.Log10(Kelvin(celsius)))) - 0.7;
        return double.IsFinite(viscosity) && viscosity >= Least ? viscosity : null;
    }

    private static double Log(double viscosity) => Math.Log10(Math.Log10(viscosity + 0.7));

    private static double Kelvin(double celsius) => celsius + 273.15;
}
