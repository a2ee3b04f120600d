using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Files.Checks.Reading;

internal static class NotUtf8
{
    public static readonly Rule Rule = new(
        "not-utf-8", Severity.Error, "A text that is not UTF-8",
        "Signs such as ° and é are read only as UTF-8. The message names the first character that is not; the editor that " +
        "wrote the file can save it again as UTF-8.");

    private const string SaveAsUtf8 = "Save it as UTF-8: most editors have this under \"Save as\", encoding.";

    public static Diagnostic At(string file, Place place) =>
        Rule.At(file, place, $"the text is not UTF-8: the first character that is not stands in line {place.Line}, column {place.Column}", SaveAsUtf8);

    public static Diagnostic Utf16(string file) => Rule.At(file, default, "the text is UTF-16", SaveAsUtf8);
}
