namespace ServiceRunner.Files.Checks.Reading;

internal static class NotText
{
    public static readonly Rule Rule = new(
        "not-text", Severity.Error, "A picture or another binary file",
        "The bytes are those of a picture or of another file that is no text.");

    public static Diagnostic Picture(string file, string kind) =>
        Rule.At(file, default, $"this is a picture ({kind}) and not a text", "Give the YAML file.");

    public static Diagnostic Binary(string file) =>
        Rule.At(file, default, "this is a binary file and not a text", "Give the YAML file.");
}
