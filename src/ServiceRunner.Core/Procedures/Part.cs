using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Core.Procedures;

/// <summary>A thing that comes off the movement, or stays on it. Screws are parts with a seat.</summary>
public sealed record Part
{
    /// <summary>Its id.</summary>
    public required Placed<string> Id { get; init; }

    /// <summary>The file that it was taken in from, where its places are; empty for the procedure's own file.</summary>
    public string TakenFrom { get; init; } = "";

    /// <summary>What it is called.</summary>
    public required string Name { get; init; }

    /// <summary>Where it lies in the tray; empty if the procedure does not say.</summary>
    public string Compartment { get; init; } = "";

    /// <summary>Its kind, from <see cref="Vocabulary.PartKinds"/>; <c>other</c> if not said.</summary>
    public string Kind { get; init; } = "other";

    /// <summary>What it is made of.</summary>
    public IReadOnlyList<Placed<string>> Of { get; init; } = [];

    /// <summary>What holds something in it: shellac, cement…</summary>
    public IReadOnlyList<Placed<string>> SetWith { get; init; } = [];

    /// <summary>How its surface is finished.</summary>
    public IReadOnlyList<Placed<string>> Finished { get; init; } = [];

    /// <summary>What harms it.</summary>
    public IReadOnlyList<Placed<string>> Delicate { get; init; } = [];

    /// <summary>For a screw or pin: the part that it holds.</summary>
    public Placed<string>? Seat { get; init; }

    /// <summary>Parts that must be off before this one can come off.</summary>
    public IReadOnlyList<Placed<string>> Under { get; init; } = [];

    /// <summary>True if it must not be moved while the mainspring or a weight drives the train.</summary>
    public bool UnderPower { get; init; }

    /// <summary>How many jewels it carries.</summary>
    public int Jewels { get; init; }

    /// <summary>How many alike pieces this line stands for.</summary>
    public int Count { get; init; } = 1;

    /// <summary>True if the procedure never takes it off.</summary>
    public bool Stays { get; init; }
}
