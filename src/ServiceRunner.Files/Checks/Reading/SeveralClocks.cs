using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Files.Checks.Reading;

internal static class SeveralClocks
{
    public static readonly Rule Rule = new(
        "several-clocks", Severity.Error, "More than one clock in a step",
        "A step has one clock at most, so that nobody has to ask which of them is meant. Part it into two steps.");

    public static Diagnostic Of(string file, Place at, string second, string first) =>
        Rule.At(file, at, $"the step has two clocks, '{first}' and '{second}'", "One clock a step: make two steps of it.");
}
