using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Files.Checks.Workshops;

internal static class UnknownShelf
{
    public static readonly Rule Rule = new(
        "unknown-shelf", Severity.Error, "A liquid or jar that does not stand in the workshop",
        "A jar holds a liquid of the list, and a machine has jars of the list.");

    public static Diagnostic Of(string file, Place at, string thing, string id, IEnumerable<string> known) =>
        Rule.At(file, at, $"there is no {thing} {Words.Quoted(id)} in this workshop", Words.DidYouMean(id, known));
}
