using LiteDB;
using LiteDB.Engine;
using ServiceRunner.Files.Journal;

namespace ServiceRunner.Files.Index;

/// <summary>
/// Where each subject's lines lie in the journal, and its row. It holds no truth: what it says is checked against the
/// journal, and in doubt it is thrown away and made anew.
/// </summary>
internal sealed class JournalIndex 
{
    // A LiteDB that failed throws from its finalizers and ends the process, unless it stays reachable.
    private static readonly List<LiteDatabase> Failed = [];

    private readonly LiteDatabase _database;
    private readonly PageFile[] _files;
    private readonly ILiteCollection<BsonDocument> _head, _extents, _rows;
    private readonly Servings _servings;

    private JournalIndex(LiteDatabase database, PageFile[] files)
    {
        (_database, _files) = (database, files);
        _head = database.GetCollection("head");
        _extents = database.GetCollection("extents");
        _rows = database.GetCollection("rows");
        _servings = new Servings(database);
        // One of our format has them; to ask for each again takes longer than to read the board.
        if (Head() is not null) return;
        _servings.MakeIndexes();
        _rows.EnsureIndex("board", "$.board");
        _rows.EnsureIndex("numberKey", "$.numberKey");
        _rows.EnsureIndex("lotKeys", "$.lotKeys[*]");
        _rows.EnsureIndex("since", "$.since");
    }

    public static JournalIndex OnDisk(string path, string log, Func<bool> mayWrite)
    {
        PageFile[] files = [];
        try
        {
            files = [.. files, new PageFile(path, mayWrite)];
            files = [.. files, new PageFile(log, mayWrite)];
            return Open(files[0], files[1], files);
        }
        catch
        {
            foreach (PageFile file in files) file.End();
            throw;
        }
    }

    /// <summary>For a second process that reads: nothing is written beside the journal.</summary>
    public static JournalIndex InMemory() => Open(new MemoryStream(), new MemoryStream(), []);

    private static JournalIndex Open(Stream data, Stream log, PageFile[] files)
    {
        LiteDatabase database = new(new LiteEngine(new EngineSettings { DataStream = data, LogStream = log, Collation = Collation.Binary }), new BsonMapper());
        try
        {
            return new JournalIndex(database, files);
        }
        catch
        {
            Keep(database);
            throw;
        }
    }

    private static void Keep(LiteDatabase database)
    {
        lock (Failed) Failed.Add(database);
    }

    /// <summary>Null for an empty index, and for one of another format.</summary>
    public IndexHead? Head() => _head.FindById(1) is { } d && IndexDocuments.FormatOf(d) == IndexDocuments.Format ? IndexDocuments.ReadHead(d) : null;

    /// <summary>The jobs that a batch was used on, with the lines that say so.</summary>
    public List<LotEntry> Served(string lot) => _servings.Of(lot);

    public (SubjectEntry Entry, SubjectRow? Row)? Subject(string subject) =>
        _rows.FindById(subject) is { } d ? IndexDocuments.ReadSubject(d) : null;

    /// <summary>The runs that hold a subject's lines from the given one on, in order.</summary>
    public List<Extent> Extents(string subject, long fromN)
    {
        BsonExpression before = BsonExpression.Create("$._id BETWEEN @0 AND @1", IndexDocuments.ExtentKey(subject, 0), IndexDocuments.ExtentKey(subject, fromN));
        List<BsonDocument> first = fromN <= 1 ? [] : _extents.Query().Where(before).OrderByDescending("$._id").Limit(1).ToList();
        string low = first.Count > 0 ? first[0]["_id"].AsString : IndexDocuments.ExtentKey(subject, 0);
        BsonExpression from = BsonExpression.Create("$._id BETWEEN @0 AND @1", low, IndexDocuments.ExtentKey(subject, long.MaxValue));
        return [.. _extents.Query().Where(from).OrderBy("$._id").ToList().Select(IndexDocuments.ReadExtent)];
    }

    public List<SubjectRow> Rows(string kind, bool open) => Rows("$.board = @0", IndexDocuments.BoardOf(kind, open));

    public List<SubjectRow> RowsWithNumber(string number) =>
        [.. Rows("$.numberKey = @0", IndexDocuments.KeyOf(number)).Where(r => r.Number == number)];

    public List<SubjectRow> RowsWithLot(string lot) =>
        [.. Rows("$.lotKeys[*] ANY = @0", IndexDocuments.KeyOf(lot)).Where(r => r.Lots.Contains(lot))];

    public List<SubjectRow> RowsSince(string kind, DateTimeOffset since) =>
        [.. Rows("$.since >= @0", since.UtcTicks).Where(r => r.Kind == kind)];

