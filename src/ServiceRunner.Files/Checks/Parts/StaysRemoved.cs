using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Files.Checks.Parts;

internal static class StaysRemoved
{
    public static readonly Rule Rule = new(
        "stays-removed", Severity.Error, "A part that stays and is taken off",
        "'stays: yes' says that the procedure never takes the part off.");

    public static Diagnostic Of(string file, Place at, string part) =>
        Rule.At(
            file, at,
            $"'{part}' stays, and is taken off here",
            "Take out 'stays', or this mention.");
}
