using System.Globalization;

namespace ServiceRunner.Files.Checks.Reading;

internal static class FileTooBig
{
    public static readonly Rule Rule = new(
        "file-too-big", Severity.Error, "A file of more than 4 MB",
        "A procedure or workshop file is written by a person and has some tens of kilobytes. What is larger is refused " +
        "before it is read: it is another kind of file, or the wrong one.");

    public static Diagnostic Of(string file, long bytes) =>
        Rule.At(
            file, default, string.Create(CultureInfo.InvariantCulture, $"the file has {Math.Ceiling(bytes / 104857.6) / 10:0.0} MB; at most 4 MB are read"),
            "Is this the file you meant? A long procedure can be parted into several that are taken in.");
}
