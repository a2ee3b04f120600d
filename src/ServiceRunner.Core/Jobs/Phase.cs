using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Core.Jobs;

/// <summary>Where a job stands, in the words of IEC 61512-1. The transient states last no time here and are left out.</summary>
public abstract record Phase
{
    private Phase(Moment since) => Since = since;

    /// <summary>Since when.</summary>
    public Moment Since { get; }

    /// <summary>True if nothing more can happen in the job.</summary>
    public bool IsFinal => this is Stopped or Aborted or Complete;

    /// <summary>Booked in; nothing was done yet.</summary>
    public sealed record Idle(Moment At) : Phase(At);

    /// <summary>On the bench.</summary>
    public sealed record Running(Moment At) : Phase(At);

    /// <summary>Interrupted at a step; the place is marked.</summary>
    public sealed record Paused(Moment At, string Why) : Phase(At);

    /// <summary>Waiting in a stated condition.</summary>
    public sealed record Held(Moment At, HoldFor For, string Detail, string Condition, DateOnly? Until) : Phase(At);

    /// <summary>Ended in order before its end: returned unrepaired.</summary>
    public sealed record Stopped(Moment At, string Reason) : Phase(At);

    /// <summary>Broken off.</summary>
    public sealed record Aborted(Moment At, string Reason) : Phase(At);

    /// <summary>Closed; <paramref name="WithOwed"/> if something was owed then, so that nobody takes it for finished.</summary>
    public sealed record Complete(Moment At, bool WithOwed) : Phase(At);
}
