namespace ServiceRunner.Pedal;

/// <summary>What a switch, a voice or a macro can ask of the bench without a hand on the keyboard.</summary>
public enum PedalWord
{
    GoOn,
    Back,
    SayAgain,
    Answer,
    Mark,
}

/// <summary>The words as they are written on the socket and after the verb.</summary>
internal static class PedalWords
{
    /// <summary>All of them, for a sentence.</summary>
    public const string All = "go-on, back, say-again, answer and mark";

    /// <summary>Null for anything that is not exactly one of the words.</summary>
    public static PedalWord? Read(string text) => text switch
    {
        "go-on" => PedalWord.GoOn,
        "back" => PedalWord.Back,
        "say-again" => PedalWord.SayAgain,
        "answer" => PedalWord.Answer,
        "mark" => PedalWord.Mark,
        _ => null,
    };
}
