using ServiceRunner.Files.Data;
using ServiceRunner.Files.Events;
using ServiceRunner.Files.Index;

namespace ServiceRunner.Files.Journal;

/// <summary>
/// Tells what a batch served in one job after another, from the lines that the index names: each is verified where it lies, in the
/// order in which they lie, and only what serves is decoded. A job with a line that this cannot do for is read whole.
/// </summary>
internal sealed class TraceReader(SubjectReader journal, Func<string, SubjectReading> whole)
{
    // The lines of one job lie within this of each other, mostly.
    private const int Together = 64 * 1024;

    private readonly byte[] _bytes = new byte[Together];
    private readonly ServedReader _served = new();

    public TracedJob Read(LotEntry entry)
    {
        ServedFrom[] points = [.. entry.Points];
        Array.Sort(points, static (a, b) => a.N != b.N ? a.N.CompareTo(b.N) : string.CompareOrdinal(a.Point, b.Point));
        TracedLine[] lines = new TracedLine[points.Length];
        for (int i = 0; i < points.Length;)
        {
            int next = Take(entry.Subject, points, i, lines);
            if (next < 0) return Slowly(entry, points);
            i = next;
        }
        return new TracedJob(entry.Subject, entry.Number, entry.Title, lines, null);
    }

    /// <summary>Takes the lines from one on that lie together; gives the first behind them, or less than none.</summary>
    private int Take(string subject, ServedFrom[] points, int from, TracedLine[] lines)
    {
        LinePlace first = points[from].Place;
        int to = from + 1;
        while (to < points.Length && points[to].Place is var next && next.Year == first.Year && next.Offset >= points[to - 1].Place.Offset && next.End - first.Offset <= Together) to++;
        long length = points[to - 1].Place.End - first.Offset;
        if (length <= 0 || length > Together || !journal.TryRead(first.Year, first.Offset, _bytes.AsSpan(0, (int)length))) return -1;
        List<ServedSaid>? said = null;
        for (int i = from; i < to; i++)
        {
            ServedFrom point = points[i];
            // A line that served several points is read once.
            if (i == from || point.N != points[i - 1].N || point.Place != points[i - 1].Place)
            {
                if (point.Place.Length <= 0) return -1;
                ReadOnlySpan<byte> body = LineCheck.Body(_bytes.AsSpan((int)(point.Place.Offset - first.Offset), point.Place.Length), subject, point.N);
                said = body.IsEmpty ? null : _served.Read(body, point.Lot);
            }
            if (said is null) return -1;
            lines[i] = new TracedLine(point.Point, point.Name, point.N, true, Of(said, point.Point));
        }
        return to;
    }

    private TracedJob Slowly(LotEntry entry, ServedFrom[] points)
    {
        SubjectReading reading = whole(entry.Subject);
        Dictionary<long, LogLine> lines = reading.Lines.ToDictionary(l => l.SubjectSequence);
        return new TracedJob(entry.Subject, entry.Number, entry.Title, [.. points.Select(p => lines.TryGetValue(p.N, out LogLine? line)
            ? new TracedLine(p.Point, p.Name, p.N, true, Of(EventLines.Served(line, p.Lot), p.Point))
            : new TracedLine(p.Point, p.Name, p.N, false, null))], reading.Damage);
    }

    private static ServedSaid? Of(List<ServedSaid> said, string point)
    {
        foreach (ServedSaid s in said)
            if (s.Point == point) return s;
        return null;
    }
}