    private List<SubjectRow> Rows(string where, BsonValue value) =>
        [.. _rows.Find(BsonExpression.Create(where, value)).ToList().Select(d => IndexDocuments.ReadSubject(d).Row!).OrderBy(r => r.Subject, StringComparer.Ordinal)];

    /// <summary>Takes in lines that follow the head, all or none.</summary>
    public void Add(IReadOnlyList<IndexedLine> lines)
    {
        Dictionary<string, (SubjectEntry Entry, SubjectRow? Row, bool IsNew)> subjects = [];
        Dictionary<string, long> marks = [];
        List<Extent> runs = [];
        foreach (IndexedLine line in lines) Add(line, subjects, marks, runs);
        _database.BeginTrans();
        try
        {
            foreach ((string subject, (SubjectEntry entry, SubjectRow? row, bool isNew)) in subjects)
            {
                runs.Add(entry.Run(subject));
                SubjectRow? marked = row is null ? null : row with { ServedMark = Servings.MarkOf(row) };
                // A row that was read back says nothing of servings: what stands is left.
                if (row is { ServedMark: not 0 } && row.Servings.Count == 0 && marks.GetValueOrDefault(subject) == row.ServedMark) marked = row;
                else if (marked is not null && marked.ServedMark != marks.GetValueOrDefault(subject)) _servings.Replace(subject, marked, lines.Where(l => l.Subject == subject).ToDictionary(l => l.N, l => l.Place));
                BsonDocument document = IndexDocuments.Write(subject, entry, marked);
                if (isNew) _rows.Insert(document);
                else _rows.Update(document);
            }
            _extents.Upsert(runs.Select(IndexDocuments.Write));
            SetHead(new IndexHead(lines[^1].Head, lines[^1].Place));
            _database.Commit();
        }
        catch
        {
            _database.Rollback();
            throw;
        }
    }

    private void Add(IndexedLine line, Dictionary<string, (SubjectEntry Entry, SubjectRow? Row, bool IsNew)> subjects, Dictionary<string, long> marks, List<Extent> runs)
    {
        if (!subjects.TryGetValue(line.Subject, out var known))
        {
            known = Subject(line.Subject) is { } stored ? (stored.Entry, stored.Row, false) : (default, null, true);
            marks[line.Subject] = known.Row?.ServedMark ?? 0;
        }
        if (line.N != known.Entry.Head.N + 1) throw new IndexUnusableException($"line {line.N} of a subject after its line {known.Entry.Head.N}");
        SubjectEntry next = line.N == 1 ? SubjectEntry.First(line) : known.Entry.Next(line);
        if (line.N > 1 && next.RunFirstN != known.Entry.RunFirstN) runs.Add(known.Entry.Run(line.Subject));
        subjects[line.Subject] = (next, line.Row?.Invoke() ?? known.Row, known.IsNew);
    }

    public void SetHead(IndexHead head) => _head.Upsert(IndexDocuments.Write(head));

    /// <summary>For a rebuild, which knows that none of them is there yet.</summary>
    public void AddNew(IReadOnlyCollection<Extent> extents) => _extents.InsertBulk(extents.Select(IndexDocuments.Write), extents.Count);

    /// <summary>For a rebuild.</summary>
    public void AddNew(IReadOnlyCollection<(string Subject, SubjectEntry Entry, SubjectRow? Row)> rows)
    {
        _rows.InsertBulk(rows.Select(r => IndexDocuments.Write(r.Subject, r.Entry, r.Row is { } row ? row with { ServedMark = Servings.MarkOf(row) } : null)), rows.Count);
        _servings.AddNew(rows.Where(r => r.Row is not null).Select(r => (r.Subject, r.Row!)));
    }

    /// <summary>Read mode makes rows after the lines.</summary>
    public void SetRow(string subject, SubjectRow? row)
    {
        if (Subject(subject) is not { } known) return;
        if (row is not null && Servings.MarkOf(row) is var mark && mark != (known.Row?.ServedMark ?? 0)) _servings.Replace(subject, row, new Dictionary<long, LinePlace>());
        _rows.Update(IndexDocuments.Write(subject, known.Entry, row is null ? null : row with { ServedMark = Servings.MarkOf(row) }));
    }

    /// <summary>Closes an index that is whole; true if all of it is on the disk.</summary>
    public bool Close()
    {
        try
        {
            _database.Dispose();
        }
        catch
        {
            Abandon();
            throw;
        }
        bool synced = _files.All(f => f.Sync());
        foreach (PageFile file in _files) file.End();
        return synced;
    }

    /// <summary>Lets go of an index that failed.</summary>
    public void Abandon()
    {
        Keep(_database);
        foreach (PageFile file in _files) file.End();
    }
}
