using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Files.Checks.References;

internal static class UnknownStage
{
    public static readonly Rule Rule = new(
        "unknown-stage", Severity.Error, "A stage that is not there",
        "'opens-after' names a stage that the procedure does not have.");

    public static Diagnostic Of(string file, Place at, string name, IEnumerable<string> known) =>
        Rule.At(file, at, $"there is no stage {Words.Quoted(name)}", Words.DidYouMean(name, known));
}
