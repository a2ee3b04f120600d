using System.Globalization;
using ServiceRunner.Core.Quantities;
using ServiceRunner.Files.Yaml;

namespace ServiceRunner.Files.Checks.Reading;

internal static class TooMuch
{
    public static readonly Rule Rule = new(
        "too-much", Severity.Error, "Nested too deep, or too many values",
        "A file is read up to 32 levels deep and up to 200,000 values.");

    public static Diagnostic Depth(string file, Place at) =>
        Rule.At(file, at, $"values are nested more than {YamlReader.MostDepth} deep here", "A bracket may be missing or doubled.");

    public static Diagnostic Values(string file, Place at) =>
        Rule.At(
            file, at,
            string.Create(CultureInfo.InvariantCulture, $"the file has more than {YamlReader.MostValues:N0} values"),
            "Part it into several files.");

    public static Diagnostic Grown(string file, Place at, int most) =>
        Rule.At(
            file, at,
            string.Create(CultureInfo.InvariantCulture, $"with its groups and the files taken in, the procedure has more than {most:N0} steps and mentions of parts"),
            "Name large groups less often.");

    public static Diagnostic TakenIn(string file, Place at, int most) =>
        Rule.At(file, at, $"more than {most} files are taken in, one by way of another", "Take a file in once.");
}
