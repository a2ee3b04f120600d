using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Files.Checks.Reading;

internal static class BadDuration
{
    public static readonly Rule Rule = new(
        "bad-duration", Severity.Error, "Not a length of time",
        "A length of time needs its unit; units go from long to short, each once.");

    public static Diagnostic Of(string file, Place at, string key, string value) =>
        Rule.At(file, at, $"'{key}' wants a length of time, and {Words.Quoted(value)} is none", "Write it like 45 s, 8 min, 1 h 30 min, 24 h or 2 d.");
}
