using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Files.Checks.Reading;

internal static class NotANumber
{
    public static readonly Rule Rule = new(
        "not-a-number", Severity.Error, "Not a number, or not one that can be meant",
        "A number was expected. Decimals may be written with a point or a comma.");

    public static Diagnostic Of(string file, Place at, string key, string value) =>
        Rule.At(file, at, $"'{key}' wants a number, and {Words.Quoted(value)} is none");

    public static Diagnostic Whole(string file, Place at, string key, string value) =>
        Rule.At(file, at, $"'{key}' wants a whole number, and {Words.Quoted(value)} is none");

    public static Diagnostic Range(string file, Place at, string key, string value, string range) =>
        Rule.At(file, at, $"'{key}' is {range}, and {Words.Quoted(value)} is not");
}
