using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Files.Checks.References;

internal static class UnknownFinding
{
    public static readonly Rule Rule = new(
        "unknown-finding", Severity.Error, "A finding that the step cannot make",
        "'if-found' names a place or a choice that the step neither examines nor measures by feel, so that what it brings " +
        "in could never come.");

    public static Diagnostic Place(string file, Place at, string spot, IEnumerable<string> known) =>
        Rule.At(file, at, $"the step looks at no place {Words.Quoted(spot)}", Words.DidYouMean(spot, known));

    public static Diagnostic Choice(string file, Place at, string choice, IEnumerable<string> known) =>
        Rule.At(file, at, $"{Words.Quoted(choice)} is no choice of this step", Words.DidYouMean(choice, known));
}
