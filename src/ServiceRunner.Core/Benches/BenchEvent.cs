using ServiceRunner.Core.Jobs;
using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Core.Benches;

/// <summary>What happened at the bench, whichever job it was for. A closed family with stored shapes, as <see cref="JobEvent"/>.</summary>
public abstract record BenchEvent
{
    private BenchEvent() { }

    /// <summary>The bench's log was begun.</summary>
    public sealed record Begun(string Workshop) : BenchEvent;

    /// <summary>A repairer sat down.</summary>
    public sealed record SignedIn(string Initials) : BenchEvent;

    /// <summary>A repairer left.</summary>
    public sealed record SignedOut(string Initials) : BenchEvent;

    /// <summary>A jar got fresh liquid.</summary>
    public sealed record JarFilled(string Jar, string Liquid) : BenchEvent;

    /// <summary>A bottle was taken into use; it stays in use until the next one. Dates are empty if not stated.</summary>
    public sealed record BatchTaken(string Lubricant, string Batch, DateOnly? OpenedOn, DateOnly? GoodUntil) : BenchEvent;

    /// <summary>A bottle stands on the shelf and is not in use, or its dates were put right. Dates are empty if not stated.</summary>
    public sealed record BottleNoted(string Lubricant, string Batch, DateOnly? OpenedOn, DateOnly? GoodUntil) : BenchEvent;

    /// <summary>A bottle is empty or thrown away.</summary>
    public sealed record BottleDone(string Lubricant, string Batch) : BenchEvent;

    /// <summary>The temperature at the bench was read, in °C; it holds for that day.</summary>
    public sealed record TemperatureRead(decimal Celsius) : BenchEvent;

    /// <summary>What is measured in this unit is measured with this instrument from now on; empty: with none that is named.</summary>
    public sealed record InstrumentTaken(string Unit, string Instrument) : BenchEvent;

    /// <summary>A clock of a job started; the jar is empty if it has none.</summary>
    public sealed record ClockBegun(string Job, StepRef Step, string Jar) : BenchEvent;

    /// <summary>A clock of a job stopped, or its start was taken back.</summary>
    public sealed record ClockEnded(string Job, StepRef Step) : BenchEvent;

    /// <summary>The wall clock moved against the time since boot, by so much (positive: forward), between two moments.</summary>
    public sealed record ClockFault(DateTimeOffset From, DateTimeOffset To, TimeSpan By) : BenchEvent;

    /// <summary>All that the bench knows, written once in a while so that opening it does not read years of lines.</summary>
    public sealed record CarriedForward(
        IReadOnlyList<string> People,
        IReadOnlyList<JarRecord> Jars,
        IReadOnlyList<BatchTaken> Batches,
        IReadOnlyList<ClockBegun> Clocks) : BenchEvent
    {
        /// <summary>Bottles of the shelf that are not in use.</summary>
        public IReadOnlyList<BottleNoted> Bottles { get; init; } = [];

        /// <summary>The instruments in use.</summary>
        public IReadOnlyList<InstrumentTaken> Instruments { get; init; } = [];

        /// <summary>The temperature last read in °C and when, or null.</summary>
        public TemperatureRecord? Temperature { get; init; }
    }
}

/// <summary>A jar's filling.</summary>
/// <param name="Jar">The jar.</param>
/// <param name="Liquid">What it was filled with; empty if nobody said.</param>
/// <param name="FilledAt">When, or null if nobody said.</param>
/// <param name="Baskets">Baskets since.</param>
public sealed record JarRecord(string Jar, string Liquid, DateTimeOffset? FilledAt, int Baskets);

/// <summary>The temperature at the bench in °C, and when it was read.</summary>
public sealed record TemperatureRecord(decimal Celsius, DateTimeOffset At);

/// <summary>One action at the bench as the log keeps it.</summary>
public sealed record BenchEntry(int Number, string ActionId, string By, Moment At, IReadOnlyList<BenchEvent> Events);
