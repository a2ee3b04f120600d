namespace ServiceRunner.Core.Quantities;

/// <summary>
/// When something happened: by the wall clock, and by the time since the machine's boot, which runs on while the
/// machine sleeps and which nobody can set.
/// </summary>
/// <param name="Wall">The wall clock's time with its offset from UTC.</param>
/// <param name="Boot">Which boot of the machine; empty where the machine does not tell.</param>
/// <param name="SinceBoot">Time since that boot, suspend included (CLOCK_BOOTTIME).</param>
public sealed record Moment(DateTimeOffset Wall, string Boot, TimeSpan SinceBoot)
{
    /// <summary>The calendar day by the wall clock.</summary>
    public DateOnly Day => DateOnly.FromDateTime(Wall.Date);

    /// <summary>How long from this moment to a later one, and how sure that is.</summary>
    public Elapsed Until(Moment later) =>
        Boot.Length > 0 && Boot == later.Boot
            ? new Elapsed(later.SinceBoot - SinceBoot, true)
            : new Elapsed(later.Wall - Wall, false);

    /// <summary>A moment some time before or after this one, by both clocks.</summary>
    public Moment Plus(TimeSpan time) => new(Wall + time, Boot, SinceBoot + time);

    /// <summary>
    /// How far the wall clock has moved against the time since boot between two moments of one boot (positive: set
    /// forward); zero across boots, where nothing can be said.
    /// </summary>
    public TimeSpan DriftUntil(Moment later) =>
        Boot.Length > 0 && Boot == later.Boot ? later.Wall - Wall - (later.SinceBoot - SinceBoot) : TimeSpan.Zero;
}

/// <summary>A length of time. It is certain within one boot of the machine; across boots it rests on the wall clock.</summary>
public readonly record struct Elapsed(TimeSpan Length, bool Certain);
