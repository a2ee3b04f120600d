using System.Text;
using ServiceRunner.Core.Jobs;
using ServiceRunner.Files.Sentences;
using VoiceSettings = ServiceRunner.Core.Workshops.Voice;

namespace ServiceRunner.Voice;

/// <summary>
/// Tells steps and alarms: a tone, then the words. Everything outside of this program is done on one thread of its own;
/// a call only notes what is wanted. Nothing that a sound or speech program does or fails to do comes back as an exception.
/// </summary>
public sealed class Speaker : IDisposable
{
    /// <summary>Longer texts are cut at a word: nobody listens for minutes, and this much always fits a pipe.</summary>
    internal const int LongestText = 400;

    private readonly Lock _guard = new();
    private readonly AutoResetEvent _wake = new(false);
    private readonly Agenda _agenda = new();
    private readonly VoiceSettings _settings;
    private readonly SoundWork? _work;
    private readonly Thread? _thread;
    private bool _quiet;
    private volatile bool _ending;

    /// <summary>Starts listening for what is to be told.</summary>
    /// <param name="settings">What the workshop wants to hear.</param>
    /// <param name="bell">Rings the terminal's bell. It is called on the speaker's own thread. Null if there is none to ring.</param>
    /// <param name="diagnose">Told which programs there are and which failed, by their well-known names only.</param>
    public Speaker(VoiceSettings settings, Action? bell, Action<string>? diagnose = null) : this(settings, bell, Environment.GetEnvironmentVariable("PATH") ?? "", Path.GetTempPath(), diagnose)
    {
    }

    internal Speaker(VoiceSettings settings, Action? bell, string searchPath, string temporary, Action<string>? diagnose = null)
    {
        (_settings, _quiet) = (settings, settings.Quiet);
        if (!settings.Sound && !settings.Speech) return;
        _work = new SoundWork(settings, bell, searchPath, temporary, diagnose);
        _thread = new Thread(Tell) { IsBackground = true, Name = "voice" };
        _thread.Start();
    }

    /// <summary>Says what lies before the repairer, and cuts short the step before it. An empty text only does the latter.</summary>
    public void Step(string text)
    {
        if (!_settings.Speech) return;
        lock (_guard)
        {
            _agenda.Step(new Utterance(text), _settings.Steps && !_quiet);
        }
        _wake.Set();
    }

    /// <summary>Sounds an alarm and says its words, after those that are more urgent.</summary>
    /// <param name="urgency">A low one is only heard where the workshop wants it.</param>
    /// <param name="text">Its words.</param>
    /// <param name="about">What it is about: an alarm that waits about the same is replaced.</param>
    public void Alarm(Urgency urgency, string text, string about = "")
    {
        if (_work is null || (urgency == Urgency.Low && !_settings.LeastSounds)) return;
        lock (_guard)
        {
            _agenda.Alarm(new Utterance(text, urgency, about));
        }
        _wake.Set();
    }

    /// <summary>What an alarm was about is done: it is not told any more.</summary>
    public void Settled(string about)
    {
        lock (_guard)
        {
            _agenda.Settled(about);
        }
    }

    /// <summary>Says the last step or alarm again.</summary>
    public void SayAgain()
    {
        if (WhyNotAgain.Length > 0) return;
        lock (_guard)
        {
            _agenda.Again();
        }
        _wake.Set();
    }

    /// <summary>Why nothing can be said again, as a sentence; empty if it can.</summary>
    public string WhyNotAgain
    {
        get
        {
            if (!_settings.Speech) return VoiceWords.SpeechOff;
            if (_work is { WhyNoSpeech.Length: > 0 } work) return work.WhyNoSpeech;
            lock (_guard)
            {
                return _quiet ? VoiceWords.Quiet : !_agenda.HasLast ? VoiceWords.NothingSaid : "";
            }
        }
    }

    /// <summary>While true there is no tone, no word and no bell. Alarms wait, and are told when it ends.</summary>
    public bool Quiet
    {
        get
        {
            lock (_guard)
            {
                return _quiet;
            }
        }
        set
        {
            lock (_guard)
            {
                if (value && !_quiet) _agenda.Hush();
                _quiet = value;
            }
            _wake.Set();
        }
    }

    /// <summary>Alarms that were not told yet, the most urgent first.</summary>
    public IReadOnlyList<WaitingAlarm> Waiting
    {
        get
        {
            lock (_guard)
            {
                return [.. _agenda.Alarms.Select(a => new WaitingAlarm(a.Urgency!.Value, a.Text, a.About))];
            }
        }
    }

    /// <summary>True if all was told.</summary>
    internal bool IsIdle
    {
        get
        {
            lock (_guard)
            {
                return _agenda.IsEmpty;
            }
        }
    }

    /// <summary>The program that plays tones; empty if none does.</summary>
    public string Player => _work?.PlayerName ?? "";

    /// <summary>The program that speaks; empty if none does.</summary>
    public string Talker => _work?.TalkerName ?? "";

    /// <summary>What sounds and what speaks, as sentences.</summary>
    public string Status => $"{(Quiet ? VoiceWords.Quiet + " " : "")}{_work?.Sound ?? VoiceWords.SoundOff} {_work?.Speech ?? VoiceWords.SpeechOff}";

    /// <summary>A complaint that was not told before, or nothing.</summary>
    public string TakeNote() => _work?.TakeNote() ?? "";

    private void Tell()
    {
        using SoundWork work = _work!;
        work.Look();
        while (!_ending)
        {
            Utterance? next;
            lock (_guard)
            {
                next = _quiet ? null : _agenda.Take();
            }
            if (next is null)
            {
                _wake.WaitOne();
                continue;
            }
            work.Tell(next, Words(next.Text), IsCut);
            lock (_guard)
            {
                _agenda.Told();
            }
        }
    }

    private bool IsCut()
    {
        if (_ending) return true;
        lock (_guard)
        {
            return _agenda.Cut;
        }
    }

    /// <summary>The words of a text, no more than can be listened to.</summary>
    internal static string Words(string text)
    {
        string words = SpokenWords.Of(Shortened(text, 2 * LongestText));
        return Shortened(words, LongestText);
    }

    private static string Shortened(string text, int most)
    {
        if (text.Length <= most) return text;
        int end = text.LastIndexOf(' ', most);
        return text[..(end > most / 2 ? end : char.IsHighSurrogate(text[most - 1]) ? most - 1 : most)];
    }

    /// <summary>Ends what is being told.</summary>
    public void Dispose()
    {
        _ending = true;
        _wake.Set();
        _thread?.Join(TimeSpan.FromMilliseconds(500));
    }
}
