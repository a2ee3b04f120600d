using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Files.Checks.Dangers;

internal static class DelicateInUltrasonic
{
    public static readonly Rule Rule = new(
        "ultrasonic-delicate", Severity.Error, "A delicate part in the ultrasonic",
        "The part's own line says that ultrasonic harms it.");

    public static Diagnostic Of(string file, Place at, string part) =>
        Rule.At(file, at, $"'{part}' is delicate and goes into the ultrasonic here", "Give it a bath of its own without ultrasonic.");
}
