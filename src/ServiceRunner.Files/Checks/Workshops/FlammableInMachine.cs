using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Files.Checks.Workshops;

internal static class FlammableInMachine
{
    public static readonly Rule Rule = new(
        "flammable-in-machine", Severity.Error, "A flammable liquid in a machine that is not made for it",
        "A heated or ultrasonic machine that its maker does not state to be for flammable liquids can set them on fire. " +
        "Only the maker's statement counts, under 'rated-for-flammables'.");

    public static Diagnostic Of(string file, Place at, string machine, string liquid, string what) =>
        Rule.At(
            file, at,
            $"'{liquid}' can burn, and '{machine}' is {what} and not stated to be made for flammable liquids",
            "Use an open jar away from heat, or a machine whose maker states it.");
}
