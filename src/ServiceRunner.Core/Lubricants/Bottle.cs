using ServiceRunner.Core.Workshops;

namespace ServiceRunner.Core.Lubricants;

/// <summary>One bottle of a lubricant: its batch, and its dates where they were stated.</summary>
public sealed record Bottle(string Lubricant, string Batch, DateOnly? OpenedOn, DateOnly? GoodUntil)
{
    /// <summary>So many days before its date a bottle is soon past.</summary>
    public const int SoonDays = 30;

    /// <summary>The last day on which it is good: as stated, else so many days after it was opened as the workshop file gives; null if neither is known.</summary>
    public DateOnly? LastDay(Lubricant? lubricant) =>
        GoodUntil ?? (OpenedOn is { } opened && lubricant?.GoodForDays is { } days ? opened.AddDays(days) : null);

    /// <summary>How it stands against its date.</summary>
    public BottleStanding Standing(Lubricant? lubricant, DateOnly today) => LastDay(lubricant) is not { } last ? BottleStanding.NotKnown
        : today > last ? BottleStanding.Past
        : today.AddDays(SoonDays) >= last ? BottleStanding.SoonPast
        : BottleStanding.Good;
}

/// <summary>How a bottle stands against its date.</summary>
public enum BottleStanding
{
    /// <summary>No date is known.</summary>
    NotKnown,

    /// <summary>Good for more than a month.</summary>
    Good,

    /// <summary>Past its date within a month.</summary>
    SoonPast,

    /// <summary>Past its date.</summary>
    Past,
}
