using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Files.Checks.Parts;

internal static class FittedBeforeRemoved
{
    public static readonly Rule Rule = new(
        "fitted-before-removed", Severity.Error, "A part fitted or tried before it is taken off",
        "In the order of the list a part goes in that has not come off yet. One of the steps stands in the wrong place, " +
        "or names the wrong part.");

    public static Diagnostic Of(string file, Place at, string part, bool tried, string removedIn, string when) =>
        Rule.At(file, at, $"'{part}' is {(tried ? "tried" : "fitted")} here and taken off only later, in '{removedIn}'{when}");
}
