using System.Collections.Immutable;
using ServiceRunner.Core.Jobs;
using ServiceRunner.Core.Quantities;
using ServiceRunner.Core.Workshops;

namespace ServiceRunner.Core.Benches;

/// <summary>The bench as folded from its log: who is signed in, jars, bottles in use, clocks that run.</summary>
public sealed record Bench
{
    /// <summary>Opaque id.</summary>
    public required string Id { get; init; }

    /// <summary>Initials of those signed in, the last one last.</summary>
    public ImmutableList<string> SignedIn { get; init; } = [];

    /// <summary>Fillings of jars.</summary>
    public ImmutableDictionary<string, JarRecord> Jars { get; init; } = ImmutableDictionary<string, JarRecord>.Empty;

    /// <summary>The bottle in use of each lubricant.</summary>
    public ImmutableDictionary<string, BenchEvent.BatchTaken> Batches
    {
        get;
        init
        {
            field = value;
            BatchNames = value.ToImmutableDictionary(b => b.Key, b => b.Value.Batch);
        }
    } = ImmutableDictionary<string, BenchEvent.BatchTaken>.Empty;

    /// <summary>Bottles that stand on the shelf and are not in use.</summary>
    public ImmutableList<BenchEvent.BottleNoted> OtherBottles { get; init; } = [];

    /// <summary>The instrument in use for each unit; empty if it was said that none is named.</summary>
    public ImmutableDictionary<string, string> Instruments { get; init; } = ImmutableDictionary<string, string>.Empty;

    /// <summary>The temperature last read, or null.</summary>
    public TemperatureRecord? Temperature { get; init; }

    /// <summary>Clocks that run, in the order begun.</summary>
    public ImmutableList<BenchEvent.ClockBegun> Clocks
    {
        get;
        init
        {
            field = value;
            JarsInUse = value.Where(c => c.Jar.Length > 0).Select(c => c.Jar).ToImmutableHashSet();
        }
    } = [];

    /// <summary>Number of the last action.</summary>
    public int LastNumber { get; init; }

    /// <summary>Number of the last action that carried all forward; 0 if none did.</summary>
    public int CarriedAt { get; init; }

    /// <summary>The moment of the last action, or null.</summary>
    public Moment? LastAt { get; init; }

    /// <summary>Jars with a basket in them.</summary>
    public IReadOnlySet<string> JarsInUse { get; private init; } = ImmutableHashSet<string>.Empty;

    /// <summary>The batch in use of each lubricant.</summary>
    public IReadOnlyDictionary<string, string> BatchNames { get; private init; } = ImmutableDictionary<string, string>.Empty;

    /// <summary>Who works here now; empty if nobody is signed in.</summary>
    public string Repairer => SignedIn.IsEmpty ? "" : SignedIn[^1];

    /// <summary>The bench after one more action.</summary>
    public Bench After(BenchEntry entry)
    {
        Bench bench = this;
        foreach (BenchEvent e in entry.Events) bench = bench.After(e, entry);
        return bench with { LastNumber = entry.Number, LastAt = entry.At };
    }

    private Bench After(BenchEvent e, BenchEntry entry) => e switch
    {
        BenchEvent.Begun or BenchEvent.ClockFault => this,
        BenchEvent.SignedIn x => this with { SignedIn = SignedIn.Remove(x.Initials).Add(x.Initials) },
        BenchEvent.SignedOut x => this with { SignedIn = SignedIn.Remove(x.Initials) },
        BenchEvent.JarFilled x => this with { Jars = Jars.SetItem(x.Jar, new JarRecord(x.Jar, x.Liquid, entry.At.Wall, 0)) },
        BenchEvent.BatchTaken x => this.Using(x),
        BenchEvent.BottleNoted x => this.Noting(x),
        BenchEvent.BottleDone x => this.Without(x.Lubricant, x.Batch),
        BenchEvent.InstrumentTaken x => this with { Instruments = Instruments.SetItem(x.Unit, x.Instrument) },
        BenchEvent.TemperatureRead x => this with { Temperature = new TemperatureRecord(x.Celsius, entry.At.Wall) },
        BenchEvent.ClockBegun x => this with
        {
            Clocks = Clocks.RemoveAll(c => c.Job == x.Job && c.Step == x.Step).Add(x),
            Jars = x.Jar.Length == 0 ? Jars : Jars.SetItem(x.Jar, JarOf(x.Jar) with { Baskets = JarOf(x.Jar).Baskets + 1 }),
        },
        BenchEvent.ClockEnded x => this with { Clocks = Clocks.RemoveAll(c => c.Job == x.Job && c.Step == x.Step) },
        BenchEvent.CarriedForward x => new Bench
        {
            Id = Id,
            SignedIn = [.. x.People],
            Jars = x.Jars.ToImmutableDictionary(j => j.Jar),
            Batches = x.Batches.ToImmutableDictionary(b => b.Lubricant),
            Clocks = [.. x.Clocks],
            OtherBottles = [.. x.Bottles],
            Instruments = x.Instruments.ToImmutableDictionary(i => i.Unit, i => i.Instrument),
            Temperature = x.Temperature,
            CarriedAt = entry.Number,
        },
        _ => throw new InvalidOperationException($"no fold for {e.GetType().Name}"),
    };

    /// <summary>A jar's filling, also if nothing is known of it.</summary>
    public JarRecord JarOf(string jar) => Jars.GetValueOrDefault(jar) ?? new JarRecord(jar, "", null, 0);

    /// <summary>True if a jar has had its baskets or its days.</summary>
    public bool IsSpent(Jar jar, DateTimeOffset now)
    {
        JarRecord record = JarOf(jar.Id);
        return (jar.LifeBaskets is { } baskets && record.Baskets >= baskets)
            || (jar.LifeDays is { } days && record.FilledAt is { } filled && now - filled > TimeSpan.FromDays(days));
    }

    /// <summary>The event that carries all forward.</summary>
    public BenchEvent.CarriedForward Forward() => new(SignedIn, [.. Jars.Values.OrderBy(j => j.Jar, StringComparer.Ordinal)],
        [.. Batches.Values.OrderBy(b => b.Lubricant, StringComparer.Ordinal)], Clocks)
    {
        Bottles = [.. OtherBottles.OrderBy(b => b.Lubricant, StringComparer.Ordinal).ThenBy(b => b.Batch, StringComparer.Ordinal)],
        Instruments = [.. Instruments.OrderBy(i => i.Key, StringComparer.Ordinal).Select(i => new BenchEvent.InstrumentTaken(i.Key, i.Value))],
        Temperature = Temperature,
    };

    /// <summary>Events that bring the bench's clocks in line with a job's, after an action of that job.</summary>
    public IEnumerable<BenchEvent> Follow(Job job)
    {
        HashSet<StepRef> running = [.. job.RunningSoaks.Select(s => s.Begun.Step)];
        foreach (BenchEvent.ClockBegun clock in Clocks.Where(c => c.Job == job.Id && !running.Contains(c.Step)))
            yield return new BenchEvent.ClockEnded(clock.Job, clock.Step);
        foreach (Soak soak in job.RunningSoaks.Where(s => !Clocks.Any(c => c.Job == job.Id && c.Step == s.Begun.Step)))
            yield return new BenchEvent.ClockBegun(job.Id, soak.Begun.Step, soak.Begun.Jar);
    }
}
