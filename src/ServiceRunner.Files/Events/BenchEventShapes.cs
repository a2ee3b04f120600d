using System.Text.Json;
using ServiceRunner.Core.Benches;

namespace ServiceRunner.Files.Events;

/// <summary>The stored shapes of <see cref="BenchEvent"/>, under the same rules as <see cref="JobEventShapes"/>.</summary>
public static class BenchEventShapes
{
    /// <summary>Writes one event as an object.</summary>
    public static void Write(Utf8JsonWriter w, BenchEvent e)
    {
        w.WriteStartObject();
        switch (e)
        {
            case BenchEvent.Begun x: Kind(w, "bench-begun.1"); w.Text("workshop", x.Workshop); break;
            case BenchEvent.SignedIn x: Kind(w, "signed-in.1"); w.Text("who", x.Initials); break;
            case BenchEvent.SignedOut x: Kind(w, "signed-out.1"); w.Text("who", x.Initials); break;
            case BenchEvent.JarFilled x: Kind(w, "jar-filled.1"); w.Text("jar", x.Jar); w.Text("liquid", x.Liquid); break;
            case BenchEvent.BatchTaken x: Kind(w, "batch-taken.1"); Batch(w, x); break;
            case BenchEvent.BottleNoted x: Kind(w, "bottle-noted.1"); Bottle(w, x); break;
            case BenchEvent.BottleDone x: Kind(w, "bottle-done.1"); w.Text("lubricant", x.Lubricant); w.Text("batch", x.Batch); break;
            case BenchEvent.TemperatureRead x: Kind(w, "temperature.1"); w.Number("celsius", x.Celsius); break;
            case BenchEvent.InstrumentTaken x: Kind(w, "instrument-taken.1"); Taken(w, x); break;
            case BenchEvent.ClockBegun x: Kind(w, "clock-begun.1"); Clock(w, x); break;
            case BenchEvent.ClockEnded x: Kind(w, "clock-ended.1"); w.Text("job", x.Job); w.Step(x.Step); break;
            case BenchEvent.ClockFault x: Kind(w, "clock-fault.1"); w.Time("from", x.From); w.Time("to", x.To); w.Seconds("by", x.By); break;
            case BenchEvent.CarriedForward x: Kind(w, "carried-forward.3"); Carried(w, x); break;
            default: throw new InvalidOperationException($"no stored shape for {e.GetType().Name}");
        }
        w.WriteEndObject();
    }

    /// <summary>Reads one event.</summary>
    /// <exception cref="UnknownEventException">A later program wrote it.</exception>
    public static BenchEvent Read(JsonElement e) => e.Text("kind") switch
    {
        "bench-begun.1" => new BenchEvent.Begun(e.Text("workshop")),
        "signed-in.1" => new BenchEvent.SignedIn(e.Text("who")),
        "signed-out.1" => new BenchEvent.SignedOut(e.Text("who")),
        "jar-filled.1" => new BenchEvent.JarFilled(e.Text("jar"), e.Text("liquid")),
        "batch-taken.1" => ReadBatch(e),
        "bottle-noted.1" => ReadBottle(e),
        "bottle-done.1" => new BenchEvent.BottleDone(e.Text("lubricant"), e.Text("batch")),
        "temperature.1" => new BenchEvent.TemperatureRead(e.Number("celsius") ?? 0),
        "instrument-taken.1" => ReadTaken(e),
        "clock-begun.1" => ReadClock(e),
        "clock-ended.1" => new BenchEvent.ClockEnded(e.Text("job"), e.Step()),
        "clock-fault.1" => new BenchEvent.ClockFault(e.Time("from") ?? default, e.Time("to") ?? default, e.Seconds("by") ?? TimeSpan.Zero),
        // The first version knew one bottle of each lubricant and no temperature, the second no instruments.
        "carried-forward.1" or "carried-forward.2" or "carried-forward.3" => new BenchEvent.CarriedForward(
            e.Texts("people"),
            [.. Objects(e, "jars").Select(j => new JarRecord(j.Text("jar"), j.Text("liquid"), j.Time("filled"), (int)(j.Number("baskets") ?? 0)))],
            [.. Objects(e, "batches").Select(ReadBatch)],
            [.. Objects(e, "clocks").Select(ReadClock)])
        {
            Bottles = [.. Objects(e, "bottles").Select(ReadBottle)],
            Instruments = [.. Objects(e, "instruments").Select(ReadTaken)],
            Temperature = e.Time("temperature-at") is { } at ? new TemperatureRecord(e.Number("temperature") ?? 0, at) : null,
        },
        var kind => throw new UnknownEventException(kind),
    };

