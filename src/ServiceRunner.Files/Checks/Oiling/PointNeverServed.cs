using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Files.Checks.Oiling;

internal static class PointNeverServed
{
    public static readonly Rule Rule = new(
        "point-never-served", Severity.Error, "An oiling point that no step serves",
        "The point could never be struck off and the job not be closed as done.");

    public static Diagnostic Of(string file, Place at, string point) =>
        Rule.At(
            file, at,
            $"no step serves the oiling point '{point}'",
            "Name it under 'oil' in a step.");
}
