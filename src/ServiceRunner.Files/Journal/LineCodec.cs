using System.Buffers;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace ServiceRunner.Files.Journal;

/// <summary>
/// A line's bytes: body JSON, tab, envelope JSON, tab, 64 hex digits, newline. JSON escapes tabs and newlines, so the
/// separators cannot occur inside. The last field is the SHA-256 of all bytes before the last tab.
/// </summary>
internal static class LineCodec
{
    public const int Version = 1;

    /// <summary>Longer lines are damage: a lost newline must not make the reader take the rest of the file into memory.</summary>
    public const int MaxLength = 64 << 20;

    private static readonly JsonWriterOptions Json = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    public static byte[] Body(NewLine line, long n, Digest previous)
    {
        ReadOnlySpan<byte> events = line.Events.Span;
        if (events.Length < 2 || events[0] != '[' || events[^1] != ']' || events.IndexOfAny((byte)'\n', (byte)'\t', (byte)'\r') >= 0)
            throw new ArgumentException("Events are one JSON array on one line.", nameof(line));
        ArrayBufferWriter<byte> bytes = new(events.Length + 400);
        using Utf8JsonWriter json = new(bytes, Json);
        json.WriteStartObject();
        json.WriteNumber("v"u8, Version);
        json.WriteString("of"u8, line.Subject);
        json.WriteNumber("n"u8, n);
        WriteDigest(json, "prev"u8, previous);
        json.WriteString("act"u8, line.ActionId);
        json.WriteString("by"u8, line.By);
        WriteTime(json, line.At.Wall);
        json.WriteString("boot"u8, line.At.Boot);
        json.WriteNumber("up"u8, line.At.SinceBoot.Ticks);
        json.WritePropertyName("events"u8);
        json.WriteRawValue(events);
        json.WriteEndObject();
        json.Flush();
        return bytes.WrittenSpan.ToArray();
    }

    /// <summary>Adds a whole line to the buffer and returns its hash.</summary>
    public static Digest Write(ArrayBufferWriter<byte> to, ReadOnlySpan<byte> body, Digest bodyHash, Place place)
    {
        int start = to.WrittenCount;
        to.Write(body);
        to.Write("\t"u8);
        using (Utf8JsonWriter json = new(to, Json))
        {
            json.WriteStartObject();
            json.WriteNumber("v"u8, Version);
            json.WriteString("bench"u8, place.Bench);
            json.WriteNumber("seq"u8, place.Sequence);
            WriteDigest(json, "prev"u8, place.Previous);
            WriteDigest(json, "body"u8, bodyHash);
            if (place.More > 0) json.WriteNumber("more"u8, place.More);
            if (place.ImportedBy is not null) json.WriteString("importedBy"u8, place.ImportedBy);
            if (place.Was > 0) json.WriteNumber("was"u8, place.Was);
            json.WriteEndObject();
        }
        Digest hash = Digest.Of(to.WrittenSpan[start..]);
        to.Write("\t"u8);
        to.Advance(hash.WriteHex(to.GetSpan(Digest.HexLength)));
        to.Write("\n"u8);
        return hash;
    }

    /// <summary>An id is also a key of the index, and perhaps once a file's name.</summary>
    public static bool IsSubject(string id) => id.Length is > 0 and <= 64 && id.All(c => char.IsAsciiLetterOrDigit(c) || c is '-' or '_');

    /// <summary>Where a line stands in its bench's journal.</summary>
    /// <param name="More">How many lines of the same append follow.</param>
    /// <param name="Was">Its number in a damaged journal that it was recovered from; 0 if it was not.</param>
    public readonly record struct Place(string Bench, long Sequence, Digest Previous, long More, string? ImportedBy, long Was = 0);

    private static void WriteDigest(Utf8JsonWriter json, ReadOnlySpan<byte> key, Digest digest)
    {
        Span<byte> hex = stackalloc byte[Digest.HexLength];
        json.WriteString(key, hex[..digest.WriteHex(hex)]);
    }

    private static void WriteTime(Utf8JsonWriter json, DateTimeOffset at)
    {
        Span<byte> text = stackalloc byte[28];
        at.UtcDateTime.TryFormat(text, out int written, "yyyy-MM-dd'T'HH:mm:ss.fffffff'Z'", System.Globalization.CultureInfo.InvariantCulture);
        json.WriteString("at"u8, text[..written]);
        json.WriteNumber("off"u8, (int)at.Offset.TotalMinutes);
    }
}
