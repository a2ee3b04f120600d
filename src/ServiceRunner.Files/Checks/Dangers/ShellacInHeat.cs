using System.Globalization;
using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Files.Checks.Dangers;

internal static class ShellacInHeat
{
    public static readonly Rule Rule = new(
        "shellac-heat", Severity.Warning, "Shellac above 50 °C",
        "Shellac softens with heat. At or under 50 °C it holds; above, there is no margin.");

    public static Diagnostic Of(string file, Place at, string part, decimal celsius) =>
        Rule.At(file, at, string.Create(CultureInfo.InvariantCulture, $"'{part}' is set with shellac and comes to {celsius} °C"), "Stay at or under 50 °C.");
}
