using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Files.Checks.Dangers;

internal static class ForbiddenSubstance
{
    public static readonly Rule Rule = new(
        "forbidden-substance", Severity.Error, "A substance that has no place at the bench",
        "Old handbooks wash with benzol (benzene), carbon tetrachloride and trichloroethylene: they cause cancer or ruin " +
        "the liver. Benzine is another thing, a petroleum spirit.");

    public static Diagnostic Of(string file, Place at, string substance, string written) =>
        Rule.At(
            file, at,
            $"{substance} is not used any more{(written == substance ? "" : $" (written here as '{written}')")}",
            "Use a cleaner made for the purpose, by its safety data sheet.");
}
