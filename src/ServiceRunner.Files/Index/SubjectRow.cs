using ServiceRunner.Files.Journal;

namespace ServiceRunner.Files.Index;

/// <summary>A job, or the bench, as lists show it: what can be asked without reading its events.</summary>
public sealed record SubjectRow
{
    public const string Job = "job";
    public const string Bench = "bench";

    public string Subject { get; init; } = "";
    public string Kind { get; init; } = Job;

    /// <summary>The workshop's own number.</summary>
    public string Number { get; init; } = "";
    public string Title { get; init; } = "";

    /// <summary>The owner's id, never the name.</summary>
    public string Owner { get; init; } = "";
    public string State { get; init; } = "";

    /// <summary>Since when it is in that state; kept as UTC.</summary>
    public DateTimeOffset Since { get; init; }
    public int Done { get; init; }
    public int Total { get; init; }

    /// <summary>What it waits for; empty if for nothing.</summary>
    public string Waiting { get; init; } = "";

    /// <summary>The serial number noted as it came in; empty if none was.</summary>
    public string Serial { get; init; } = "";

    /// <summary>The day it is promised for, or null.</summary>
    public DateOnly? Promised { get; init; }

    /// <summary>The day until which it waits, or null.</summary>
    public DateOnly? Until { get; init; }

    /// <summary>The batches used on it.</summary>
    public IReadOnlyList<string> Lots { get; init; } = [];

    /// <summary>Points that a stated batch served, as they stand; asked for by batch, and not read back with the row.</summary>
    public IReadOnlyList<ServedFrom> Servings { get; init; } = [];
    public bool Open { get; init; }

    /// <summary>Says whether what can be asked by batch is still as it was written.</summary>
    internal long ServedMark { get; init; }

    /// <summary>The subject's last line; the log fills it in.</summary>
    public long LastN { get; init; }

    public bool Equals(SubjectRow? other) =>
        other is not null && Subject == other.Subject && Kind == other.Kind && Number == other.Number && Title == other.Title && Owner == other.Owner
        && State == other.State && Since == other.Since && Done == other.Done && Total == other.Total && Waiting == other.Waiting
        && Until == other.Until && Serial == other.Serial && Promised == other.Promised && Open == other.Open && LastN == other.LastN && Lots.SequenceEqual(other.Lots);

    public override int GetHashCode() => HashCode.Combine(Subject, LastN, State, Number);
}

/// <summary>A point of a job that a batch served.</summary>
/// <param name="Lot">The batch.</param>
/// <param name="Point">The point's id.</param>
/// <param name="Name">What the point is called.</param>
/// <param name="N">The line of the job that says so.</param>
public sealed record ServedFrom(string Lot, string Point, string Name, long N)
{
    internal LinePlace Place { get; init; }
}
