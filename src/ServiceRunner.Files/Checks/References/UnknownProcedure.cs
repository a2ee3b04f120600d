using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Files.Checks.References;

internal static class UnknownProcedure
{
    public static readonly Rule Rule = new(
        "unknown-procedure", Severity.Warning, "A procedure that a finding brings in and that is not there",
        "The finding can still be made; what to do about it must then be written as the job goes.");

    public static Diagnostic Of(string file, Place at, string id, IEnumerable<string> known) =>
        Rule.At(file, at, $"there is no procedure {Words.Quoted(id)} to bring in", Words.DidYouMean(id, known));
}
