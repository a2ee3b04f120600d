using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Files.Checks.Reading;

internal static class AmbiguousNumber
{
    public static readonly Rule Rule = new(
        "ambiguous-number", Severity.Error, "A number that can be read in two ways",
        "1,234 is one and a bit to one reader and over a thousand to another. It is refused and not guessed.");

    public static Diagnostic Of(string file, Place at, string key, string value) =>
        Rule.At(file, at, $"'{key}' {Words.Quoted(value)} can be read in two ways", "Write 1.234 for one and a bit, 1234 for more than a thousand.");
}
