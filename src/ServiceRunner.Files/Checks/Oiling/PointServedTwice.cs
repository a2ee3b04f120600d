using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Files.Checks.Oiling;

internal static class PointServedTwice
{
    public static readonly Rule Rule = new(
        "point-served-twice", Severity.Warning, "An oiling point served twice",
        "Too much is as bad as too little. Steps that cannot both be in one job are not held against each other.");

    public static Diagnostic Of(string file, Place at, string point, string first, string when) =>
        Rule.At(file, at, $"the oiling point '{point}' is served here a second time; the first is in '{first}'{when}");
}
