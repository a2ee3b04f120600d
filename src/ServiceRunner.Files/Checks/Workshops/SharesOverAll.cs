using System.Globalization;
using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Files.Checks.Workshops;

internal static class SharesOverAll
{
    public static readonly Rule Rule = new(
        "shares-over-all", Severity.Error, "Shares of more than the whole",
        "The shares of what is in a liquid are parts of a hundred by volume.");

    public static Diagnostic Of(string file, Place at, string liquid, decimal sum) =>
        Rule.At(file, at, string.Create(CultureInfo.InvariantCulture, $"the shares of '{liquid}' come to {sum} %"));
}
