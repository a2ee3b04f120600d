using ServiceRunner.Core.Quantities;
using ServiceRunner.Core.Workshops;

namespace ServiceRunner.Core.Benches;

/// <summary>What a repairer, or the program's own watch over the clock, does at the bench.</summary>
public abstract record BenchAction
{
    private BenchAction() { }

    /// <summary>Begins the log of the bench.</summary>
    public sealed record Begin(string Workshop) : BenchAction;

    /// <summary>Sits down.</summary>
    public sealed record SignIn(string Initials) : BenchAction;

    /// <summary>Leaves.</summary>
    public sealed record SignOut(string Initials) : BenchAction;

    /// <summary>Fills a jar anew, with what the workshop says it holds.</summary>
    public sealed record FillJar(string Jar) : BenchAction;

    /// <summary>Takes a bottle into use.</summary>
    public sealed record TakeBatch(string Lubricant, string Batch, DateOnly? OpenedOn, DateOnly? GoodUntil) : BenchAction;

    /// <summary>Notices that the wall clock was set.</summary>
    public sealed record NoticeClock(Moment Before) : BenchAction;

    /// <summary>Carries all forward.</summary>
    public sealed record CarryForward : BenchAction;
}

/// <summary>Why an action at the bench was refused.</summary>
public enum BenchRejection
{
    /// <summary>It was not.</summary>
    None,

    /// <summary>The log of the bench is begun already.</summary>
    AlreadyBegun,

    /// <summary>Nobody of these initials is in the workshop file.</summary>
    NoSuchPerson,

    /// <summary>This repairer is not signed in.</summary>
    NotSignedIn,

    /// <summary>The workshop has no such jar.</summary>
    NoSuchJar,

    /// <summary>There is a basket in the jar.</summary>
    JarInUse,

    /// <summary>The shelf has no such lubricant.</summary>
    NoSuchLubricant,

    /// <summary>A batch needs a name.</summary>
    NothingTyped,
}

/// <summary>Decides actions at the bench: a list of events, which is empty if nothing changes, or a rejection.</summary>
public static class BenchDecider
{
    /// <summary>A wall clock that strays less than this against the time since boot is only being kept in step.</summary>
    public static readonly TimeSpan ClockTolerance = TimeSpan.FromSeconds(5);

    /// <summary>The events of an action, or why it is refused.</summary>
    public static (IReadOnlyList<BenchEvent> Events, BenchRejection Why) Decide(Bench bench, BenchAction action, Workshop workshop, Moment now) => action switch
    {
        BenchAction.Begin x => bench.LastNumber > 0 ? No(BenchRejection.AlreadyBegun) : Yes(new BenchEvent.Begun(x.Workshop)),
        BenchAction.SignIn x => !workshop.People.Any(p => p.Initials.Value == x.Initials) ? No(BenchRejection.NoSuchPerson)
            : bench.Repairer == x.Initials ? Yes()
            : Yes(new BenchEvent.SignedIn(x.Initials)),
        BenchAction.SignOut x => bench.SignedIn.Contains(x.Initials) ? Yes(new BenchEvent.SignedOut(x.Initials)) : No(BenchRejection.NotSignedIn),
        BenchAction.FillJar x => workshop.Jars.FirstOrDefault(j => j.Id.Value == x.Jar) is not { } jar ? No(BenchRejection.NoSuchJar)
            : bench.JarsInUse.Contains(x.Jar) ? No(BenchRejection.JarInUse)
            : Yes(new BenchEvent.JarFilled(x.Jar, jar.Holds)),
        BenchAction.TakeBatch x => !workshop.Lubricants.Any(l => l.Id.Value == x.Lubricant) ? No(BenchRejection.NoSuchLubricant)
            : x.Batch.Trim().Length == 0 ? No(BenchRejection.NothingTyped)
            : new BenchEvent.BatchTaken(x.Lubricant, x.Batch.Trim(), x.OpenedOn, x.GoodUntil) is var taken && bench.Batches.GetValueOrDefault(x.Lubricant) == taken ? Yes()
            : Yes(taken),
        BenchAction.NoticeClock x => x.Before.DriftUntil(now) is var drift && drift.Duration() < ClockTolerance ? Yes()
            : Yes(new BenchEvent.ClockFault(x.Before.Wall, now.Wall, drift)),
        BenchAction.CarryForward => Yes(bench.Forward()),
        _ => throw new InvalidOperationException($"no decision for {action.GetType().Name}"),
    };

    private static (IReadOnlyList<BenchEvent>, BenchRejection) Yes(params BenchEvent[] events) => (events, BenchRejection.None);

    private static (IReadOnlyList<BenchEvent>, BenchRejection) No(BenchRejection why) => ([], why);
}
