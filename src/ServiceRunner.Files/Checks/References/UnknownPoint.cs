using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Files.Checks.References;

internal static class UnknownPoint
{
    public static readonly Rule Rule = new(
        "unknown-point", Severity.Error, "An oiling point that is not described",
        "A step serves a point that does not stand under 'oiling-points'.");

    public static Diagnostic Of(string file, Place at, string name, IEnumerable<string> known) =>
        Rule.At(file, at, $"there is no oiling point {Words.Quoted(name)}", Words.DidYouMean(name, known));
}
