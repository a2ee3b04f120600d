using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Files.Checks.References;

internal static class UnknownFact
{
    public static readonly Rule Rule = new(
        "unknown-fact", Severity.Error, "A fact that nobody asks",
        "'only-if' names a fact that does not stand under 'asks', so that the step could never come into the job.");

    public static Diagnostic Of(string file, Place at, string name, IEnumerable<string> known) =>
        Rule.At(file, at, $"there is no fact {Words.Quoted(name)}", Words.DidYouMean(name, known));
}
