using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Files.Checks.Parts;

internal static class UnderCircle
{
    public static readonly Rule Rule = new(
        "under-circle", Severity.Error, "Parts that lie under each other",
        "Each of these parts must come off before the other, so that none ever could.");

    public static Diagnostic Of(string file, Place at, IReadOnlyList<string> circle) =>
        Rule.At(file, at, circle.Count == 2 ? $"'{circle[0]}' lies under itself" : $"these parts lie under each other: {string.Join(" → ", circle)}");
}
