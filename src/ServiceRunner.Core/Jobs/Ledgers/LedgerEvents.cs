using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Core.Jobs;

public abstract partial record JobEvent
{
    /// <summary>A part came to light that no procedure names. <paramref name="Compartment"/> is where it was laid; empty if it is still on.</summary>
    public sealed record PartAdded(string Part, string Name, string Compartment, int Count, int Jewels) : JobEvent;

    /// <summary>Another piece stands for a part from now on; the old one is kept for the owner. The step is null if none asked for it.</summary>
    public sealed record PartRenewed(StepRef? Step, string Part, Origin Origin, string Detail) : JobEvent;

    /// <summary>A part was cleaned, dried or looked over by itself, outside the steps that do so.</summary>
    public sealed record PartTended(string Part, Tending What) : JobEvent;

    /// <summary>A part that was left out goes through these baths, spin-offs and dryings by itself; each is the occurrence that takes it.</summary>
    public sealed record WashBegunAgain(string Part, IReadOnlyList<StepRef> Steps) : JobEvent;

    /// <summary>A finding was weighed anew.</summary>
    public sealed record FindingWeighed(string Finding, Weight Weight, Sureness Sure) : JobEvent;

    /// <summary>It was decided what becomes of a finding.</summary>
    public sealed record FindingDecided(string Finding, Verdict Verdict, string Detail) : JobEvent;

    /// <summary>
    /// What a finding will cost, in money and in time; null if not said. The currency is the workshop's of that day, empty
    /// if it stated none; null in entries from before it was written down.
    /// </summary>
    public sealed record FindingPriced(string Finding, TypedNumber? Cost, TimeSpan? Time, string? Currency) : JobEvent;

    /// <summary>A finding is done with, as told by the repairer: what was sent out is back, and is right.</summary>
    public sealed record FindingSettled(string Finding, string How) : JobEvent;

    /// <summary>A picture was kept, by the SHA-256 of its bytes. The finding is empty and the step null if it is of the whole job.</summary>
    public sealed record PhotoKept(string Finding, StepRef? Step, string Name, string Hash, string Caption) : JobEvent;

    /// <summary>A joined procedure is a repair for a finding; <paramref name="Part"/> is the part that it mends, and that waits for it.</summary>
    public sealed record RepairJoined(string Instance, string Finding, string Part) : JobEvent;

    /// <summary>A repair was given up: what was left of it is passed over, and nothing is mended by it.</summary>
    public sealed record RepairGivenUp(string Instance) : JobEvent;

    /// <summary>The owner was told what it would cost, line by line. The currency is empty if the workshop states none.</summary>
    public sealed record EstimateGiven(IReadOnlyList<EstimateLine> Lines, string Currency) : JobEvent;

    /// <summary>The owner answered: which findings may be mended, which not; how and on which day the answer came.</summary>
    public sealed record OwnerAnswered(IReadOnlyList<string> Agreed, IReadOnlyList<string> Declined, Means How, DateOnly On, string Words) : JobEvent;

    /// <summary>The tray was compared with the ledger: so many parts lay where they should, these did not.</summary>
    public sealed record TrayChecked(int Seen, IReadOnlyList<string> Missing) : JobEvent;
}

/// <summary>A line of an estimate: the finding, and its cost in money and time as told then; null if not said.</summary>
public sealed record EstimateLine(string Finding, TypedNumber? Cost, TimeSpan? Time);

/// <summary>Where the piece comes from that stands for an old one.</summary>
public enum Origin
{
    /// <summary>Nobody said.</summary>
    Unsaid,

    /// <summary>Bought in.</summary>
    Supplied,

    /// <summary>Made new here.</summary>
    MadeNew,

    /// <summary>From another old movement.</summary>
    OldStock,
}

/// <summary>What was done to a part by itself.</summary>
public enum Tending
{
    /// <summary>Cleaned.</summary>
    Cleaned,

    /// <summary>Dried.</summary>
    Dried,

    /// <summary>Looked over.</summary>
    Inspected,
}

/// <summary>What becomes of a finding.</summary>
public enum Verdict
{
    /// <summary>It stays as it is.</summary>
    Accept,

    /// <summary>It is mended here.</summary>
    RepairHere,

    /// <summary>Another piece takes its place.</summary>
    Replace,

    /// <summary>Somebody else mends it.</summary>
    SendOut,

    /// <summary>The owner is asked.</summary>
    AskOwner,
}

/// <summary>How an owner's answer came.</summary>
public enum Means
{
    /// <summary>In another way.</summary>
    Other,

    /// <summary>In person.</summary>
    InPerson,

    /// <summary>By telephone.</summary>
    Telephone,

    /// <summary>In writing.</summary>
    Writing,
}
