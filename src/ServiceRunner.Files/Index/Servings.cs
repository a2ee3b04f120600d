using System.Buffers.Binary;
using LiteDB;
using ServiceRunner.Files.Journal;

namespace ServiceRunner.Files.Index;

/// <summary>What a batch served in one job: whose job, and the lines that say so.</summary>
internal sealed record LotEntry(string Subject, string Number, string Title, IReadOnlyList<ServedFrom> Points);

/// <summary>
/// Which points each batch served, a document for each job and batch. It names the lines and where they lie; who, when and with
/// what stands in the lines alone.
/// </summary>
internal sealed class Servings
{
    private const int Stored = 8 + 4 + 8 + 4;

    private readonly ILiteCollection<BsonDocument> _lots;

    public Servings(LiteDatabase database) => _lots = database.GetCollection("servings");

    public void MakeIndexes() => _lots.EnsureIndex("lotKey", "$.lotKey");

    /// <summary>The jobs that a batch was used on, by the job's id.</summary>
    public List<LotEntry> Of(string lot)
    {
        List<LotEntry> found = [];
        foreach (BsonDocument d in _lots.Find(BsonExpression.Create("$.lotKey = @0", IndexDocuments.KeyOf(lot))).ToList())
            if (d["lot"].AsString == lot) found.Add(Read(d));
        found.Sort((a, b) => string.CompareOrdinal(a.Subject, b.Subject));
        return found;
    }

    /// <summary>Changes whenever what is written for a job would change.</summary>
    public static long MarkOf(SubjectRow row)
    {
        if (row.Servings.Count == 0) return 0;
        // FNV-1a, since a mark on the disk must be the same in every run.
        ulong mark = 14695981039346656037;
        void Add(string text)
        {
            foreach (char c in text) mark = (mark ^ c) * 1099511628211;
            mark = (mark ^ 0xFFFF) * 1099511628211;
        }
        Add(row.Number);
        Add(row.Title);
        foreach (ServedFrom s in row.Servings)
        {
            Add(s.Lot);
            Add(s.Point);
            Add(s.Name);
            mark = (mark ^ (ulong)s.N) * 1099511628211;
        }
        return (long)(mark | 1);
    }

    /// <summary>Writes a job's batches anew.</summary>
    /// <param name="subject">The job.</param>
    /// <param name="row">Its row.</param>
    /// <param name="fresh">Where lines lie that were just taken in.</param>
    public void Replace(string subject, SubjectRow row, IReadOnlyDictionary<long, LinePlace> fresh)
    {
        List<BsonDocument> before = _lots.Find(BsonExpression.Create("$._id BETWEEN @0 AND @1", subject + "/", subject + "/~")).ToList();
        Dictionary<long, LinePlace> places = [];
        foreach (BsonDocument d in before)
        {
            foreach (ServedFrom s in Read(d).Points) places[s.N] = s.Place;
            _lots.Delete(d["_id"]);
        }
        foreach ((long n, LinePlace place) in fresh) places[n] = place;
        AddNew(subject, row with { Servings = [.. row.Servings.Select(s => s.Place.Length > 0 ? s : s with { Place = places.GetValueOrDefault(s.N) })] });
    }

    /// <summary>Writes the batches of a job that has none yet.</summary>
    public void AddNew(string subject, SubjectRow row)
    {
        if (row.Servings.Count > 0) _lots.InsertBulk(Write(subject, row));
    }

    public void AddNew(IEnumerable<(string Subject, SubjectRow Row)> rows) => _lots.InsertBulk(rows.SelectMany(r => Write(r.Subject, r.Row)), 5_000);

    private static IEnumerable<BsonDocument> Write(string subject, SubjectRow row)
    {
        int k = 0;
        foreach (IGrouping<string, ServedFrom> lot in row.Servings.GroupBy(s => s.Lot, StringComparer.Ordinal))
            yield return new BsonDocument
            {
                ["_id"] = $"{subject}/{k++:x4}",
                ["of"] = subject,
                ["lotKey"] = IndexDocuments.KeyOf(lot.Key),
                ["lot"] = lot.Key,
                ["number"] = row.Number,
                ["title"] = row.Title,
                ["points"] = string.Join('\n', lot.SelectMany(s => new[] { Line(s.Point), Line(s.Name) })),
                ["lines"] = Lines([.. lot]),
            };
    }

    private static string Line(string text) => text.ReplaceLineEndings(" ");

    private static byte[] Lines(ServedFrom[] servings)
    {
        byte[] bytes = new byte[servings.Length * Stored];
        for (int i = 0; i < servings.Length; i++)
        {
            Span<byte> to = bytes.AsSpan(i * Stored);
            BinaryPrimitives.WriteInt64LittleEndian(to, servings[i].N);
            BinaryPrimitives.WriteInt32LittleEndian(to[8..], servings[i].Place.Year);
            BinaryPrimitives.WriteInt64LittleEndian(to[12..], servings[i].Place.Offset);
            BinaryPrimitives.WriteInt32LittleEndian(to[20..], servings[i].Place.Length);
        }
        return bytes;
    }

    private static LotEntry Read(BsonDocument d)
    {
        string[] points = d["points"].AsString.Split('\n');
        byte[] lines = d["lines"].AsBinary;
        string lot = d["lot"].AsString;
        if (points.Length * Stored != lines.Length * 2) throw new IndexUnusableException("a batch's points do not match its lines");
        ServedFrom[] served = new ServedFrom[points.Length / 2];
        for (int i = 0; i < served.Length; i++)
        {
            ReadOnlySpan<byte> from = lines.AsSpan(i * Stored);
            served[i] = new ServedFrom(lot, points[2 * i], points[2 * i + 1], BinaryPrimitives.ReadInt64LittleEndian(from))
            {
                Place = new LinePlace(BinaryPrimitives.ReadInt32LittleEndian(from[8..]), BinaryPrimitives.ReadInt64LittleEndian(from[12..]), BinaryPrimitives.ReadInt32LittleEndian(from[20..])),
            };
        }
        return new LotEntry(d["of"].AsString, d["number"].AsString, d["title"].AsString, served);
    }
}
