using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Files.Checks.Parts;

internal static class NeverFitted
{
    public static readonly Rule Rule = new(
        "never-fitted", Severity.Error, "A part taken off and never fitted",
        "Whatever comes off is fitted again or replaced, so that the ledger of parts balances before the job can close.");

    public static Diagnostic Of(string file, Place at, string part, string when) =>
        Rule.At(file, at, $"'{part}' is taken off here and never fitted{when}", "A later step should have it under 'fits'.");
}
