using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Files.Checks.Reading;

internal static class ConfirmYes
{
    public static readonly Rule Rule = new(
        "confirm-yes", Severity.Error, "A question to which one says yes without looking",
        "Whoever has answered yes a hundred times answers yes the hundred and first time. A confirm asks for a state or a " +
        "value that must be looked up: which way, how many, what colour.");

    public static Diagnostic Of(string file, Place at) =>
        Rule.At(file, at, "this confirm is answered with yes or no", "Ask for what is seen: which way the fork falls, how many turns.");

    public static bool IsYesOrNo(IReadOnlyList<string> choices) =>
        choices.Count > 0 && choices.All(c => c.ToLowerInvariant() is "yes" or "no" or "ok" or "done" or "not done" or "y" or "n");
}
