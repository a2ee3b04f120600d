using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Files.Checks.Dangers;

internal static class ShellacInAlcohol
{
    public static readonly Rule Rule = new(
        "shellac-alcohol", Severity.Error, "Shellac in alcohol for more than 30 seconds",
        "Alcohol dissolves shellac: a stone or a roller jewel comes loose. A bath of seconds, with a 'most' that the " +
        "clock can hold, may do. A step that is only there where nothing is set in shellac is left alone.");

    public static Diagnostic Of(string file, Place at, string part, string solution, bool noMost) =>
        Rule.At(
            file, at, noMost ? $"'{part}' is set with shellac, and its bath in {solution} has no 'most'" : $"'{part}' is set with shellac and lies in {solution} for more than 30 s",
            "Give most: 30 s or less, another liquid, or only-if: {shellac: no}.");
}
