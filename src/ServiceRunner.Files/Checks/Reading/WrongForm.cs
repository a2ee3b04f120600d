using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Files.Checks.Reading;

internal static class WrongForm
{
    public static readonly Rule Rule = new(
        "wrong-form", Severity.Error, "A value of another form than the key wants",
        "The value cannot be understood. The hint shows the form.");

    public static Diagnostic Of(string file, Place at, string key, string value, string form) =>
        Rule.At(file, at, $"'{key}' cannot be read from {Words.Quoted(value)}", $"Write it {form}.");

    public static Diagnostic Count(string file, Place at, string key, int wanted, int got, string form) =>
        Rule.At(file, at, $"'{key}' wants {Words.Count(wanted, "number")}, and here {(got == 1 ? "is" : "are")} {got}", $"Write it {form}.");

    public static Diagnostic NotHere(string file, Place at, string key, string owner) =>
        Rule.At(file, at, $"{owner} has no '{key}'", "Take it out.");
}
