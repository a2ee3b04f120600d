using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Files.Checks.Reading;

internal static class MissingKey
{
    public static readonly Rule Rule = new(
        "missing-key", Severity.Error, "A key that is needed",
        "The key is needed for the file, the part, the point or the step to mean anything.");

    public static Diagnostic Of(string file, Place at, string key, string owner, string hint = "") =>
        Rule.At(file, at, $"{owner} needs '{key}'", hint);
}
