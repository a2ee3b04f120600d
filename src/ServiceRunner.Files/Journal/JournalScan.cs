using ServiceRunner.Files.Data;

namespace ServiceRunner.Files.Journal;

/// <summary>Reads the journal in order from a place on, verifying, and going on after damage at the next newline.</summary>
internal static class JournalScan
{
    public static IEnumerable<ScanItem> Whole(string folder) =>
        From(Segment.In(folder), default, new Chains(default, null, []));

    /// <param name="after">The last line that is known already; the reading begins behind it.</param>
    public static IEnumerable<ScanItem> From(IReadOnlyList<Segment> segments, LinePlace after, Chains chains)
    {
        LineReader reader = new();
        foreach (Segment segment in segments.Where(s => s.Year >= after.Year))
        {
            string name = segment.Name;
            foreach (SegmentLines.RawLine raw in SegmentLines.Read(segment, segment.Year == after.Year ? after.End : 0))
            {
                Damage what = Damage.Unfinished;
                LogLine? line = raw.Ended ? Parse(reader, raw, out what) : null;
                if (line is null)
                {
                    chains.Lose();
                    yield return new ScannedDamage(name, raw.Offset, raw.Length, what);
                    continue;
                }
                if (chains.Follow(line) is { } broken) yield return new ScannedDamage(name, raw.Offset, raw.Length, broken);
                yield return new ScannedLine(name, raw.Offset, line) { Place = new LinePlace(segment.Year, raw.Offset, (int)raw.Length) };
            }
        }
    }

    private static LogLine? Parse(LineReader reader, SegmentLines.RawLine raw, out Damage what)
    {
        what = Damage.TooLong;
        return raw.Bytes.IsEmpty || raw.Length > LineCodec.MaxLength ? null : reader.Read(raw.Bytes, out what);
    }
}
