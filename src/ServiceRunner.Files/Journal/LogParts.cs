using ServiceRunner.Files.Data;
using ServiceRunner.Files.Index;

namespace ServiceRunner.Files.Journal;

/// <summary>What an open log consists of, and how its index is made and made anew.</summary>
internal sealed class LogParts(DataFolder folder, RowOf rowOf, OpenOptions options) : IDisposable
{
    private readonly IndexFile _file = new(folder);
    private JournalIndex? _index;

    public DataFolder Folder => folder;
    public TimeProvider Clock => options.Clock;
    public SubjectReader Reader { get; } = new(folder.Path);
    public JournalIndex Index => _index!;
    public FolderLock? Lock { get; set; }
    public JournalWriter? Writer { get; set; }
    public IndexWriter? IndexWriter { get; private set; }
    public bool IsDisposed { get; private set; }

    /// <summary>Takes the index on the disk if it knows a line that lies in the journal just so; otherwise says why not.</summary>
    public (IndexHead Head, RebuildReason? Why) OpenIndex()
    {
        (JournalIndex? index, RebuildReason why) = _file.Open();
        if (index is null) return (default, why);
        IndexHead head = index.Head()!.Value;
        if (Reader.ReadLine(head.Place) is { } line && line.Sequence == head.Head.Sequence && line.Hash == head.Head.Hash)
        {
            _index = index;
            return (head, null);
        }
        _file.ThrowAway(index);
        return (head, RebuildReason.DoesNotMatch);
    }

    /// <summary>Makes the index from the journal alone.</summary>
    public JournalTail BuildIndex(bool onDisk)
    {
        JournalIndex index = onDisk ? _file.Fresh() : JournalIndex.InMemory();
        try
        {
            JournalTail tail = Build(index);
            _index = index;
            return tail;
        }
        catch (Exception e) when (onDisk && (e is LiteDB.LiteException or IndexUnusableException || DurableFile.IsDisk(e)))
        {
            // The disk may be full: the journal is there, and an index in memory answers as well.
            _file.ThrowAway(index);
            return BuildIndex(false);
        }
    }

    /// <summary>Reads on behind the index's head and takes in what is there.</summary>
    public JournalTail ReadOn(LogHead head, string? bench)
    {
        IndexHead known = _index!.Head() ?? default;
        List<IndexedLine> lines = [];
        JournalTail tail = new(folder.Path, head, known.Place, bench);
        tail.Read(null, line => lines.Add(Indexed(line)));
        if (lines.Count == 0) return tail;
        _index.Add(lines);
        foreach (string subject in lines.Select(l => l.Subject).Distinct()) _index.SetRow(subject, Row(subject, _index.Extents(subject, 1)));
        return tail;
    }

    public JournalTail ReplaceIndex()
    {
        bool own = Writer is not null;
        IndexWriter?.Dispose();
        IndexWriter = null;
        if (_index is not null) _file.ThrowAway(_index, own);
        JournalTail tail = BuildIndex(own);
        if (own) StartWriter();
        return tail;
    }

    public void DropIndex()
    {
        if (_index is not null) _file.ThrowAway(_index);
        _index = null;
    }

    public void StartWriter() => IndexWriter = new IndexWriter(Index);

    private JournalTail Build(JournalIndex index)
    {
        long total = Segment.In(folder.Path).Sum(s => new FileInfo(s.Path).Length), bytes = 0;
        IndexBuilder builder = new(index);
        JournalTail tail = new(folder.Path, default, default, null);
        tail.Read([], line =>
        {
            builder.Add(Indexed(line));
            bytes += line.Place.Length;
            if (builder.Lines % 10_000 == 0) options.Progress?.Invoke(new RebuildProgress(builder.Lines, bytes, total));
        });
        builder.Finish((subject, _, extents) => Row(subject, extents));
        options.Progress?.Invoke(new RebuildProgress(builder.Lines, bytes, total));
        return tail;
    }

    private SubjectRow? Row(string subject, IReadOnlyList<Extent> extents)
    {
        List<LinePlace> places = [];
        (List<LogLine> lines, Damaged? flaw) = Reader.Read(subject, extents, places);
        if (flaw is not null) throw new IndexUnusableException($"a subject just read cannot be read: {flaw}");
        if (rowOf(subject, lines) is not { } row) return null;
        return row with { Subject = subject, LastN = lines[^1].SubjectSequence, Servings = [.. row.Servings.Select(s => s with { Place = places[(int)s.N - 1] })] };
    }

    private static IndexedLine Indexed(ScannedLine line) => new(line.Line.Subject, line.Line.SubjectSequence, line.Line.BodyHash,
        new LogHead(line.Line.Sequence, line.Line.Hash), line.Place, null);

    public void Dispose()
    {
        if (IsDisposed) return;
        IsDisposed = true;
        bool whole = IndexWriter?.End() ?? true;
        if (_index is not null && !whole) _file.ThrowAway(_index, Writer is not null);
        else if (_index is not null && Lock is not null) _file.Close(_index);
        else _index?.Close();
        Writer?.Dispose();
        Reader.Dispose();
        Lock?.Dispose();
    }
}
