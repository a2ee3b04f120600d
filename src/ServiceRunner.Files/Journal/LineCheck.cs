using System.Text.Unicode;

namespace ServiceRunner.Files.Journal;

/// <summary>
/// Verifies a line without decoding it: that it is the line asked for, and that both of its hashes match. What it does not know
/// at a glance it leaves to <see cref="LineReader"/>.
/// </summary>
internal static class LineCheck
{
    /// <summary>The body of a subject's line with this number; empty if it is not that, or not at a glance.</summary>
    public static ReadOnlySpan<byte> Body(ReadOnlySpan<byte> line, string subject, long n)
    {
        if (line.Length < Digest.HexLength + 3 || line[^1] != '\n' || !IsOf(line, subject, n)) return default;
        int last = line.Length - 2 - Digest.HexLength, first = line.IndexOf((byte)'\t');
        if (first < 0 || first >= last || line[last] != '\t') return default;
        if (!Digest.TryParse(line[(last + 1)..^1], out Digest hash) || hash != Digest.Of(line[..last])) return default;
        ReadOnlySpan<byte> envelope = line[(first + 1)..last], key = ",\"body\":\""u8;
        int at = envelope.IndexOf(key);
        if (at < 0 || at + key.Length + Digest.HexLength > envelope.Length) return default;
        ReadOnlySpan<byte> body = line[..first];
        return Digest.TryParse(envelope.Slice(at + key.Length, Digest.HexLength), out Digest of) && of == Digest.Of(body) ? body : default;
    }

    private static bool IsOf(ReadOnlySpan<byte> line, string subject, long n)
    {
        Span<byte> beginning = stackalloc byte[160];
        return Utf8.TryWrite(beginning, $"{{\"v\":{LineCodec.Version},\"of\":\"{subject}\",\"n\":{n},", out int length) && line.StartsWith(beginning[..length]);
    }
}
