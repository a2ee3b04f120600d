using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Files.Checks.Dangers;

internal static class FlammableThenHeat
{
    public static readonly Rule Rule = new(
        "flammable-heat", Severity.Warning, "From a flammable liquid into a heated dryer",
        "A basket wet with a flammable liquid put into warm air is the commonest way to a fire. Spin it off and let it " +
        "drain first.");

    public static Diagnostic Of(string file, Place at, string part, string solution, string when) =>
        Rule.At(
            file, at,
            $"'{part}' comes from {solution} into heat with no spin-off or draining between{when}",
            "Put a step with 'spin', or 'dry' by air, between them.");
}
