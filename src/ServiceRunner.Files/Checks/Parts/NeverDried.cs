using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Files.Checks.Parts;

internal static class NeverDried
{
    public static readonly Rule Rule = new(
        "never-dried", Severity.Warning, "Washed and never dried",
        "A part comes out of a liquid and no later step dries it: steel rusts and the next liquid is spoilt.");

    public static Diagnostic Of(string file, Place at, string part, string when) =>
        Rule.At(file, at, $"'{part}' is washed here and no later step dries it{when}", "Add a step with 'dry'.");
}
