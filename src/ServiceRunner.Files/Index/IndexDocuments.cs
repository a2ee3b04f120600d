using LiteDB;
using ServiceRunner.Files.Journal;

namespace ServiceRunner.Files.Index;

/// <summary>The index's documents, written out key by key. Their bytes are checked by <see cref="PageFile"/>.</summary>
internal static class IndexDocuments
{
    // LiteDB refuses an index key of 1,023 bytes; a text that somebody typed must not stop the index.
    private const int KeyLength = 200;

    /// <summary>What the documents hold. An index of another format is thrown away and made anew.</summary>
    public const int Format = 3;

    public static string KeyOf(string text) => text.Length <= KeyLength ? text : text[..KeyLength];

    public static string BoardOf(string kind, bool open) => KeyOf(kind) + (open ? "/open" : "/done");

    public static string ExtentKey(string subject, long firstN) => $"{subject}/{firstN:x16}";

    public static BsonDocument Write(IndexHead head) => new()
    {
        ["_id"] = 1,
        ["format"] = Format,
        ["seq"] = head.Head.Sequence,
        ["hash"] = head.Head.Hash.ToString(),
        ["year"] = head.Place.Year,
        ["offset"] = head.Place.Offset,
        ["length"] = head.Place.Length,
    };

    /// <summary>Format 1 did not name itself.</summary>
    public static int FormatOf(BsonDocument head) => head.TryGetValue("format", out BsonValue format) ? format.AsInt32 : 1;

    public static IndexHead ReadHead(BsonDocument d) => new IndexHead(new LogHead(d["seq"].AsInt64, Hash(d)), Place(d));

    public static BsonDocument Write(Extent e) => new()
    {
        ["_id"] = ExtentKey(e.Subject, e.FirstN),
        ["of"] = e.Subject,
        ["year"] = e.Year,
        ["offset"] = e.Offset,
        ["length"] = e.Length,
        ["first"] = e.FirstN,
        ["count"] = e.Count,
    };

    public static Extent ReadExtent(BsonDocument d) =>
        new Extent(d["of"].AsString, d["year"].AsInt32, d["offset"].AsInt64, d["length"].AsInt64, d["first"].AsInt64, d["count"].AsInt64);

    /// <summary>A subject's entry and, when it has one, its row.</summary>
    public static BsonDocument Write(string subject, SubjectEntry entry, SubjectRow? row)
    {
        BsonDocument d = new()
        {
            ["_id"] = subject,
            ["n"] = entry.Head.N,
            ["hash"] = entry.Head.Hash.ToString(),
            ["year"] = entry.Last.Year,
            ["offset"] = entry.Last.Offset,
            ["length"] = entry.Last.Length,
            ["runFirst"] = entry.RunFirstN,
            ["runOffset"] = entry.RunOffset,
        };
        if (row is not null) Add(d, row);
        return d;
    }

    public static (SubjectEntry Entry, SubjectRow? Row) ReadSubject(BsonDocument d)
    {
        SubjectEntry entry = new(new SubjectHead(d["n"].AsInt64, Hash(d)), Place(d), d["runFirst"].AsInt64, d["runOffset"].AsInt64);
        return (entry, d.ContainsKey("board") ? Row(d) : null);
    }

    private static void Add(BsonDocument d, SubjectRow row)
    {
        d["board"] = BoardOf(row.Kind, row.Open);
        d["kind"] = row.Kind;
        d["open"] = row.Open;
        d["numberKey"] = KeyOf(row.Number);
        d["number"] = row.Number;
        d["title"] = row.Title;
        d["owner"] = row.Owner;
        d["state"] = row.State;
        d["since"] = row.Since.UtcTicks;
        d["done"] = row.Done;
        d["total"] = row.Total;
        d["waiting"] = row.Waiting;
        if (row.Serial.Length > 0) d["serial"] = row.Serial;
        if (row.Promised is { } day) d["promised"] = day.DayNumber;
        d["served"] = row.ServedMark;
        if (row.Until is { } until) d["until"] = until.DayNumber;
        if (row.Lots.Count == 0) return;
        d["lots"] = new BsonArray(row.Lots.Select(l => new BsonValue(l)));
        d["lotKeys"] = new BsonArray(row.Lots.Select(l => new BsonValue(KeyOf(l))));
    }

    private static SubjectRow Row(BsonDocument d) => new()
    {
        Subject = d["_id"].AsString,
        Kind = d["kind"].AsString,
        Number = d["number"].AsString,
        Title = d["title"].AsString,
        Owner = d["owner"].AsString,
        State = d["state"].AsString,
        Since = new DateTimeOffset(d["since"].AsInt64, TimeSpan.Zero),
        Done = d["done"].AsInt32,
        Total = d["total"].AsInt32,
        Waiting = d["waiting"].AsString,
        Serial = d.TryGetValue("serial", out BsonValue serial) ? serial.AsString : "",
        Promised = d.TryGetValue("promised", out BsonValue day) ? DateOnly.FromDayNumber(day.AsInt32) : null,
        Until = d.TryGetValue("until", out BsonValue until) ? DateOnly.FromDayNumber(until.AsInt32) : null,
        Lots = d.TryGetValue("lots", out BsonValue lots) ? [.. lots.AsArray.Select(l => l.AsString)] : [],
        Open = d["open"].AsBoolean,
        ServedMark = d["served"].AsInt64,
        LastN = d["n"].AsInt64,
    };

    private static LinePlace Place(BsonDocument d) => new(d["year"].AsInt32, d["offset"].AsInt64, d["length"].AsInt32);

    private static Digest Hash(BsonDocument d) =>
        Digest.TryParse(d["hash"].AsString, out Digest hash) ? hash : throw new IndexUnusableException("a hash cannot be read");
}
