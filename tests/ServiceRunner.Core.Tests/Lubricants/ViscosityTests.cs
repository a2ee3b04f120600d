using ServiceRunner.Core.Lubricants;
using ServiceRunner.Core.Tests.Jobs;
using ServiceRunner.Core.Workshops;

namespace ServiceRunner.Core.Tests.Lubricants;

/// <summary>Published check-values; each names its source.</summary>
public class ViscosityTests
{
    // ISO 3448:1992, the full table: "18 viscosity brackets between 1.98 mm2/s and 1650 mm2/s".
    [Theory]
    [InlineData(2, 1.98, 2.2, 2.42)]
    [InlineData(3, 2.88, 3.2, 3.52)]
    [InlineData(5, 4.14, 4.6, 5.06)]
    [InlineData(7, 6.12, 6.8, 7.48)]
    [InlineData(10, 9.00, 10, 11.0)]
    [InlineData(32, 28.8, 32, 35.2)]
    [InlineData(68, 61.2, 68, 74.8)]
    [InlineData(460, 414, 460, 506)]
    [InlineData(1500, 1350, 1500, 1650)]
    public void Grades_of_ISO_3448(int grade, double least, double mid, double most)
    {
        Assert.Contains(grade, IsoGrade.All);
        Assert.Equal(((decimal)least, (decimal)most), IsoGrade.Limits(grade));
        Assert.Equal((decimal)mid, IsoGrade.MidPoint(grade));
    }

    // A published calculation sheet for ASTM D341 with T = °C + 273: A 9.5259, B 3.7449, 8.5 mm²/s at 80 °C. With 273.15, as the
    // standard has it, A is 9.5308 and B 3.7466 (computed); the viscosity does not change.
    [Fact]
    public void The_line_of_ASTM_D341_through_two_points()
    {
        ViscosityLine line = ViscosityLine.Through(new ViscosityAt(5.4m, 100), new ViscosityAt(32, 40))!;
        Assert.Equal(9.5308, line.A, 3);
        Assert.Equal(3.7466, line.B, 3);
        Assert.Equal(8.533, line.At(80)!.Value, 2);
        Assert.Equal(32, line.At(40)!.Value, 6);
        Assert.Equal(5.4, line.At(100)!.Value, 6);
    }

    [Theory]
    [InlineData(32, 40, 32, 40)]
    [InlineData(5.4, 40, 32, 100)]
    [InlineData(1.5, 100, 32, 40)]
    public void Two_points_that_are_none_give_no_line(double v1, double t1, double v2, double t2) =>
        Assert.Null(ViscosityLine.Through(new ViscosityAt((decimal)v1, (decimal)t1), new ViscosityAt((decimal)v2, (decimal)t2)));

    // Examples from the official document of ASTM D2270, as a public library's tests quote them; indexes are rounded to whole
    // numbers there. The last is that library's own figure, exact 104.70.
    [Theory]
    [InlineData(73.30, 8.86, 92.43)]
    [InlineData(22.83, 5.05, 156.42)]
    [InlineData(30, 5.23, 104.70)]
    public void The_index_of_ASTM_D2270(double at40, double at100, double index) =>
        Assert.InRange(ViscosityIndex.Of(at40, at100)!.Value, index - 0.3, index + 0.3);

    // Rows of the table of L and H as a public library has them. The polynomials of the standard differ from its table by up to
    // 0.1 per cent, which is the tolerance here; that can move an index by a tenth or two. Rows of ranges that are not listed
    // here are not held against anything but their neighbours, below.
    [Theory]
    [InlineData(2, 7.994, 6.394)]
    [InlineData(5, 40.23, 28.49)]
    [InlineData(8, 100.0, 59.60)]
    [InlineData(10, 147.7, 82.87)]
    [InlineData(20, 493.2, 229.5)]
    [InlineData(70, 4905, 1558)]
    public void Rows_of_the_table_of_L_and_H(double y, double l, double h)
    {
        Assert.InRange(ViscosityIndex.L(y), l * 0.999, l * 1.001);
        Assert.InRange(ViscosityIndex.H(y), h * 0.999, h * 1.001);
    }

    // A slip in one coefficient shows as a jump where one range gives way to the next.
    [Theory]
    [InlineData(3.8)]
    [InlineData(4.4)]
    [InlineData(5.0)]
    [InlineData(6.4)]
    [InlineData(7.0)]
    [InlineData(7.7)]
    [InlineData(9.0)]
    [InlineData(12)]
    [InlineData(15)]
    [InlineData(18)]
    [InlineData(22)]
    [InlineData(28)]
    [InlineData(40)]
    [InlineData(55)]
    [InlineData(70)]
    public void The_ranges_of_the_index_join(double border)
    {
        Assert.InRange(ViscosityIndex.L(border) / ViscosityIndex.L(border - 1e-9), 0.998, 1.002);
        Assert.InRange(ViscosityIndex.H(border) / ViscosityIndex.H(border - 1e-9), 0.998, 1.002);
    }

