using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Files.Checks.Reading;

internal static class DuplicateKey
{
    public static readonly Rule Rule = new(
        "duplicate-key", Severity.Error, "The same key twice",
        "Which of the two is meant cannot be known; the first is read and the second is not.");

    public static Diagnostic Of(string file, Place at, string key, Place first) =>
        Rule.At(file, at, $"the key {Words.Quoted(key)} stands here a second time; the first is in line {first.Line}", "Take one of them out.");
}
