using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Files.Checks.Dangers;

internal static class DoubtfulSubstance
{
    public static readonly Rule Rule = new(
        "doubtful-substance", Severity.Warning, "A substance to think about twice",
        "Dichloromethane (methylene chloride) and 1-bromopropane (n-propyl bromide) are restricted in many places. Look " +
        "at the safety data sheet and at local law.");

    public static Diagnostic Of(string file, Place at, string substance, string written) =>
        Rule.At(
            file, at,
            $"{substance} is restricted in many places{(written == substance ? "" : $" (written here as '{written}')")}",
            "Look at its safety data sheet and at local law, or use another cleaner.");
}
