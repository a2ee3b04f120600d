using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Files.Checks.Workshops;

internal static class FlammableDenied
{
    public static readonly Rule Rule = new(
        "flammable-denied", Severity.Error, "A liquid that can burn and is called not flammable",
        "Its own hazard statements (H224, H225, H226) say that it can.");

    public static Diagnostic Of(string file, Place at, string liquid, string code) =>
        Rule.At(file, at, $"'{liquid}' has the hazard statement {code} and is not called flammable", "Write flammable: yes.");
}
