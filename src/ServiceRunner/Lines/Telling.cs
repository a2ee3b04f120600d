namespace ServiceRunner.Lines;

/// <summary>A sentence of a screen.</summary>
/// <param name="Text">The sentence.</param>
/// <param name="Key">What it is about: while this stays the same nothing new is told, though a figure in it runs on.</param>
public readonly record struct Telling(string Text, string Key)
{
    /// <summary>A sentence that is new whenever it reads otherwise.</summary>
    public static implicit operator Telling(string text) => new(text, text);
}
