using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Files.Checks.Reading;

internal static class NeitherKind
{
    public static readonly Rule Rule = new(
        "neither-kind", Severity.Error, "Neither a procedure nor a workshop",
        "The key at the top says what a file is: 'procedure' with the procedure's id, or 'workshop' with the workshop's.");

    public static Diagnostic Of(string file, Place at) =>
        Rule.At(file, at, "this is neither a procedure nor a workshop", "A procedure begins with 'procedure:', a workshop with 'workshop:'.");

    public static Diagnostic Both(string file, Place at) =>
        Rule.At(file, at, "the file calls itself a procedure and a workshop", "Part it into two files.");

    public static Diagnostic NotKeys(string file, Place at, string kind) =>
        Rule.At(file, at, $"the file should begin with keys such as 'procedure:' or 'workshop:', and begins with {kind}");
}
