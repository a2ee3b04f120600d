using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Files.Checks.Dangers;

internal static class Harmed
{
    public static readonly Rule Rule = new(
        "harmed", Severity.Warning, "A part in what harms it",
        "The part's own line says what harms it, under 'delicate', and the step does just that.");

    public static Diagnostic Of(string file, Place at, string part, string harm, string how) =>
        Rule.At(file, at, $"'{part}' is delicate to {harm} and {how}");
}
