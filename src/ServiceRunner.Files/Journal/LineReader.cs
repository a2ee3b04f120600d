using System.Text.Json;
using ServiceRunner.Core.Quantities;
using ServiceRunner.Files.Data;

namespace ServiceRunner.Files.Journal;

/// <summary>
/// Verifies and reads lines. It keeps the last texts that it saw, since neighbouring lines mostly name the same bench,
/// subject and boot.
/// </summary>
internal sealed class LineReader
{
    private string _bench = "", _subject = "", _by = "", _boot = "";

    /// <summary>One line with its newline; null with the reason when it is not as it was written.</summary>
    public LogLine? Read(ReadOnlyMemory<byte> bytes, out Damage damage)
    {
        ReadOnlySpan<byte> line = bytes.Span;
        damage = Damage.NotALine;
        if (line.Length < Digest.HexLength + 3 || line[^1] != '\n') return null;
        int last = line.Length - 2 - Digest.HexLength, first = line.IndexOf((byte)'\t');
        if (first < 0 || first >= last || line[last] != '\t') return null;
        damage = Damage.LineHash;
        if (!Digest.TryParse(line[(last + 1)..^1], out Digest hash) || hash != Digest.Of(line[..last])) return null;
        damage = Damage.NotALine;
        BodyFields body = new();
        EnvelopeFields envelope = new();
        try
        {
            ReadBody(line[..first], ref body);
            ReadEnvelope(line[(first + 1)..last], ref envelope);
        }
        catch (Exception e) when (e is JsonException or InvalidOperationException or FormatException or ArgumentException)
        {
            return null;
        }
        if (!body.IsWhole || !envelope.IsWhole) return null;
        damage = Damage.BodyHash;
        if (envelope.Body != Digest.Of(line[..first])) return null;
        return new LogLine
        {
            Sequence = envelope.Sequence,
            Bench = _bench,
            Subject = _subject,
            SubjectSequence = body.N,
            ActionId = body.Action,
            By = body.HasBy ? _by : "",
            At = new Moment(body.At, body.HasBoot ? _boot : "", TimeSpan.FromTicks(body.Up)),
            Events = bytes[body.EventsStart..body.EventsEnd],
            Body = bytes[..first],
            Envelope = bytes[(first + 1)..last],
            Bytes = bytes,
            BodyHash = envelope.Body,
            PreviousBody = body.Previous,
            Hash = hash,
            PreviousLine = envelope.Previous,
            ImportedBy = envelope.ImportedBy,
            More = envelope.More,
            Version = Math.Max(body.Version, envelope.Version),
        };
    }

    /// <summary>Who and which an imported body is of; false when it is no body.</summary>
    public bool TryReadBody(ReadOnlySpan<byte> bytes, out string subject, out long n, out Digest previous)
    {
        BodyFields body = new();
        try
        {
            // A raw tab or newline is harmless between JSON's tokens, and would split the line in the journal.
            if (bytes.IndexOfAny((byte)'\n', (byte)'\t', (byte)'\r') < 0) ReadBody(bytes, ref body);
        }
        catch (Exception e) when (e is JsonException or InvalidOperationException or FormatException or ArgumentException)
        {
            body.IsWhole = false;
        }
        (subject, n, previous) = (_subject, body.N, body.Previous);
        return body.IsWhole;
    }

    private struct BodyFields
    {
        public bool IsWhole, HasBy, HasBoot;
        public int Version, Offset, EventsStart, EventsEnd;
        public long N, Up;
        public Digest Previous;
        public string Action;
        public DateTimeOffset At;
    }

    private struct EnvelopeFields
    {
        public bool IsWhole;
        public int Version;
        public long Sequence, More;
        public Digest Previous, Body;
        public string? ImportedBy;
    }

