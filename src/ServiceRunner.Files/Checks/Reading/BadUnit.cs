using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Files.Checks.Reading;

internal static class BadUnit
{
    public static readonly Rule Rule = new(
        "bad-unit", Severity.Error, "A quantity without its unit, or with another",
        "A bare number leaves open what it counts. The hint shows the unit.");

    public static Diagnostic Of(string file, Place at, string key, string value, string example) =>
        Rule.At(file, at, $"'{key}' {Words.Quoted(value)} has not the unit that is wanted", $"Write it like {example}.");
}
