using System.Buffers;
using System.Text.Encodings.Web;
using System.Text.Json;
using ServiceRunner.Core.Benches;
using ServiceRunner.Core.Jobs;
using ServiceRunner.Files.Journal;

namespace ServiceRunner.Files.Events;

/// <summary>Between lines of the journal and entries of an aggregate.</summary>
public static class EventLines
{
    private static readonly JsonWriterOptions Plain = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>Events of a job as one JSON array.</summary>
    public static ReadOnlyMemory<byte> Encode(IReadOnlyList<JobEvent> events) => Encode(events, JobEventShapes.Write);

    /// <summary>Events of the bench as one JSON array.</summary>
    public static ReadOnlyMemory<byte> Encode(IReadOnlyList<BenchEvent> events) => Encode(events, BenchEventShapes.Write);

    /// <summary>A job's entry from its line.</summary>
    /// <exception cref="UnknownEventException">A later program wrote it.</exception>
    public static LogEntry Job(LogLine line) => new((int)line.SubjectSequence, line.ActionId, line.By, line.At, Decode(line, JobEventShapes.Read));

    /// <summary>The bench's entry from its line.</summary>
    /// <exception cref="UnknownEventException">A later program wrote it.</exception>
    public static BenchEntry Bench(LogLine line) => new((int)line.SubjectSequence, line.ActionId, line.By, line.At, Decode(line, BenchEventShapes.Read));

    /// <summary>What a line says of points that a batch served.</summary>
    /// <exception cref="UnknownEventException">A later program wrote it.</exception>
    internal static List<ServedSaid> Served(LogLine line, string batch)
    {
        IReadOnlyList<JobEvent> events = Job(line).Events;
        return [.. events.OfType<JobEvent.PointServed>().Where(s => s.Batch == batch)
            .Select(s => new ServedSaid(s.Point, s.Role, s.Lubricant, line.By, line.At.Wall, events.OfType<JobEvent.StepDone>().FirstOrDefault(d => d.Step == s.Step)?.Remembered))];
    }

    private static ReadOnlyMemory<byte> Encode<T>(IReadOnlyList<T> events, Action<Utf8JsonWriter, T> write)
    {
        ArrayBufferWriter<byte> bytes = new(512);
        using Utf8JsonWriter w = new(bytes, Plain);
        w.WriteStartArray();
        foreach (T e in events) write(w, e);
        w.WriteEndArray();
        w.Flush();
        return bytes.WrittenMemory;
    }

    private static List<T> Decode<T>(LogLine line, Func<JsonElement, T> read)
    {
        using JsonDocument document = line.ParseEvents();
        List<T> events = new(document.RootElement.GetArrayLength());
        foreach (JsonElement e in document.RootElement.EnumerateArray()) events.Add(read(e));
        return events;
    }
}
