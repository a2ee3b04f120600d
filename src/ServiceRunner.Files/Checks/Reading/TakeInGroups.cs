using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Files.Checks.Reading;

internal static class TakeInGroups
{
    public static readonly Rule Rule = new(
        "take-in-groups", Severity.Error, "Groups wanted and not given, or given and not wanted",
        "A file made to be taken in names under 'wants-groups' what it needs to be told; 'with' tells it.");

    public static Diagnostic NotGiven(string file, Place at, string id, string group) =>
        Rule.At(file, at, $"{Words.Quoted(id)} wants the group '{group}', and it is not given", $"Add with: {{{group}: […]}}.");

    public static Diagnostic NotWanted(string file, Place at, string id, string group, IEnumerable<string> wanted) =>
        Rule.At(file, at, $"{Words.Quoted(id)} wants no group {Words.Quoted(group)}", Words.DidYouMean(group, wanted));
}
