namespace ServiceRunner.Files.Sentences;

/// <summary>What can be heard and what cannot, as sentences.</summary>
public static class VoiceWords
{
    /// <summary>Said in the place of sound that is switched off.</summary>
    public const string SoundOff = "Sound is off in the workshop file.";

    /// <summary>Said in the place of speech that is switched off.</summary>
    public const string SpeechOff = "Speech is off in the workshop file.";

    /// <summary>Nothing sounds because somebody wanted it so.</summary>
    public const string Quiet = "Quiet: no tone, no word, no bell.";

    /// <summary>Why nothing can be said again.</summary>
    public const string NothingSaid = "Nothing was said yet.";

    /// <summary>No program that plays tones.</summary>
    public static string NoPlayer(string named, bool bell = true) => $"{Missing(named, "player", "program that plays sounds")}; {Instead(bell)}.";

    /// <summary>No program that speaks.</summary>
    public static string NoSpeech(string named) => $"{Missing(named, "program", "speech program")}; nothing is spoken.";

    /// <summary>Every program that could play failed.</summary>
    public static string PlayerFailed(IEnumerable<string> names, bool bell = true) => $"{Times.List(names)} could not play a tone; {Instead(bell)}.";

    /// <summary>Every program that could speak failed.</summary>
    public static string SpeechFailed(IEnumerable<string> names) => $"{Times.List(names)} could not speak.";

    /// <summary>A program is not tried any more.</summary>
    public static string GivenUp(string name) => $"{name} did not end in time twice and is not used any more in this run.";

    /// <summary>Something that nobody thought of; the work goes on.</summary>
    public static string Unforeseen(string what) => $"Sound and speech had a fault: {what}";

    /// <summary>What sounds.</summary>
    public static string Sound(string player) => player.Length > 0 ? $"Sound: {player}." : "Sound: the terminal's bell.";

    /// <summary>What speaks.</summary>
    public static string Speech(string program) => program.Length > 0 ? $"Speech: {program}." : "Speech: none.";

    // Told line by line, nothing but lines is written.
    private static string Instead(bool bell) => bell ? "the terminal's bell rings instead" : "alarms are told as lines only";

    private static string Missing(string named, string key, string kind) =>
        named.Length > 0 ? $"'{named}', named as the {key} of 'voice' in the workshop file, was not found" : $"No {kind} was found";
}
