using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Files.Checks.Reading;

internal static class TakeInFaulty
{
    public static readonly Rule Rule = new(
        "take-in-faulty", Severity.Error, "A file to take in that has errors",
        "The errors are in the other file; check it for all of them.");

    public static Diagnostic Of(string file, Place at, string id, int errors, Diagnostic first) =>
        Rule.At(
            file, at, $"{Words.Quoted(id)} has {Words.Count(errors, "error")} and cannot be taken in as it is",
            $"{(errors == 1 ? "It is" : "The first is")} {first.File}:{first.Place}: {first.Message}.");
}
