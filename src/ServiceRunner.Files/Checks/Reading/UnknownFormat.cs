using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Files.Checks.Reading;

internal static class UnknownFormat
{
    public static readonly Rule Rule = new(
        "unknown-format", Severity.Error, "A format of the file that is not known",
        "The number under 'format' says which rules the file is written by. A higher number was written for a later " +
        "version of the program.");

    public static Diagnostic Of(string file, Place at, string value) =>
        Rule.At(file, at, $"format {Words.Quoted(value)} is not known to this version", "It reads format 1.");
}