    private void ReadBody(ReadOnlySpan<byte> bytes, ref BodyFields to)
    {
        Utf8JsonReader json = new(bytes);
        to.Action = "";
        bool subject = false;
        Start(ref json);
        while (json.Read() && json.TokenType == JsonTokenType.PropertyName)
        {
            if (json.ValueTextEquals("v"u8)) to.Version = Next(ref json).GetInt32();
            else if (json.ValueTextEquals("of"u8)) subject = Keep(ref json, ref _subject);
            else if (json.ValueTextEquals("n"u8)) to.N = Next(ref json).GetInt64();
            else if (json.ValueTextEquals("prev"u8)) to.Previous = ReadDigest(ref json);
            else if (json.ValueTextEquals("act"u8)) to.Action = Next(ref json).GetString() ?? "";
            else if (json.ValueTextEquals("by"u8)) to.HasBy = Keep(ref json, ref _by);
            else if (json.ValueTextEquals("at"u8)) to.At = Next(ref json).GetDateTimeOffset();
            else if (json.ValueTextEquals("off"u8)) to.Offset = Next(ref json).GetInt32();
            else if (json.ValueTextEquals("boot"u8)) to.HasBoot = Keep(ref json, ref _boot);
            else if (json.ValueTextEquals("up"u8)) to.Up = Next(ref json).GetInt64();
            else if (json.ValueTextEquals("events"u8))
            {
                Next(ref json);
                to.EventsStart = (int)json.TokenStartIndex;
                json.Skip();
                to.EventsEnd = (int)json.BytesConsumed;
            }
            else json.Skip();
        }
        End(ref json);
        to.At = to.At.ToOffset(TimeSpan.FromMinutes(to.Offset));
        to.IsWhole = to.Version > 0 && to.N > 0 && subject && LineCodec.IsSubject(_subject) && (to.EventsEnd > 0 || to.Version > LineCodec.Version);
    }

    private void ReadEnvelope(ReadOnlySpan<byte> bytes, ref EnvelopeFields to)
    {
        Utf8JsonReader json = new(bytes);
        bool bench = false;
        Start(ref json);
        while (json.Read() && json.TokenType == JsonTokenType.PropertyName)
        {
            if (json.ValueTextEquals("v"u8)) to.Version = Next(ref json).GetInt32();
            else if (json.ValueTextEquals("bench"u8)) bench = Keep(ref json, ref _bench);
            else if (json.ValueTextEquals("seq"u8)) to.Sequence = Next(ref json).GetInt64();
            else if (json.ValueTextEquals("prev"u8)) to.Previous = ReadDigest(ref json);
            else if (json.ValueTextEquals("body"u8)) to.Body = ReadDigest(ref json);
            else if (json.ValueTextEquals("more"u8)) to.More = Next(ref json).GetInt64();
            else if (json.ValueTextEquals("importedBy"u8)) to.ImportedBy = Next(ref json).GetString();
            else json.Skip();
        }
        End(ref json);
        to.IsWhole = to.Version > 0 && to.Sequence > 0 && bench && !to.Body.IsNone;
    }

    private static void Start(ref Utf8JsonReader json)
    {
        if (!json.Read() || json.TokenType != JsonTokenType.StartObject) throw new JsonException();
    }

    private static void End(ref Utf8JsonReader json)
    {
        if (json.TokenType != JsonTokenType.EndObject || json.Read()) throw new JsonException();
    }

    private static ref Utf8JsonReader Next(ref Utf8JsonReader json)
    {
        json.Read();
        return ref json;
    }

    private static bool Keep(ref Utf8JsonReader json, ref string kept)
    {
        json.Read();
        if (json.TokenType != JsonTokenType.String) throw new JsonException();
        if (!json.ValueTextEquals(kept)) kept = json.GetString()!;
        return true;
    }

    private static Digest ReadDigest(ref Utf8JsonReader json)
    {
        json.Read();
        if (json.TokenType != JsonTokenType.String || json.ValueIsEscaped || !Digest.TryParse(json.ValueSpan, out Digest digest)) throw new JsonException();
        return digest;
    }
}
