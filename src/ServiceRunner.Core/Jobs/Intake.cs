using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Core.Jobs;

/// <summary>What was written down as the piece came in, and agreed. Nothing in it is a person: owners lie beside the log.</summary>
/// <param name="Serial">As engraved; empty if none was noted.</param>
/// <param name="Accessories">What came with it: strap, box, key.</param>
/// <param name="Promised">The day it was promised for, or null.</param>
/// <param name="CostLimit">What the owner agreed to at most, as typed, or null.</param>
/// <param name="Currency">The workshop's currency on the day the limit was noted; empty if the figure stands alone.</param>
/// <param name="Condition">How it arrived, in short.</param>
public sealed record Intake(string Serial, string Accessories, DateOnly? Promised, TypedNumber? CostLimit, string Currency, string Condition)
{
    /// <summary>Nothing was noted.</summary>
    public static readonly Intake None = new("", "", null, null, "", "");
}

/// <summary>How a promised day stands to today.</summary>
public enum PromiseStanding
{
    /// <summary>No day was promised.</summary>
    None,

    /// <summary>More than two days are left.</summary>
    Ahead,

    /// <summary>It is today, or at most two days off.</summary>
    Near,

    /// <summary>The day is past.</summary>
    Past,
}

/// <summary>Promised days.</summary>
public static class Promise
{
    /// <summary>A promise is near when it is so many days off, or fewer.</summary>
    public const int NearDays = 2;

    /// <summary>How a promised day stands to today.</summary>
    public static PromiseStanding Standing(DateOnly? promised, DateOnly today) => promised is not { } day ? PromiseStanding.None
        : day < today ? PromiseStanding.Past
        : day.DayNumber - today.DayNumber <= NearDays ? PromiseStanding.Near
        : PromiseStanding.Ahead;
}
