using ServiceRunner.Screens;

namespace ServiceRunner.Terminal;

/// <summary>
/// Tells the key that opened an entry, still held down, from the same key typed into it. A keyboard repeats a held key
/// for the first time after 250 to 660 ms and then every 20 to 100 ms; a terminal passes this on as if it were typing.
/// </summary>
internal sealed class HeldKey(TimeProvider time)
{
    private static readonly TimeSpan Knock = TimeSpan.FromMilliseconds(300);
    private static readonly TimeSpan FirstRepeat = TimeSpan.FromMilliseconds(700);

    /// <summary>Two strokes closer than this come from one held key.</summary>
    public static TimeSpan RepeatGap { get; } = TimeSpan.FromMilliseconds(150);

    private Stroke? _key;
    private long _opened;
    private long _last;

    public enum Verdict
    {
        /// <summary>It was typed.</summary>
        Typed,

        /// <summary>The key is still held.</summary>
        Held,

        /// <summary>It may be the first repeat: the next <see cref="RepeatGap"/> tells.</summary>
        Unsure,
    }

    /// <summary>An entry was opened by a key (null: by nobody's key).</summary>
    public void Opened(Stroke? by)
    {
        _key = by;
        _opened = _last = time.GetTimestamp();
    }

    public Verdict Judge(Stroke stroke, bool types, bool saidToRepeat)
    {
        if (_key != stroke)
        {
            _key = null; // another key was pressed: the first is no longer what repeats
            return Verdict.Typed;
        }
        if (saidToRepeat) return Verdict.Held;
        TimeSpan sinceOpened = time.GetElapsedTime(_opened), sinceLast = time.GetElapsedTime(_last);
        _last = time.GetTimestamp();
        if (sinceOpened < Knock || sinceLast < RepeatGap) return Verdict.Held;
        // Enter or a pedal so soon after it opened the entry has nothing to accept: there a repeat is the likelier.
        if (sinceOpened < FirstRepeat) return types ? Verdict.Unsure : Verdict.Held;
        _key = null;
        return Verdict.Typed;
    }

    /// <summary>The key has come up.</summary>
    public void Released() => _key = null;
}