    private static void Kind(Utf8JsonWriter w, string kind) => w.WriteString("kind", kind);

    private static void Batch(Utf8JsonWriter w, BenchEvent.BatchTaken x)
    {
        w.Text("lubricant", x.Lubricant);
        w.Text("batch", x.Batch);
        w.Day("opened", x.OpenedOn);
        w.Day("good-until", x.GoodUntil);
    }

    private static BenchEvent.BatchTaken ReadBatch(JsonElement e) => new(e.Text("lubricant"), e.Text("batch"), e.Day("opened"), e.Day("good-until"));

    private static void Bottle(Utf8JsonWriter w, BenchEvent.BottleNoted x) => Batch(w, new BenchEvent.BatchTaken(x.Lubricant, x.Batch, x.OpenedOn, x.GoodUntil));

    private static BenchEvent.BottleNoted ReadBottle(JsonElement e) => new(e.Text("lubricant"), e.Text("batch"), e.Day("opened"), e.Day("good-until"));

    private static void Taken(Utf8JsonWriter w, BenchEvent.InstrumentTaken x)
    {
        w.Text("unit", x.Unit);
        w.Text("instrument", x.Instrument);
    }

    private static BenchEvent.InstrumentTaken ReadTaken(JsonElement e) => new(e.Text("unit"), e.Text("instrument"));

    private static void Clock(Utf8JsonWriter w, BenchEvent.ClockBegun x)
    {
        w.Text("job", x.Job);
        w.Step(x.Step);
        w.Text("jar", x.Jar);
    }

    private static BenchEvent.ClockBegun ReadClock(JsonElement e) => new(e.Text("job"), e.Step(), e.Text("jar"));

    private static void Carried(Utf8JsonWriter w, BenchEvent.CarriedForward x)
    {
        w.Texts("people", x.People);
        w.WriteStartArray("jars");
        foreach (JarRecord jar in x.Jars)
        {
            w.WriteStartObject();
            w.Text("jar", jar.Jar);
            w.Text("liquid", jar.Liquid);
            w.Time("filled", jar.FilledAt);
            w.Number("baskets", jar.Baskets);
            w.WriteEndObject();
        }
        w.WriteEndArray();
        w.WriteStartArray("batches");
        foreach (BenchEvent.BatchTaken batch in x.Batches)
        {
            w.WriteStartObject();
            Batch(w, batch);
            w.WriteEndObject();
        }
        w.WriteEndArray();
        w.WriteStartArray("clocks");
        foreach (BenchEvent.ClockBegun clock in x.Clocks)
        {
            w.WriteStartObject();
            Clock(w, clock);
            w.WriteEndObject();
        }
        w.WriteEndArray();
        w.WriteStartArray("bottles");
        foreach (BenchEvent.BottleNoted bottle in x.Bottles)
        {
            w.WriteStartObject();
            Bottle(w, bottle);
            w.WriteEndObject();
        }
        w.WriteEndArray();
        w.WriteStartArray("instruments");
        foreach (BenchEvent.InstrumentTaken taken in x.Instruments)
        {
            w.WriteStartObject();
            Taken(w, taken);
            w.WriteEndObject();
        }
        w.WriteEndArray();
        w.Number("temperature", x.Temperature?.Celsius);
        w.Time("temperature-at", x.Temperature?.At);
    }

    private static IEnumerable<JsonElement> Objects(JsonElement e, string key) =>
        e.TryGetProperty(key, out JsonElement list) ? list.EnumerateArray() : [];
}
