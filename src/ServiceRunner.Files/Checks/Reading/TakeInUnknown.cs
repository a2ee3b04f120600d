using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Files.Checks.Reading;

internal static class TakeInUnknown
{
    public static readonly Rule Rule = new(
        "take-in-unknown", Severity.Error, "A file to take in that is not there",
        "It was looked for beside the file, among the workshop's own procedures and among those shipped, by the id under " +
        "its 'procedure' key.");

    public static Diagnostic Of(string file, Place at, string id, IEnumerable<string> known) =>
        Rule.At(file, at, $"there is no procedure {Words.Quoted(id)} to take in", Words.DidYouMean(id, known));
}
