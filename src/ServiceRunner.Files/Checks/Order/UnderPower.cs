using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Files.Checks.Order;

internal static class UnderPower
{
    public static readonly Rule Rule = new(
        "under-power", Severity.Error, "A part moved while the power is on",
        "Platform, fork, pallets and a verge or cylinder balance must not be moved while a mainspring or a weight drives " +
        "the train: it runs away and breaks teeth and pivots. The power is followed through the steps in the order of the " +
        "list.");

    public static Diagnostic NotLetDown(string file, Place at, string part, string when) =>
        Rule.At(file, at, $"'{part}' is taken off here, and no step before this lets the power down{when}", "A step with power: off comes first.");

    public static Diagnostic On(string file, Place at, string part, string woundIn, string when) =>
        Rule.At(file, at, $"'{part}' is moved here while the power is on, since '{woundIn}'{when}", "Let the power down before, with power: off.");
}
