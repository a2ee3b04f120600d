using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Files.Checks.Reading;

internal static class BadName
{
    public static readonly Rule Rule = new(
        "bad-name", Severity.Error, "A name that is not made of words, digits and hyphens",
        "Ids are lower-case words, digits and hyphens, so that they can be typed and spoken.");

    public static Diagnostic Of(string file, Place at, string key, string value, string? better) =>
        Rule.At(
            file, at, $"'{key}' {Words.Quoted(value)} is not a name",
            better is null ? "Names are lower-case words, digits and hyphens: third-wheel." : $"Names are lower-case words, digits and hyphens: '{better}'?");
}
