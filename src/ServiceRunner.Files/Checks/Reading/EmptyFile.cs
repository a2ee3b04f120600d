namespace ServiceRunner.Files.Checks.Reading;

internal static class EmptyFile
{
    public static readonly Rule Rule = new(
        "empty-file", Severity.Error, "An empty file",
        "There is nothing in the file but blanks and comments.");

    public static Diagnostic Of(string file) =>
        Rule.At(
            file, default,
            "the file is empty",
            "A procedure begins with 'procedure:', a workshop with 'workshop:'.");
}
