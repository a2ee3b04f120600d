using ServiceRunner.Core.Workshops;

namespace ServiceRunner.Core.Lubricants;

/// <summary>
/// The viscosity index of ASTM D2270 (ISO 2909): how little an oil thins as it warms. U is its viscosity at 40 °C and Y at
/// 100 °C, both in mm²/s; L and H are those at 40 °C of oils of index 0 and 100 with the same Y.
/// </summary>
public static class ViscosityIndex
{
    // Y from, then a, b, c of L = aY² + bY + c and d, e, f of H = dY² + eY + f. ASTM D2270, Table X2.1. The first two rows and
    // the last were read second-hand; those between are from memory, and the tests hold them against rows of the table of
    // L and H that were read.
    private static readonly double[][] Rows =
    [
        [2.0, 1.14673, 1.7576, -0.109, 0.84155, 1.5521, -0.077],
        [3.8, 3.38095, -15.4952, 33.196, 0.78571, 1.7929, -0.183],
        [4.4, 2.5000, -7.2143, 13.812, 0.82143, 1.5679, 0.119],
        [5.0, 0.10100, 16.6350, -45.469, 0.04985, 9.1613, -18.557],
        [6.4, 3.35714, -23.5643, 78.466, 0.22619, 7.7369, -16.656],
        [7.0, 0.01191, 21.4750, -72.870, 0.79762, -0.7321, 14.610],
        [7.7, 0.41858, 16.1558, -56.040, 0.05794, 10.5156, -28.240],
        [9.0, 0.88779, 7.5527, -16.600, 0.26665, 6.7015, -10.810],
        [12, 0.76720, 10.7972, -38.180, 0.20073, 8.4658, -22.490],
        [15, 0.97305, 5.3135, -2.200, 0.28889, 5.9741, -4.930],
        [18, 0.97256, 5.2500, -0.980, 0.24504, 7.4160, -16.730],
        [22, 0.91413, 7.4759, -21.820, 0.20323, 9.1267, -34.230],
        [28, 0.87031, 9.7157, -50.770, 0.18411, 10.1015, -46.750],
        [40, 0.84703, 12.6752, -133.310, 0.17029, 11.4866, -80.620],
        [55, 0.85921, 11.1009, -83.190, 0.17130, 11.3680, -76.940],
        [70, 0.83531, 14.6731, -216.246, 0.16841, 11.8493, -96.947],
    ];

    /// <summary>The least and the greatest index that a workshop file may state.</summary>
    public static (decimal Least, decimal Most) Range => (0, 400);

    /// <summary>L in mm²/s for a viscosity at 100 °C from 2 mm²/s up.</summary>
    public static double L(double y) => Row(y) is var r ? r[1] * y * y + r[2] * y + r[3] : 0;

    /// <summary>H in mm²/s for a viscosity at 100 °C from 2 mm²/s up.</summary>
    public static double H(double y) => Row(y) is var r ? r[4] * y * y + r[5] * y + r[6] : 0;

    /// <summary>The index from both viscosities in mm²/s, not rounded; null under 2 mm²/s at 100 °C, where it is not defined.</summary>
    public static double? Of(double at40, double at100)
    {
        if (at100 < 2 || at40 <= at100) return null;
        double h = H(at100);
        // Procedure A, equation 1: up to an index of 100.
        if (at40 >= h) return 100 * (L(at100) - at40) / (L(at100) - h);
        // Procedure B, equations 2 and 3.
        double n = (Math.Log10(h) - Math.Log10(at40)) / Math.Log10(at100);
        return (Math.Pow(10, n) - 1) / 0.00715 + 100;
    }

    /// <summary>Viscosity at 100 °C in mm²/s of an oil of this viscosity at 40 °C and this index; null if there is none from 2 mm²/s up.</summary>
    public static double? At100(double at40, double index) =>
        Between(2, at40, y => Of(at40, y) is { } found ? found - index : 1);

    /// <summary>The line of an oil of which one point and the index are known.</summary>
    public static ViscosityLine? Line(ViscosityAt one, decimal index)
    {
        if (one.Celsius == 40) return LineOf((double)one.SquareMillimetresPerSecond, (double)index);
        double wanted = (double)one.SquareMillimetresPerSecond, celsius = (double)one.Celsius;
        // The thicker at 40 °C, the thicker at the stated temperature.
        double? at40 = Between(3, 20_000, u => LineOf(u, (double)index)?.At(celsius) is { } there ? there - wanted : -1);
        return at40 is { } found && LineOf(found, (double)index) is { } line && line.At(celsius) is { } back && Math.Abs(back - wanted) < 0.01 * wanted ? line : null;
    }

    private static ViscosityLine? LineOf(double at40, double index) => At100(at40, index) is { } at100
        ? ViscosityLine.Through(new ViscosityAt((decimal)at40, 40), new ViscosityAt((decimal)at100, 100)) : null;

    // Where a rising function comes to nought, by halving.
    private static double? Between(double low, double high, Func<double, double> off)
    {
        if (high <= low || off(low) > 0 || off(high * 0.999999) < 0) return null;
        for (int i = 0; i < 60; i++)
        {
            double middle = (low + high) / 2;
            if (off(middle) > 0) high = middle;
            else low = middle;
        }
        return (low + high) / 2;
    }

    private static double[] Row(double y)
    {
        int row = 0;
        while (row + 1 < Rows.Length && y >= Rows[row + 1][0]) row++;
        return Rows[row];
    }
}
