using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Files.Checks.Oiling;

internal static class NotADryPoint
{
    public static readonly Rule Rule = new(
        "not-a-dry-point", Severity.Error, "A point that gets oil and is to be seen dry",
        "Only points whose role is 'never' can be looked at for being dry.");

    public static Diagnostic Of(string file, Place at, string point, string role) =>
        Rule.At(file, at, $"'{point}' is to stay dry here, and its role is '{role}'", "Take it out here, or give the point the role 'never'.");
}
