using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Files.Checks.Order;

internal static class WaitingCircle
{
    public static readonly Rule Rule = new(
        "waiting-circle", Severity.Error, "Steps that wait for each other in a circle",
        "Each of these steps waits for the next and the last for the first, so that none could ever be done. A step waits " +
        "for those under 'after', for the stages that open its own, and for the steps that take off what covers its " +
        "parts.");

    public static Diagnostic Of(string file, Place at, IReadOnlyList<string> circle) =>
        Rule.At(
            file, at,
            circle.Count == 2 ? $"'{circle[0]}' waits for itself" : $"these steps wait for each other: {string.Join(" → ", circle)}",
            "Each waits for the one after it.");
}
