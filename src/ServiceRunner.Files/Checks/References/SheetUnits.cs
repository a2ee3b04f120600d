using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Files.Checks.References;

internal static class SheetUnits
{
    public static readonly Rule Rule = new(
        "sheet-units", Severity.Error, "A size reckoned from two units",
        "A line of 'sheet' takes one figure off another. Both are measured in the same unit; nothing is converted.");

    public static Diagnostic Of(string file, Place at, string from, string unit, string less, string other) =>
        Rule.At(file, at, $"{Words.Quoted(less)} is measured in {other} and {Words.Quoted(from)} in {unit}", "Measure both in the same unit.");

    public static Diagnostic Several(string file, Place at, string what, IReadOnlyList<string> units) =>
        Rule.At(file, at, $"{Words.Quoted(what)} is measured in more than one unit: {Words.And(units)}", "Give each measure words of its own, or the same unit.");
}
