using ServiceRunner.Files.Data;

namespace ServiceRunner.Files.Journal;

/// <summary>
/// Reads the journal to its end and says how it ends: whole, torn in an append that was never acknowledged, or
/// damaged. Lines are handed on by whole appends only.
/// </summary>
internal sealed class JournalTail(string folder, LogHead head, LinePlace last, string? bench)
{
    // No disk writes less at once; lines hold no zero byte.
    private const int Sector = 512;

    private readonly List<ScannedLine> _append = [];

    public LogHead Head { get; private set; } = head;
    public LinePlace Last { get; private set; } = last;
    public string? Bench { get; private set; } = bench;
    public ScannedDamage? Damage { get; private set; }

    /// <summary>Where an unacknowledged append begins that has to go.</summary>
    public (Segment Segment, long Offset)? Torn { get; private set; }

    public void Read(Dictionary<string, SubjectHead>? subjects, Action<ScannedLine> take)
    {
        IReadOnlyList<Segment> segments = Segment.In(folder);
        Chains chains = new(Head, Bench, subjects);
        foreach (ScanItem item in JournalScan.From(segments, Last, chains))
        {
            if (item is ScannedLine line && Continues(line))
            {
                _append.Add(line);
                if (line.Line.More == 0) Take(take);
                continue;
            }
            ScannedDamage damage = item as ScannedDamage ?? new ScannedDamage(item.File, item.Offset, ((ScannedLine)item).Place.Length, Data.Damage.Sequence);
            End(segments, damage);
            return;
        }
        if (_append.Count > 0) Torn = (segments.Single(s => s.Name == _append[0].File), _append[0].Offset);
    }

    private bool Continues(ScannedLine line) => _append.Count == 0 || line.Line.More == _append[^1].Line.More - 1;

    private void Take(Action<ScannedLine> take)
    {
        foreach (ScannedLine line in _append) take(line);
        ScannedLine end = _append[^1];
        (Head, Last, Bench) = (new LogHead(end.Line.Sequence, end.Line.Hash), end.Place, end.Line.Bench);
        _append.Clear();
    }

    private void End(IReadOnlyList<Segment> segments, ScannedDamage damage)
    {
        long start = _append.Count > 0 && _append[0].File == damage.File ? _append[0].Offset : damage.Offset;
        if (damage.File == segments[^1].Name && IsTorn(segments[^1], damage)) Torn = (segments[^1], start);
        else Damage = damage.What == Data.Damage.Unfinished ? damage with { What = Data.Damage.LineHash } : damage;
    }

    private static bool IsTorn(Segment segment, ScannedDamage damage)
    {
        byte[] rest = new byte[Math.Min(new FileInfo(segment.Path).Length - damage.Offset, LineCodec.MaxLength)];
        using (FileStream file = new(segment.Path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete))
        {
            file.Position = damage.Offset;
            file.ReadExactly(rest);
        }
        if (damage.What == Data.Damage.Unfinished) return !LostOnlyItsNewline(rest);
        // A power cut can leave a longer file whose sectors were not all written. If a good line follows, it was not that.
        return damage.What is Data.Damage.LineHash or Data.Damage.NotALine && rest.AsSpan().IndexOf(new byte[Sector]) >= 0
            && !JournalScan.From([segment], new LinePlace(segment.Year, damage.Offset, (int)Math.Min(damage.Length, int.MaxValue)), new Chains(default, null, null)).OfType<ScannedLine>().Any();
    }

    /// <summary>A whole line with another byte for its newline was acknowledged: that is damage, not an unfinished write.</summary>
    private static bool LostOnlyItsNewline(byte[] rest)
    {
        if (rest.Length == 0) return false;
        byte[] line = [.. rest.AsSpan(0, rest.Length - 1), (byte)'\n'];
        return new LineReader().Read(line, out _) is not null;
    }
}
