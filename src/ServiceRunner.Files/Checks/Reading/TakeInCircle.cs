using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Files.Checks.Reading;

internal static class TakeInCircle
{
    public static readonly Rule Rule = new(
        "take-in-circle", Severity.Error, "Files that take each other in",
        "A file that takes in itself, straight or by way of others, would never end.");

    public static Diagnostic Of(string file, Place at, IReadOnlyList<string> circle) =>
        Rule.At(file, at, circle.Count == 2 ? $"{circle[0]} takes in itself" : $"these files take each other in: {string.Join(" → ", circle)}");
}
