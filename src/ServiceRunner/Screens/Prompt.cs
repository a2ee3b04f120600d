using ServiceRunner.Files.Sentences;

namespace ServiceRunner.Screens;

/// <summary>A question that wants typing.</summary>
/// <param name="Label">The question, in a few words.</param>
/// <param name="Hint">What an answer looks like.</param>
/// <param name="Start">What stands in the field at first.</param>
/// <param name="Accept">Takes the answer; a sentence if it cannot be taken (the field stays open), else empty.</param>
public sealed record Prompt(string Label, string Hint, string Start, Func<string, string> Accept)
{
    /// <summary>A question that wants a few words, and not none.</summary>
    public static Prompt Words(string label, string hint, Func<string, string> accept) =>
        new(label, hint, "", text => text.Trim().Length == 0 ? "Nothing was typed." : accept(text.Trim()));

    /// <summary>A question that wants a reason: whoever reads it later must understand it, so a letter is none.</summary>
    public static Prompt Because(string label, string hint, Func<string, string> accept) =>
        Words(label, hint, text => text.Count(char.IsLetterOrDigit) < 2 ? "Say it in a few words." : accept(text));

    /// <summary>Asks for the reason that the workshop wants for deviations of these kinds.</summary>
    public static Prompt Reason(IReadOnlyList<string> kinds, Func<string, string> accept) =>
        Because($"Why {Times.List(kinds.Select(JobWords.DeviationKind))}?", "A few words; it is written down with your initials.", accept);
}
