using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Files.Checks.Reading;

internal static class TakeInConflict
{
    public static readonly Rule Rule = new(
        "take-in-conflict", Severity.Error, "The same id with two meanings in files taken in",
        "Parts and oiling points of a file taken in come along. Where both files know the same one, both must say the " +
        "same of it.");

    public static Diagnostic Of(string file, Place at, string thing, string id, string here, string there) =>
        Rule.At(
            file, at,
            $"the {thing} '{id}' is described in {here} and in {there}, and not in the same way",
            "Let both say the same, or give one of them another id.");

    public static Diagnostic Alias(string file, Place at, string alias) =>
        Rule.At(file, at, $"two files come in as '{alias}'", "Give one of them another name with 'as'.");
}
