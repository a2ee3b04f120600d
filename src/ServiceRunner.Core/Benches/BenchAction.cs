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

    /// <summary>Puts a bottle on the shelf without taking it into use, or puts the dates of one right.</summary>
    public sealed record NoteBottle(string Lubricant, string Batch, DateOnly? OpenedOn, DateOnly? GoodUntil) : BenchAction;

    /// <summary>Strikes off a bottle that is empty or thrown away.</summary>
    public sealed record FinishBottle(string Lubricant, string Batch) : BenchAction;

    /// <summary>Says with which instrument this unit is measured; empty: with none that is named.</summary>
    public sealed record TakeInstrument(string Unit, string Instrument) : BenchAction;

    /// <summary>Reads the temperature at the bench, in °C.</summary>
    public sealed record ReadTemperature(decimal Celsius) : BenchAction;

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

    /// <summary>The shelf has no such bottle.</summary>
    NoSuchBottle,

    /// <summary>A bottle cannot have been opened on a day that has not come.</summary>
    OpenedInFuture,

    /// <summary>A bottle is good until a day before it was opened.</summary>
    DatesCrossed,

    /// <summary>The workshop has no such instrument for this unit.</summary>
    NoSuchInstrument,

    /// <summary>No bench is so cold or so hot.</summary>
    NoSuchTemperature,
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
        BenchAction.TakeBatch x => Take(bench, x, workshop, now),
        BenchAction.NoteBottle x => WrongBottle(x.Lubricant, x.Batch, x.OpenedOn, x.GoodUntil, workshop, now) is var wrong and not BenchRejection.None ? No(wrong)
            : bench.FindBottle(x.Lubricant, x.Batch.Trim()) == new Lubricants.Bottle(x.Lubricant, x.Batch.Trim(), x.OpenedOn, x.GoodUntil) ? Yes()
            : Yes(new BenchEvent.BottleNoted(x.Lubricant, x.Batch.Trim(), x.OpenedOn, x.GoodUntil)),
        BenchAction.FinishBottle x => bench.FindBottle(x.Lubricant, x.Batch) is null ? No(BenchRejection.NoSuchBottle) : Yes(new BenchEvent.BottleDone(x.Lubricant, x.Batch)),
        BenchAction.TakeInstrument x => x.Instrument.Length > 0 && !workshop.Instruments.Any(i => i.Id.Value == x.Instrument && i.Measures(x.Unit)) ? No(BenchRejection.NoSuchInstrument)
            : bench.Instruments.GetValueOrDefault(x.Unit) == x.Instrument ? Yes()
            : Yes(new BenchEvent.InstrumentTaken(x.Unit, x.Instrument)),
        BenchAction.ReadTemperature x => x.Celsius is < -10 or > 50 ? No(BenchRejection.NoSuchTemperature)
            : bench.CelsiusOn(now.Wall) == x.Celsius ? Yes()
            : Yes(new BenchEvent.TemperatureRead(x.Celsius)),
        BenchAction.NoticeClock x => x.Before.DriftUntil(now) is var drift && drift.Duration() < ClockTolerance ? Yes()
            : Yes(new BenchEvent.ClockFault(x.Before.Wall, now.Wall, drift)),
        BenchAction.CarryForward => Yes(bench.Forward()),
        _ => throw new InvalidOperationException($"no decision for {action.GetType().Name}"),
    };

    // Whoever takes a bottle that stands on the shelf need not say its dates again.
    private static (IReadOnlyList<BenchEvent>, BenchRejection) Take(Bench bench, BenchAction.TakeBatch x, Workshop workshop, Moment now)
    {
        if (WrongBottle(x.Lubricant, x.Batch, x.OpenedOn, x.GoodUntil, workshop, now) is var wrong and not BenchRejection.None) return No(wrong);
        Lubricants.Bottle? known = x is { OpenedOn: null, GoodUntil: null } ? bench.FindBottle(x.Lubricant, x.Batch.Trim()) : null;
        BenchEvent.BatchTaken taken = new(x.Lubricant, x.Batch.Trim(), known?.OpenedOn ?? x.OpenedOn, known?.GoodUntil ?? x.GoodUntil);
        return bench.Batches.GetValueOrDefault(x.Lubricant) == taken ? Yes() : Yes(taken);
    }

    private static BenchRejection WrongBottle(string lubricant, string batch, DateOnly? opened, DateOnly? goodUntil, Workshop workshop, Moment now) =>
        !workshop.Lubricants.Any(l => l.Id.Value == lubricant) ? BenchRejection.NoSuchLubricant
        : batch.Trim().Length == 0 ? BenchRejection.NothingTyped
        : opened > DateOnly.FromDateTime(now.Wall.Date) ? BenchRejection.OpenedInFuture
        : goodUntil < opened ? BenchRejection.DatesCrossed
        : BenchRejection.None;

    private static (IReadOnlyList<BenchEvent>, BenchRejection) Yes(params BenchEvent[] events) => (events, BenchRejection.None);

    private static (IReadOnlyList<BenchEvent>, BenchRejection) No(BenchRejection why) => ([], why);
}
