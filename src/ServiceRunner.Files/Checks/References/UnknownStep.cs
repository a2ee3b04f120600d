using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Files.Checks.References;

internal static class UnknownStep
{
    public static readonly Rule Rule = new(
        "unknown-step", Severity.Error, "A step that is not there",
        "'after' names a step that the procedure does not have. Steps of a file taken in have its name before theirs: " +
        "wash/rinse.");

    public static Diagnostic Of(string file, Place at, string name, IEnumerable<string> known) =>
        Rule.At(file, at, $"there is no step {Words.Quoted(name)}", Words.DidYouMean(name, known));
}
