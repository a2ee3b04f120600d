using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Files.Checks.References;

internal static class UnknownAnswer
{
    public static readonly Rule Rule = new(
        "unknown-answer", Severity.Error, "An answer that the question does not have",
        "'only-if' waits for an answer that nobody can give.");

    public static Diagnostic Of(string file, Place at, string fact, string answer, IReadOnlyList<string> known) =>
        Rule.At(file, at, $"{Words.Quoted(answer)} is no answer to '{fact}'", $"Its answers are {Words.And(known)}.");
}
