using ServiceRunner.Core.Jobs;

namespace ServiceRunner.Voice;

/// <summary>
/// What is to be told and in which order: alarms first, the most urgent first; then what was asked for again; then the
/// step. Only the newest step counts. It knows no thread: whoever holds it locks.
/// </summary>
internal sealed class Agenda
{
    // More alarms than jars can be: whatever goes wrong outside, the list ends somewhere.
    private const int MostAlarms = 50;

    private readonly List<Utterance> _alarms = [];
    private Utterance? _again;
    private Utterance? _step;
    private Utterance? _last;

    /// <summary>What is being told.</summary>
    public Utterance? Now { get; private set; }

    /// <summary>True if what is being told is to end at once.</summary>
    public bool Cut { get; private set; }

    /// <summary>True if something can be said again.</summary>
    public bool HasLast => _last is not null;

    /// <summary>True if nothing is being told and nothing waits.</summary>
    public bool IsEmpty => Now is null && _alarms.Count == 0 && _again is null && _step is null;

    /// <summary>Alarms that wait, the most urgent first.</summary>
    public IReadOnlyList<Utterance> Alarms => [.. _alarms];

    /// <summary>Another step lies before the repairer.</summary>
    /// <param name="step">Its words.</param>
    /// <param name="aloud">False: only when it is asked for.</param>
    public void Step(Utterance step, bool aloud)
    {
        if (Now is { GivesWay: true }) Cut = true;
        (_step, _again) = (aloud ? step : null, null);
        if (!aloud) _last = step;
    }

    /// <summary>An alarm. A step that is being said is cut short and said again after it; a low one waits for its end.</summary>
    public void Alarm(Utterance alarm)
    {
        if (alarm.About.Length > 0) _alarms.RemoveAll(a => a.About == alarm.About);
        int at = _alarms.FindIndex(a => a.Urgency < alarm.Urgency);
        _alarms.Insert(at < 0 ? _alarms.Count : at, alarm);
        if (_alarms.Count > MostAlarms) _alarms.RemoveAt(_alarms.Count - 1);
        if (alarm.Urgency == Urgency.Low || Now is not { GivesWay: true } now || Cut) return;
        Cut = true;
        _step ??= now;
    }

    /// <summary>What an alarm was about is settled.</summary>
    public void Settled(string about)
    {
        if (about.Length == 0) return;
        _alarms.RemoveAll(a => a.About == about);
        if (Now?.About == about) Cut = true;
    }

    /// <summary>The last thing is to be said once more.</summary>
    public void Again()
    {
        _again = _last?.Again;
        if (Now is { GivesWay: true }) Cut = true;
    }

    /// <summary>Silence: what is being told ends; an alarm among it waits on, a step does not.</summary>
    public void Hush()
    {
        (_step, _again) = (null, null);
        if (Now is null) return;
        if (!Now.GivesWay && !Cut) _alarms.Insert(0, Now);
        Cut = true;
    }

    /// <summary>The next thing to tell, or null.</summary>
    public Utterance? Take()
    {
        Cut = false;
        if (_alarms.Count > 0)
        {
            Now = _alarms[0];
            _alarms.RemoveAt(0);
        }
        else if (_again is not null) (Now, _again) = (_again, null);
        else (Now, _step) = (_step, null);
        if (Now is { Text.Length: > 0 }) _last = Now;
        return Now;
    }

    /// <summary>It was told, or cut short.</summary>
    public void Told() => Now = null;
}
