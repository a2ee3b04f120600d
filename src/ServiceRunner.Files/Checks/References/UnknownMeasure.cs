using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Files.Checks.References;

internal static class UnknownMeasure
{
    public static readonly Rule Rule = new(
        "unknown-measure", Severity.Error, "A sheet with a size that nothing is measured for",
        "A line of 'sheet' is reckoned from what a step measures, by the words under 'what'. No step measures this as a " +
        "number, so that the line would stay empty.");

    public static Diagnostic Of(string file, Place at, string what, IEnumerable<string> known) =>
        Rule.At(file, at, $"no step measures {Words.Quoted(what)}", Words.DidYouMean(what, known));

    public static Diagnostic Felt(string file, Place at, string what) =>
        Rule.At(file, at, $"{Words.Quoted(what)} is only felt, and a sheet wants a number", "Give the measure a 'unit'.");
}
