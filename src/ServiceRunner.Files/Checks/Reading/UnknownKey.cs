using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Files.Checks.Reading;

internal static class UnknownKey
{
    public static readonly Rule Rule = new(
        "unknown-key", Severity.Error, "A key that is not known",
        "A misspelt key would be passed over in silence and what it asks for would never happen, so that each key must be " +
        "known.");

    public static Diagnostic Of(string file, Place at, string key, string owner, IEnumerable<string> known) =>
        Rule.At(file, at, $"{owner} has no key {Words.Quoted(key)}", Words.DidYouMean(key, known));
}
