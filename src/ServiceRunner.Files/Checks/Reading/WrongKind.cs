using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Files.Checks.Reading;

internal static class WrongKind
{
    public static readonly Rule Rule = new(
        "wrong-kind", Severity.Error, "A list where a value stands, or the other way round",
        "What is written has another shape than the key wants. A text with a colon or a bracket at its beginning may need " +
        "quotation marks.");

    public static Diagnostic Of(string file, Place at, string key, string wanted, string got) =>
        Rule.At(file, at, $"'{key}' wants {wanted}, and this is {got}");
}
