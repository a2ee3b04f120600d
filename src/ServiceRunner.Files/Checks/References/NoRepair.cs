using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Files.Checks.References;

internal static class NoRepair
{
    public static readonly Rule Rule = new(
        "no-repair", Severity.Warning, "A finding that brings in a procedure that is no repair",
        "'if-found' names a procedure whose head has no 'mends'. Brought in, it would not know for which of its parts the " +
        "part with the fault stands, so that a job cannot take it in as a repair.");

    public static Diagnostic Of(string file, Place at, string id) =>
        Rule.At(file, at, $"the procedure {Words.Quoted(id)} does not say what it mends", "Give it 'mends: PART' at its head, or name a repair.");
}
