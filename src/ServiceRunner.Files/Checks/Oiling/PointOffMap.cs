using System.Globalization;
using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Files.Checks.Oiling;

internal static class PointOffMap
{
    public static readonly Rule Rule = new(
        "point-off-map", Severity.Warning, "An oiling point outside the map",
        "The point's place lies outside the frame that the map gives, and would not be seen.");

    public static Diagnostic Of(string file, Place at, string point, decimal x, decimal y, decimal width, decimal height) =>
        Rule.At(
            file, at, string.Create(CultureInfo.InvariantCulture, $"'{point}' lies at {x}, {y}, outside the map of {width} by {height} mm"),
            "Places are in mm from the top left.");
}
