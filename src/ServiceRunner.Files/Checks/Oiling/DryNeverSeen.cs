using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Files.Checks.Oiling;

internal static class DryNeverSeen
{
    public static readonly Rule Rule = new(
        "dry-never-seen", Severity.Warning, "A point that must stay dry and that nobody looks at",
        "The report says of such a point that it stayed dry. Somebody should have seen it: one step, near the end of reassembly, " +
        "can ask for all of them together.");

    public static Diagnostic Of(string file, Place at, string point) =>
        Rule.At(file, at, $"no step looks whether '{point}' stayed dry", "Name it under 'stays-dry' in a step.");
}
