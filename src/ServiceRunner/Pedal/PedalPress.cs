namespace ServiceRunner.Pedal;

/// <summary>One press that waits for the bench. Whoever sent it waits as well, but not for long.</summary>
public sealed class PedalPress
{
    private const int LongestSentence = 1000;

    private readonly object _gate = new();
    private readonly long _since = TimeProvider.System.GetTimestamp();
    private readonly TimeSpan _patience;
    private string? _line;
    private State _state;

    internal PedalPress(PedalWord word, TimeSpan patience) => (Word, _patience) = (word, patience);

    private enum State { Waiting, Taken, Dropped }

    public PedalWord Word { get; }

    /// <summary>Says what was done, or why nothing was. The first answer counts.</summary>
    public void Answer(string sentence) => Settle($"ok: {OneLine(sentence)}");

    /// <summary>Says that the bench does not take presses now; the verb ends with 1. The first answer counts.</summary>
    public void Refuse(string why) => Settle($"no: {OneLine(why)}");

    private void Settle(string line)
    {
        lock (_gate)
        {
            _line ??= line;
            Monitor.PulseAll(_gate);
        }
    }

    private TimeSpan Left => _patience - TimeProvider.System.GetElapsedTime(_since);

    /// <summary>
    /// True for the one who may act on it. A press whose sender was told that nothing came of it must never be acted on
    /// later, as after the program was stopped for a while: its own age decides, not whether somebody noticed the age.
    /// </summary>
    internal bool Take()
    {
        lock (_gate)
        {
            if (_state == State.Waiting) _state = Left > TimeSpan.Zero ? State.Taken : State.Dropped;
            return _state == State.Taken;
        }
    }

    /// <summary>Waits for the answer; the line to send back. False if none came in time.</summary>
    internal bool Wait(out string line)
    {
        lock (_gate)
        {
            while (_line is null && Left is var left && left > TimeSpan.Zero) Monitor.Wait(_gate, left);
            if (_state == State.Waiting) _state = State.Dropped;
            line = _line ?? (_state == State.Taken
                ? "no: the bench did not answer; it may have acted, look at the screen before you press again"
                : "no: the bench did not answer; the press was dropped");
            return _line is not null;
        }
    }

    /// <summary>A sentence as one line that moves no cursor.</summary>
    internal static string OneLine(string sentence)
    {
        string line = string.Concat(sentence.Select(c => char.IsControl(c) || c is '\u2028' or '\u2029' ? ' ' : c)).Trim();
        return line.Length <= LongestSentence ? line : $"{line[..(LongestSentence - 1)].TrimEnd()}…";
    }
}
