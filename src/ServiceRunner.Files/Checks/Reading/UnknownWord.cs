using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Files.Checks.Reading;

internal static class UnknownWord
{
    public static readonly Rule Rule = new(
        "unknown-word", Severity.Error, "A word outside a closed list",
        "Some keys take one of a few words, since the program acts on them. docs/procedure-format.md and " +
        "docs/workshop-file.md have the lists.");

    public static Diagnostic Of(string file, Place at, string key, string value, IEnumerable<string> known) =>
        Rule.At(file, at, $"{Words.Quoted(value)} is no word for '{key}'", Words.DidYouMean(value, known));
}
