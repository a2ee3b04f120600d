using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Files.Checks.References;

internal static class SameProcedure
{
    public static readonly Rule Rule = new(
        "same-procedure", Severity.Warning, "Two files of one procedure",
        "Two files of a folder have the same id under 'procedure'. The one that comes first by its file's name is found " +
        "when the procedure is chosen or taken in; the other never is.");

    public static Diagnostic Of(string file, Place at, string id, string first) =>
        Rule.At(
            file, at,
            $"the procedure '{id}' is also in {Path.GetFileName(first)}, which is the one that counts",
            "Give one of them another id, or move it away.");
}
