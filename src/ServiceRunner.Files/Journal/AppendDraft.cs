using System.Buffers;
using ServiceRunner.Files.Data;
using ServiceRunner.Files.Index;

namespace ServiceRunner.Files.Journal;

/// <summary>The bytes of one append, and what will be so once they are on the disk.</summary>
internal sealed class AppendDraft(string bench, LogHead head, ArrayBufferWriter<byte> buffer, Func<string, long, (SubjectHead Head, DataFault? Fault)> headOf)
{
    private readonly List<(string Subject, LineId Id, LogHead Head, int Start, int Length, Func<SubjectRow>? Row)> _lines = [];

    public LogHead Head { get; private set; } = head;

    public Dictionary<string, SubjectHead> Heads { get; } = [];

    public IReadOnlyList<LineId> Ids => [.. _lines.Select(l => l.Id)];

    /// <param name="more">How many lines follow in this append.</param>
    public DataFault? Add(NewLine line, long more)
    {
        string subject = line.Subject;
        (long n, Digest previous) imported = default;
        if (line.ImportedBy is not null)
        {
            if (!new LineReader().TryReadBody(line.ImportedBody.Span, out subject, out imported.n, out imported.previous)) return new DoesNotFollow(subject, imported.n);
        }
        else if (!LineCodec.IsSubject(subject))
        {
            throw new ArgumentException("A subject's id is 1 to 64 letters, digits, - or _.", nameof(line));
        }
        if (!Heads.TryGetValue(subject, out SubjectHead last))
        {
            (last, DataFault? fault) = headOf(subject, Math.Max(line.After ?? 0, imported.n - 1));
            if (fault is not null) return fault;
        }
        if (line.After is { } after && after != last.N) return new SubjectMoved(subject, after, last.N);
        if (line.ImportedBy is not null && imported != (last.N + 1, last.Hash)) return new DoesNotFollow(subject, imported.n);
        Write(line, subject, last, more);
        return null;
    }

    public IEnumerable<IndexedLine> Indexed(LinePlace place) => _lines.Select(l => new IndexedLine(
        l.Subject, l.Id.SubjectSequence, l.Id.BodyHash, l.Head, new LinePlace(place.Year, place.Offset + l.Start, l.Length), l.Row));

    private void Write(NewLine line, string subject, SubjectHead last, long more)
    {
        long n = last.N + 1;
        ReadOnlyMemory<byte> body = line.ImportedBy is null ? LineCodec.Body(line, n, last.Hash) : line.ImportedBody;
        Digest bodyHash = Digest.Of(body.Span);
        int start = buffer.WrittenCount;
        Digest hash = LineCodec.Write(buffer, body.Span, bodyHash, new LineCodec.Place(bench, Head.Sequence + 1, Head.Hash, more, line.ImportedBy));
        Head = new LogHead(Head.Sequence + 1, hash);
        Heads[subject] = new SubjectHead(n, bodyHash);
        Func<SubjectRow>? row = line.Row is { } later ? () => later() with { Subject = subject, LastN = n } : null;
        _lines.Add((subject, new LineId(Head.Sequence, n, bodyHash), Head, start, buffer.WrittenCount - start, row));
    }
}
