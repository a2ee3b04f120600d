using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Files.Checks.Reading;

internal static class WindowOrder
{
    public static readonly Rule Rule = new(
        "window-order", Severity.Error, "Least, aim and most out of order",
        "A soak that must last longer than it may can never be right.");

    public static Diagnostic Of(string file, Place at, string lower, string lowerValue, string upper, string upperValue) =>
        Rule.At(file, at, $"'{lower}' ({lowerValue}) is more than '{upper}' ({upperValue})", "In order: least, aim, most.");

    public static Diagnostic Limits(string file, Place at, string key) =>
        Rule.At(file, at, $"the lower limit of '{key}' is above the upper one", "The lower limit comes first.");
}
