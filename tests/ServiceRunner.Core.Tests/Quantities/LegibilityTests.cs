using System.Globalization;
using ServiceRunner.Core.Quantities;
using ServiceRunner.Tests.Shared;

namespace ServiceRunner.Core.Tests.Quantities;

public class LegibilityTests
{
    public static TheoryData<double, double, double, double> Published()
    {
        TheoryData<double, double, double, double> data = [];
        foreach (string line in File.ReadLines(Path.Combine(Repository.Root, "tests", "ServiceRunner.Core.Tests", "Quantities", "legibility.csv")).Where(l => l.Length > 0 && l[0] != '#'))
        {
            double[] figures = [.. line.Split(',').Take(4).Select(f => double.Parse(f, CultureInfo.InvariantCulture))];
            data.Add(figures[0], figures[1], figures[2], figures[3]);
        }
        return data;
    }

    [Theory]
    [MemberData(nameof(Published))]
    public void Heights_of_capitals(double metres, double arcMinutes, double millimetres, double tolerance)
    {
        Assert.Equal(millimetres, Legibility.CapHeightMillimetres(metres, arcMinutes), tolerance);
        Assert.Equal(arcMinutes, Legibility.ArcMinutes(metres, Legibility.CapHeightMillimetres(metres, arcMinutes)), 1e-9);
    }

    // The chord itself, which owes nothing to the formula in the program.
    [Theory]
    [InlineData(0.7, 16)]
    [InlineData(2, 22)]
    [InlineData(3, 24)]
    public void The_arc_is_as_good_as_the_chord(double metres, double arcMinutes)
    {
        double chord = 2 * metres * 1000 * Math.Tan(arcMinutes / 60 * Math.PI / 180 / 2);
        Assert.Equal(chord, Legibility.CapHeightMillimetres(metres, arcMinutes), chord * 1e-4);
    }

    [Theory]
    [InlineData(0.7, 3.5)]
    [InlineData(1.5, 7.5)]
    [InlineData(2, 10)]
    public void The_rule_of_thumb_lies_between_the_least_and_the_preferred(double metres, double millimetres)
    {
        Assert.Equal(millimetres, Legibility.ThumbMillimetres(metres), 1e-9);
        Assert.InRange(Legibility.ArcMinutes(metres, millimetres), Legibility.LeastArcMinutes, Legibility.PreferredArcMinutes);
    }
}
