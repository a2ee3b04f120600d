namespace ServiceRunner.Screens;

/// <summary>A question that wants typing.</summary>
/// <param name="Label">The question, in a few words.</param>
/// <param name="Hint">What an answer looks like.</param>
/// <param name="Start">What stands in the field at first.</param>
/// <param name="Accept">Takes the answer; a sentence if it cannot be taken (the field stays open), else empty.</param>
public sealed record Prompt(string Label, string Hint, string Start, Func<string, string> Accept);
