using System.Buffers;
using ServiceRunner.Files.Data;
using ServiceRunner.Files.Index;

namespace ServiceRunner.Files.Journal;

/// <summary>
/// The append-only record of a bench: what its journal holds is true, everything else is computed from it. Safe to use
/// from several threads.
/// </summary>
public sealed class JobLog : IDisposable
{
    private readonly object _gate = new();
    private readonly LogParts _parts;
    private readonly Dictionary<string, SubjectHead> _heads = [];
    private readonly ArrayBufferWriter<byte> _buffer = new(4096);
    private readonly List<LogNote> _notes;
    private LogHead _head;

    internal JobLog(LogParts parts, OpenMode mode, string bench, LogHead head, List<LogNote> notes) =>
        (_parts, Mode, Bench, _head, _notes) = (parts, mode, bench, head, notes);

    /// <summary>Opens the log of a data folder. Its length does not matter while the index is whole.</summary>
    /// <param name="rowOf">Makes a subject's row where there is only the journal: when the index is made anew.</param>
    public static OpenOutcome Open(DataFolder folder, OpenMode mode, RowOf rowOf, OpenOptions? options = null) =>
        new Opening(folder, mode, new LogParts(folder, rowOf, options ??= new OpenOptions()), options.Clock).Run();

    /// <summary>The whole journal in order, both chains verified, with what is damaged. For an audit.</summary>
    public static IEnumerable<ScanItem> Scan(string folder) => JournalScan.Whole(folder);

    /// <summary>Copies what is whole into a new data folder: each subject up to the damage.</summary>
    public static RecoverOutcome Recover(DataFolder from, string to) => Recovery.Run(from, to);

    public OpenMode Mode { get; }
    public string Bench { get; }

    public IReadOnlyList<LogNote> Notes
    {
        get { lock (_gate) return [.. _notes]; }
    }

    public LogHead Head
    {
        get { lock (_gate) return _head; }
    }

    /// <summary>Appends actions: all of them or none, also when the machine stops meanwhile. They are on the disk when this returns.</summary>
    public AppendOutcome Append(params IReadOnlyList<NewLine> lines)
    {
        lock (_gate)
        {
            if (_parts.Writer is null) return new AppendRefused(new ReadOnlyMode());
            if (lines.Count == 0) return new Appended([]);
            AppendDraft draft = new(Bench, _head, _buffer, HeadOf);
            _buffer.ResetWrittenCount();
            for (int i = 0; i < lines.Count; i++)
            {
                if (draft.Add(lines[i], lines.Count - 1 - i) is { } refused) return new AppendRefused(refused);
            }
            (LinePlace place, DataFault? fault) = _parts.Writer.Append(_buffer.WrittenSpan, _parts.Clock.GetUtcNow().UtcDateTime.Year);
            if (fault is not null) return new AppendRefused(fault);
            _head = draft.Head;
            foreach ((string subject, SubjectHead head) in draft.Heads) _heads[subject] = head;
            _parts.IndexWriter!.Add(draft.Indexed(place));
            return new Appended(draft.Ids);
        }
    }

    /// <summary>A subject's lines from the given one on, each verified. Never shortened without saying so.</summary>
    public SubjectReading Read(string subject, long from = 1)
    {
        (SubjectHead known, List<Extent> extents) = Ask(index =>
        {
            SubjectHead head = index.Subject(subject)?.Entry.Head ?? default;
            if (_heads.TryGetValue(subject, out SubjectHead own) && own.N > head.N) head = own;
            return (head, from > head.N && head.N > 0 ? [] : index.Extents(subject, from));
        });
        if (known.N < from && extents.Count == 0) return new SubjectReading([], null);
        (List<LogLine> lines, Damaged? flaw) = _parts.Reader.Read(subject, extents);
        bool whole = flaw is null && lines.Count > 0 && lines[0].SubjectSequence <= from
            && lines[^1].SubjectSequence == known.N && lines[^1].BodyHash == known.Hash;
        if (!whole)
        {
            SubjectReading scanned = SubjectScan.Read(_parts.Folder.Path, subject, known.N, flaw);
            if (scanned.Damage is null) ReplaceIndex();
            return scanned with { Lines = [.. scanned.Lines.Where(l => l.SubjectSequence >= from)] };
        }
        return new SubjectReading(lines[0].SubjectSequence == from ? lines : [.. lines.Where(l => l.SubjectSequence >= from)], null);
    }

    /// <summary>Rows whose state is of this moment or later, open or not.</summary>
    public IReadOnlyList<SubjectRow> RowsSince(string kind, DateTimeOffset since) => Ask(index => index.RowsSince(kind, since));

