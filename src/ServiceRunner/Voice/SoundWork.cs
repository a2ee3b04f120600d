using ServiceRunner.Files.Sentences;
using VoiceSettings = ServiceRunner.Core.Workshops.Voice;

namespace ServiceRunner.Voice;

/// <summary>The work of the speaker's thread: programs are looked for, tones played, words spoken, and the bell rung where that fails.</summary>
internal sealed class SoundWork(VoiceSettings settings, Action? bell, string searchPath, string temporary, Action<string>? diagnose = null) : IDisposable
{
    private readonly Lock _guard = new();
    private readonly Queue<string> _notes = new();
    private readonly HashSet<string> _told = [];
    private readonly SoundFiles _files = new(temporary);
    private Player? _player;
    private Talker? _talker;

    /// <summary>What sounds, as a sentence.</summary>
    public string Sound { get; private set => Volatile.Write(ref field, value); } = settings.Sound ? "Sound: not tried yet." : VoiceWords.SoundOff;

    /// <summary>What speaks, as a sentence.</summary>
    public string Speech { get; private set => Volatile.Write(ref field, value); } = settings.Speech ? "Speech: not tried yet." : VoiceWords.SpeechOff;

    /// <summary>The program that plays; empty if none does.</summary>
    public string PlayerName { get; private set => Volatile.Write(ref field, value); } = "";

    /// <summary>The program that speaks; empty if none does.</summary>
    public string TalkerName { get; private set => Volatile.Write(ref field, value); } = "";

    /// <summary>Why nothing is spoken, as a sentence; empty if it is.</summary>
    public string WhyNoSpeech { get; private set => Volatile.Write(ref field, value); } = "";

    /// <summary>A complaint that was not told before, or nothing.</summary>
    public string TakeNote()
    {
        lock (_guard)
        {
            return _notes.TryDequeue(out string? note) ? note : "";
        }
    }

    /// <summary>Looks for the programs.</summary>
    public void Look()
    {
        if (settings.Sound)
        {
            _player = new Player(OutsideProgram.Choose(settings.Player, Player.Known, searchPath), _files);
            diagnose?.Invoke($"players: {Known(_player.Programs)}");
            if (_player.Programs.Count == 0) Note(VoiceWords.NoPlayer(Named(settings.Player), bell is not null));
        }
        if (settings.Speech)
        {
            _talker = new Talker(OutsideProgram.Choose(settings.Program, Talker.Known, searchPath), settings.WordsAMinute);
            diagnose?.Invoke($"speech programs: {Known(_talker.Programs)}");
            if (_talker.Programs.Count == 0) Note(WhyNoSpeech = VoiceWords.NoSpeech(Named(settings.Program)));
        }
        Report();
    }

    /// <summary>Tells one thing to its end, or until it is cut short.</summary>
    public void Tell(Utterance what, string words, Func<bool> cut)
    {
        try
        {
            if (what.Urgency is { } urgency && _player is not null) Ring(_player, Tone.Of(urgency), cut);
            if (words.Length > 0 && _talker is not null && !cut()) Speak(_talker, words, cut);
        }
        // The thread must not end, and with it the program, for a tone that nobody heard.
        catch (Exception e)
        {
            diagnose?.Invoke($"sound and speech: {e.GetType().Name}");
            Note(VoiceWords.Unforeseen(e.Message));
            if (what.Urgency is not null) Bell();
        }
        Report();
    }

    // While tones fail the bell does not wait for another failure.
    private void Ring(Player player, Tone tone, Func<bool> cut)
    {
        bool rung = player.Fails || player.Programs.Count == 0;
        if (rung) Bell();
        IReadOnlyList<OutsideProgram> tried = player.Programs;
        if (tried.Count == 0 || player.Play(tone, cut) != ChildEnd.Failed) return;
        if (!rung && !cut()) Bell();
        diagnose?.Invoke($"could not play: {Known(tried)}");
        Note(VoiceWords.PlayerFailed(tried.Select(p => p.Name), bell is not null));
        GivenUp(tried);
    }

    private void Speak(Talker talker, string words, Func<bool> cut)
    {
        IReadOnlyList<OutsideProgram> tried = talker.Programs;
        if (tried.Count == 0 || talker.Say(words, cut) != ChildEnd.Failed) return;
        diagnose?.Invoke($"could not speak: {Known(tried)}");
        Note(VoiceWords.SpeechFailed(tried.Select(p => p.Name)));
        GivenUp(tried);
    }

    private void GivenUp(IReadOnlyList<OutsideProgram> tried)
    {
        foreach (OutsideProgram program in tried.Where(p => p.GivenUp)) Note(VoiceWords.GivenUp(program.Name));
    }

    private void Bell()
    {
        try
        {
            bell?.Invoke();
        }
        catch (Exception e)
        {
            Note(VoiceWords.Unforeseen(e.Message));
        }
    }

    private void Report()
    {
        if (_player is not null) Sound = VoiceWords.Sound(PlayerName = _player.Name);
        if (_talker is not null) Speech = VoiceWords.Speech(TalkerName = _talker.Name);
    }

    // A program of the workshop's own may be called after somebody.
    private static string Known(IReadOnlyList<OutsideProgram> programs) => programs.Count == 0 ? "none"
        : string.Join(", ", programs.Select(p => Player.Known.Concat(Talker.Known).Any(k => k[0] == p.Name) ? p.Name : "one of the workshop's own").Select((n, i) => programs[i].GivenUp ? $"{n} (given up)" : n));

    private static string Named(IReadOnlyList<string> command) => command.Count > 0 ? command[0] : "";

    private void Note(string note)
    {
        lock (_guard)
        {
            if (_told.Add(note)) _notes.Enqueue(note);
        }
    }

    public void Dispose() => _files.Dispose();
}
