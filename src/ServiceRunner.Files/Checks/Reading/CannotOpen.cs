namespace ServiceRunner.Files.Checks.Reading;

internal static class CannotOpen
{
    public static readonly Rule Rule = new(
        "cannot-open", Severity.Error, "A file that cannot be opened",
        "The file is missing, is a folder, or may not be read. The message says what the system said.");

    public static Diagnostic Of(string file, string path, Exception reason) =>
        Rule.At(file, default, Sentence(path, reason), reason is FileNotFoundException or DirectoryNotFoundException ? "Look at how the name is written." : "");

    private static string Sentence(string path, Exception reason) => reason switch
    {
        _ when Directory.Exists(path) => "this is a folder and not a file",
        FileNotFoundException or DirectoryNotFoundException => "there is no such file",
        UnauthorizedAccessException => "you may not read this file",
        _ => "the file cannot be read",
    };
}
