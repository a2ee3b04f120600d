using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Files.Checks.Parts;

internal static class NeverMentioned
{
    public static readonly Rule Rule = new(
        "never-mentioned", Severity.Warning, "A part that no step mentions",
        "The part is described and nothing happens to it: a step may have forgotten it. A part that is only there for " +
        "others to be named by wants 'stays: yes'.");

    public static Diagnostic Of(string file, Place at, string part) =>
        Rule.At(file, at, $"no step mentions the part '{part}'", "Name it in a step, or write stays: yes.");
}
