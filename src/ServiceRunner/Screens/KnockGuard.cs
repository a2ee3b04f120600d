namespace ServiceRunner.Screens;

/// <summary>
/// Tells one press from a key held down or knocked. A key held repeats for the first time after 250 to 660 ms, so the
/// dead time must outlast that, and it starts anew with every repeat: however long the pedal is held, it goes on once.
/// </summary>
/// <param name="dead">The dead time.</param>
public sealed class KnockGuard(TimeSpan dead)
{
    // When the offer changed by itself (a clock came due), a foot may already be on its way down for something else.
    private static readonly TimeSpan Surprise = TimeSpan.FromMilliseconds(500);

    private TimeSpan _last = TimeSpan.MinValue;
    private TimeSpan _changed = TimeSpan.MinValue;

    /// <summary>True if a going-on key at this time (of any steady clock) is a press of its own.</summary>
    public bool Admits(TimeSpan now)
    {
        bool held = _last != TimeSpan.MinValue && now - _last < dead;
        bool surprised = _changed != TimeSpan.MinValue && now - _changed < Surprise;
        _last = now;
        return !held && !surprised;
    }

    /// <summary>What is said of a press that is not admitted.</summary>
    public static string Ignored(int deadMilliseconds) =>
        $"That came within {deadMilliseconds / 1000.0:0.0} s of the press before, or of a clock coming due, and is taken for the same press, held or knocked.";

    /// <summary>What going on does changed without a key.</summary>
    public void OfferChanged(TimeSpan now) => _changed = now;
}
