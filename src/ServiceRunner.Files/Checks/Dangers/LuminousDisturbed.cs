using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Files.Checks.Dangers;

internal static class LuminousDisturbed
{
    public static readonly Rule Rule = new(
        "luminous-disturbed", Severity.Warning, "Luminous paint wetted, brushed or blown",
        "Old luminous paint may hold radium, and newer paint tritium. Its dust is what harms: do not scrape, brush, blow " +
        "or wash it; stop, bag it and ask for competent advice.");

    public static Diagnostic Of(string file, Place at, string part, string how) =>
        Rule.At(file, at, $"'{part}' is luminous and {how}", "Leave the paint alone and ask for competent advice.");
}