    /// <summary>The rows of one kind, by the time the subject was made.</summary>
    public IReadOnlyList<SubjectRow> Rows(string kind, bool openOnly) =>
        Ask(index => openOnly ? index.Rows(kind, true) : [.. index.Rows(kind, true).Concat(index.Rows(kind, false)).OrderBy(r => r.Subject, StringComparer.Ordinal)]);

    public SubjectRow? Row(string subject) => Ask(index => index.Subject(subject)?.Row);

    public IReadOnlyList<SubjectRow> FindByNumber(string number) => Ask(index => index.RowsWithNumber(number));

    /// <summary>The jobs that a batch was used on.</summary>
    public IReadOnlyList<SubjectRow> FindByLot(string lot) => Ask(index => index.RowsWithLot(lot));

    /// <summary>
    /// What a batch served, job by job: found by the index, told by verified lines. A job whose lines are not what the index
    /// says is read whole; if that cannot be done it is named with its damage, and never left out.
    /// </summary>
    public IReadOnlyList<TracedJob> Trace(string lot)
    {
        List<LotEntry> entries = Ask(index => index.Served(lot));
        TracedJob[] jobs = new TracedJob[entries.Count];
        // Verifying is most of the work, and each job's is its own.
        Parallel.For(0, jobs.Length, () => new TraceReader(_parts.Reader, subject => Read(subject)), (i, _, reader) =>
        {
            jobs[i] = reader.Read(entries[i]);
            return reader;
        }, _ => { });
        return jobs;
    }

    /// <summary>Takes in what the owner has appended since this log was opened to read; true if there was anything.</summary>
    public bool Refresh()
    {
        if (Mode == OpenMode.Own) return false;
        lock (_gate)
        {
            if (_notes.OfType<ReadsUpTo>().Any()) return false;
            long before = _head.Sequence;
            JournalTail tail = _parts.ReadOn(_head, Bench);
            _head = tail.Head;
            if (tail.Damage is { } damage) _notes.Add(new ReadsUpTo(damage.ToFault()));
            return _head.Sequence > before;
        }
    }

    public void Dispose()
    {
        lock (_gate) _parts.Dispose();
    }

    private (SubjectHead Head, DataFault? Fault) HeadOf(string subject, long atLeast)
    {
        if (_heads.TryGetValue(subject, out SubjectHead known)) return (known, null);
        SubjectEntry? entry = Ask(index => index.Subject(subject)?.Entry);
        bool whole = entry is { } e
            ? _parts.Reader.ReadLine(e.Last) is { } line && line.Subject == subject && line.SubjectSequence == e.Head.N && line.BodyHash == e.Head.Hash
            : atLeast == 0;
        SubjectHead head = entry?.Head ?? default;
        if (!whole || head.N < atLeast)
        {
            SubjectReading scanned = SubjectScan.Read(_parts.Folder.Path, subject, head.N, null);
            if (scanned.Damage is not null) return (default, scanned.Damage);
            SubjectHead found = scanned.Lines.Count > 0 ? new SubjectHead(scanned.Lines[^1].SubjectSequence, scanned.Lines[^1].BodyHash) : default;
            if (found != head) ReplaceIndex();
            head = found;
        }
        _heads[subject] = head;
        return (head, null);
    }

    /// <summary>Asks the index once it has caught up. If it fails, it is made anew and asked again.</summary>
    private T Ask<T>(Func<JournalIndex, T> question)
    {
        lock (_gate)
        {
            try
            {
                return Answer(question);
            }
            catch (Exception e) when (e is not (ObjectDisposedException or JobLogException))
            {
                // A damaged LiteDB file throws anything; an ObjectDisposedException is the caller's, who closed the log.
                ReplaceIndex();
            }
            try
            {
                return Answer(question);
            }
            catch (Exception e) when (e is not (ObjectDisposedException or JobLogException))
            {
                throw new JobLogException(new IndexFailed(e.Message));
            }
        }
    }

    private T Answer<T>(Func<JournalIndex, T> question)
    {
        ObjectDisposedException.ThrowIf(_parts.IsDisposed, this);
        _parts.IndexWriter?.CatchUp();
        return question(_parts.Index);
    }

    private void ReplaceIndex()
    {
        lock (_gate)
        {
            JournalTail tail = _parts.ReplaceIndex();
            if (tail.Damage is { } damage && Mode == OpenMode.Own) throw new JobLogException(damage.ToFault());
            _notes.Add(new IndexRebuilt(RebuildReason.DoesNotMatch, tail.Head.Sequence));
        }
    }
}
