using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Files.Checks.Parts;

internal static class FittedTwice
{
    public static readonly Rule Rule = new(
        "fitted-twice", Severity.Error, "A part fitted twice for good",
        "A part that is in cannot go in. What is only tried dry stands under 'tries'. Steps that cannot both be in one " +
        "job, by their 'only-if', are not held against each other.");

    public static Diagnostic Of(string file, Place at, string part, string first, string when) =>
        Rule.At(file, at, $"'{part}' is fitted here a second time; it went in in '{first}'{when}", "A dry trial stands under 'tries'.");
}
