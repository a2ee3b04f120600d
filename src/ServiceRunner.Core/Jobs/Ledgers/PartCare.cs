namespace ServiceRunner.Core.Jobs;

/// <summary>What was done to a part, or to the piece that stands for it now.</summary>
/// <param name="Cleaned">It was in a bath, or was cleaned by itself.</param>
/// <param name="Wet">It came out of a liquid and was not dried since.</param>
/// <param name="Inspected">It was looked over by itself; the looks of the steps are in the steps.</param>
public sealed record PartCare(bool Cleaned, bool Wet, bool Inspected)
{
    /// <summary>Nothing was done to it.</summary>
    public static readonly PartCare None = new(false, false, false);
}

/// <summary>What became of a finding after it was noted; null or empty where nobody said.</summary>
public sealed record FindingFate
{
    /// <summary>Nothing was said of it.</summary>
    public static readonly FindingFate None = new();

    /// <summary>How much it weighs, if it was weighed anew.</summary>
    public Weight? Weight { get; init; }

    /// <summary>How sure it is, if it was weighed anew.</summary>
    public Sureness? Sure { get; init; }

    /// <summary>What was decided.</summary>
    public Verdict? Verdict { get; init; }

    /// <summary>More about the decision.</summary>
    public string Detail { get; init; } = "";

    /// <summary>Its cost in money.</summary>
    public Quantities.TypedNumber? Cost { get; init; }

    /// <summary>The currency of the cost; empty if the workshop stated none, null if it was not written down.</summary>
    public string? Currency { get; init; }

    /// <summary>Its cost in time.</summary>
    public TimeSpan? Time { get; init; }

    /// <summary>The owner's answer: true agreed, false declined, null none.</summary>
    public bool? Agreed { get; init; }

    /// <summary>How it was done with, as told by the repairer.</summary>
    public string Settled { get; init; } = "";
}
