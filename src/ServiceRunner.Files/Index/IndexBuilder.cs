using ServiceRunner.Files.Journal;

namespace ServiceRunner.Files.Index;

/// <summary>Fills an empty index from the journal's lines, in order, holding one small entry per subject.</summary>
internal sealed class IndexBuilder(JournalIndex index)
{
    private const int Batch = 5_000;
    private readonly Dictionary<string, SubjectEntry> _subjects = [];
    private readonly List<Extent> _ended = [];
    private IndexHead? _head;

    public long Lines { get; private set; }

    public void Add(IndexedLine line)
    {
        if (_subjects.TryGetValue(line.Subject, out SubjectEntry entry))
        {
            SubjectEntry next = entry.Next(line);
            if (next.RunFirstN != entry.RunFirstN) End(entry.Run(line.Subject));
            _subjects[line.Subject] = next;
        }
        else
        {
            _subjects[line.Subject] = SubjectEntry.First(line);
        }
        _head = new IndexHead(line.Head, line.Place);
        Lines++;
    }

    /// <summary>Writes the rest. Rows come last: whoever makes them reads the subject through the extents.</summary>
    public void Finish(Func<string, SubjectEntry, IReadOnlyList<Extent>, SubjectRow?> rowOf)
    {
        foreach ((string subject, SubjectEntry entry) in _subjects) End(entry.Run(subject));
        Flush();
        List<(string, SubjectEntry, SubjectRow?)> rows = [];
        foreach ((string subject, SubjectEntry entry) in _subjects)
        {
            rows.Add((subject, entry, rowOf(subject, entry, index.Extents(subject, 1))));
            if (rows.Count < Batch) continue;
            index.AddNew(rows);
            rows.Clear();
        }
        if (rows.Count > 0) index.AddNew(rows);
        if (_head is { } head) index.SetHead(head);
    }

    private void End(Extent extent)
    {
        _ended.Add(extent);
        if (_ended.Count >= Batch) Flush();
    }

    private void Flush()
    {
        if (_ended.Count > 0) index.AddNew(_ended);
        _ended.Clear();
    }
}
