using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Files.Checks.Parts;

internal static class RemovedTwice
{
    public static readonly Rule Rule = new(
        "removed-twice", Severity.Error, "A part taken off twice",
        "A part that is off cannot come off. One of the two steps means another part, or the part goes in again in " +
        "between. Steps that cannot both be in one job are not held against each other.");

    public static Diagnostic Of(string file, Place at, string part, string first, string when) =>
        Rule.At(file, at, $"'{part}' is taken off here a second time; it came off in '{first}'{when}", "Is another part meant?");
}
