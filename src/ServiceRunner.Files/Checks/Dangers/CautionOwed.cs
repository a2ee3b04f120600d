using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Files.Checks.Dangers;

internal static class CautionOwed
{
    public static readonly Rule Rule = new(
        "caution-owed", Severity.Warning, "A caution that the work calls for",
        "What the step does can hurt somebody in a known way, and the caution that is shown before the act is not among " +
        "the step's.");

    public static Diagnostic Of(string file, Place at, string because, IReadOnlyList<string> missing, bool any, IEnumerable<string> given) =>
        Rule.At(
            file, at, $"the step {because} and does not give the caution {(any ? Words.Or(missing) : Words.And(missing))}",
            $"Write caution: [{string.Join(", ", given.Concat(any ? missing.Take(1) : missing))}].");
}
