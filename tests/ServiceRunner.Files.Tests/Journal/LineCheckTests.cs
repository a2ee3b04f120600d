using ServiceRunner.Core.Jobs;
using ServiceRunner.Core.Quantities;
using ServiceRunner.Files.Events;
using ServiceRunner.Files.Journal;

namespace ServiceRunner.Files.Tests.Journal;

public sealed class LineCheckTests : IDisposable
{
    private static readonly StepRef Step = StepRef.Parse("1:oil-train:1");
    private readonly LogBench _bench = new();

    [Fact]
    public void A_line_is_verified_as_a_reader_does_and_no_bit_of_it_may_differ()
    {
        LogLine line = Written("JOB1", new JobEvent.PointServed(Step, "fourth-wheel", "slow-pivot", "heavy-oil", "H-114"));
        byte[] bytes = line.Bytes.ToArray();
        Assert.True(LineCheck.Body(bytes, "JOB1", 1).SequenceEqual(line.Body.Span));
        for (int i = 0; i < bytes.Length * 8; i++)
        {
            bytes[i / 8] ^= (byte)(1 << i % 8);
            Assert.True(LineCheck.Body(bytes, "JOB1", 1).IsEmpty, $"bit {i} of the line was flipped and not noticed");
            bytes[i / 8] ^= (byte)(1 << i % 8);
        }
    }

    [Fact]
    public void A_whole_line_that_is_another_one_than_asked_for_is_not_taken_for_it()
    {
        byte[] bytes = Written("JOB1", new JobEvent.Started()).Bytes.ToArray();
        Assert.True(LineCheck.Body(bytes, "JOB1", 2).IsEmpty);
        Assert.True(LineCheck.Body(bytes, "JOB", 1).IsEmpty);
        Assert.True(LineCheck.Body(bytes, "JOB11", 1).IsEmpty);
        Assert.True(LineCheck.Body(bytes.AsSpan(1), "JOB1", 1).IsEmpty);
        Assert.True(LineCheck.Body(bytes.AsSpan(0, bytes.Length - 1), "JOB1", 1).IsEmpty);
    }

    [Fact]
    public void What_is_read_of_a_line_is_what_its_events_say()
    {
        DateTimeOffset then = new(2026, 11, 24, 16, 5, 0, TimeSpan.FromHours(1));
        LogLine line = Written("JOB1",
            new JobEvent.PartMoved("bridge", new PartPlace.OnMovement()),
            new JobEvent.PointServed(Step, "fourth-wheel", "slow-pivot", "heavy-oil", "H-114"),
            new JobEvent.PointServed(Step, "escape", "fast-pivot", "light-oil", "L-9"),
            new JobEvent.PointServed(Step, "the \"third\" wheel", "slow-pivot", "heavy-oil", "H-114"),
            new JobEvent.StepDone(Step, then));
        List<ServedSaid> said = new ServedReader().Read(line.Body.Span, "H-114")!;
        Assert.Equal(["fourth-wheel", "the \"third\" wheel"], said.Select(s => s.Point));
        Assert.All(said, s => Assert.Equal(("slow-pivot", "heavy-oil", "ab", (DateTimeOffset?)then), (s.Role, s.Lubricant, s.By, s.Remembered)));
        Assert.Equal(EventLines.Served(line, "H-114"), said);
        Assert.Empty(new ServedReader().Read(line.Body.Span, "H-11")!);
    }

    [Fact]
    public void A_line_of_a_form_that_is_not_known_is_left_to_the_whole_reading()
    {
        ServedReader reader = new();
        Assert.Null(reader.Read("""{"by":"ab","at":"2026-11-25T00:10:00Z","off":0,"events":[{"kind":"served.2","batch":"H-114"}]}"""u8, "H-114"));
        Assert.Null(reader.Read("""{"by":"ab","at":"2026-11-25T00:10:00Z","off":0,"events":[{"batch":"H-114","kind":"served.1"}]}"""u8, "H-114"));
        Assert.Null(reader.Read("""{"by":"ab","off":0,"events":[]}"""u8, "H-114"));
        Assert.Null(reader.Read("""{"by":"ab","at":"2026-11-25T00:10:00Z","off":0,"events":["""u8, "H-114"));
        Assert.Empty(reader.Read("""{"by":"ab","at":"2026-11-25T00:10:00Z","off":0,"events":[{"kind":"felt.1","what":{"a":[1]}}]}"""u8, "H-114")!);
    }

    private LogLine Written(string subject, params JobEvent[] events)
    {
        using JobLog log = _bench.Own();
        LogBench.Append(log, LogBench.Line(subject, 1, "Running") with { Events = EventLines.Encode(events) });
        return log.Read(subject).Lines[0];
    }

    public void Dispose() => _bench.Dispose();
}