    [Theory]
    [InlineData(73.30, 8.86)]
    [InlineData(22.83, 5.05)]
    [InlineData(460, 30)]
    public void From_the_index_back_to_the_viscosity_at_100_degrees(double at40, double at100) =>
        Assert.Equal(at100, ViscosityIndex.At100(at40, ViscosityIndex.Of(at40, at100)!.Value)!.Value, 2);

    [Fact]
    public void The_index_stands_for_a_second_point_wherever_the_first_was_taken()
    {
        ViscosityLine line = ViscosityIndex.Line(new ViscosityAt(73.30m, 40), 92.43m)!;
        Assert.Equal(8.86, line.At(100)!.Value, 1);
        decimal at20 = (decimal)line.At(20)!.Value;
        ViscosityLine again = ViscosityIndex.Line(new ViscosityAt(at20, 20), 92.43m)!;
        Assert.Equal(73.30, again.At(40)!.Value, 1);
        Assert.Equal(8.86, again.At(100)!.Value, 1);
    }

    private static Lubricant Oil(decimal? viscosity = null, decimal celsius = 20) => new()
    {
        Id = Sample.P("oil"), Name = "Oil", Roles = Sample.Ps("fast-pivot"), Viscosity = viscosity is { } v ? new ViscosityAt(v, celsius) : null,
    };

    [Fact]
    public void From_one_point_nothing_is_said_about_another_temperature()
    {
        Assert.Equal(new ViscosityFigure(120, 20, ViscosityFrom.Stated), LubricantViscosity.At(Oil(120), 20));
        Assert.Null(LubricantViscosity.At(Oil(120), 26));
        Assert.Null(LubricantViscosity.At(Oil() with { IsoGrade = 46 }, 20));
    }

    [Fact]
    public void Two_points_or_the_index_give_the_bench_its_figure()
    {
        ViscosityFigure warm = LubricantViscosity.At(Oil(120) with { SecondViscosity = new ViscosityAt(9, 100) }, 26)!;
        Assert.Equal(ViscosityFrom.TwoPoints, warm.From);
        Assert.InRange(warm.SquareMillimetresPerSecond, 85, 100);
        Assert.Equal(ViscosityFrom.Index, LubricantViscosity.At(Oil(120) with { ViscosityIndex = 100 }, 26)!.From);
        Assert.Equal(ViscosityFrom.TwoPoints, LubricantViscosity.At(Oil(120) with { IsoGrade = 46 }, 26)!.From);
    }

    [Fact]
    public void A_role_is_held_against_the_bench_or_against_20_degrees_where_only_that_is_known()
    {
        Lubricant thin = Oil(60), right = Oil(120);
        Assert.IsType<RoleFit.Outside>(RoleFit.Of(thin, "fast-pivot", 20));
        Assert.Equal(20, Assert.IsType<RoleFit.Outside>(RoleFit.Of(thin, "fast-pivot", 27)).Figure.Celsius);
        Assert.IsType<RoleFit.Within>(RoleFit.Of(right, "fast-pivot", null));
        Assert.IsType<RoleFit.NotKnown>(RoleFit.Of(Oil() with { IsoGrade = 46 }, "fast-pivot", 20));
        Assert.IsType<RoleFit.NoRange>(RoleFit.Of(right, "keyless", 20));
        Assert.IsType<RoleFit.NoRange>(RoleFit.Of(thin with { Grease = true }, "fast-pivot", 20));
        // 95 mm²/s at 20 °C is right; at 35 °C the same oil is too thin.
        Lubricant edge = Oil(95) with { SecondViscosity = new ViscosityAt(8, 100) };
        Assert.IsType<RoleFit.Within>(RoleFit.Of(edge, "fast-pivot", 20));
        Assert.IsType<RoleFit.Outside>(RoleFit.Of(edge, "fast-pivot", 35));
    }

    [Theory]
    [InlineData("2026-03-03", BottleStanding.Past)]
    [InlineData("2026-03-02", BottleStanding.SoonPast)]
    [InlineData("2026-01-31", BottleStanding.SoonPast)]
    [InlineData("2026-01-30", BottleStanding.Good)]
    public void A_bottle_against_its_last_day(string today, BottleStanding standing)
    {
        Bottle stated = new("oil", "B1", null, new DateOnly(2026, 3, 2));
        Assert.Equal(standing, stated.Standing(Oil(), DateOnly.Parse(today, System.Globalization.CultureInfo.InvariantCulture)));
        Bottle opened = new("oil", "B1", new DateOnly(2024, 3, 2), null);
        Assert.Equal(standing, opened.Standing(Oil() with { GoodForDays = 730 }, DateOnly.Parse(today, System.Globalization.CultureInfo.InvariantCulture)));
        Assert.Equal(BottleStanding.NotKnown, opened.Standing(Oil(), new DateOnly(2030, 1, 1)));
    }
}
