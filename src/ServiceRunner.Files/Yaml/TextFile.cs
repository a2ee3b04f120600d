using System.Buffers;
using System.Text;
using System.Text.Unicode;
using ServiceRunner.Core.Quantities;
using ServiceRunner.Files.Checks;
using ServiceRunner.Files.Checks.Reading;

namespace ServiceRunner.Files.Yaml;

/// <summary>A file that a person wrote, from bytes to text. What is no such file is refused with a sentence.</summary>
public static class TextFile
{
    /// <summary>The longest file in bytes.</summary>
    public const int MostBytes = 4 * 1024 * 1024;

    /// <summary>The text of a file, or null; why not is added to <paramref name="found"/>.</summary>
    /// <param name="path">Where it is.</param>
    /// <param name="shownAs">How a diagnostic names it.</param>
    /// <param name="found">Takes the diagnostics.</param>
    public static string? Read(string path, string shownAs, List<Diagnostic> found)
    {
        try
        {
            using FileStream stream = new(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite, bufferSize: 1);
            if (stream.Length > MostBytes)
            {
                found.Add(FileTooBig.Of(shownAs, stream.Length));
                return null;
            }
            // A device or a pipe tells no length: the bound holds while reading as well.
            byte[] bytes = ReadUpTo(stream, MostBytes + 1);
            if (bytes.Length <= MostBytes) return Decode(bytes, shownAs, found);
            found.Add(FileTooBig.Of(shownAs, bytes.Length));
            return null;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            found.Add(CannotOpen.Of(shownAs, path, e));
            return null;
        }
    }

    /// <summary>The text that bytes mean, or null; why not is added to <paramref name="found"/>.</summary>
    public static string? Decode(ReadOnlySpan<byte> bytes, string shownAs, List<Diagnostic> found)
    {
        if (bytes is [0xEF, 0xBB, 0xBF, ..]) bytes = bytes[3..];
        Diagnostic? fault =
            bytes.Length > MostBytes ? FileTooBig.Of(shownAs, bytes.Length)
            : bytes.IsEmpty ? EmptyFile.Of(shownAs)
            : bytes is [0xFF, 0xFE, ..] or [0xFE, 0xFF, ..] ? NotUtf8.Utf16(shownAs)
            : Picture(bytes) is { } picture ? NotText.Picture(shownAs, picture)
            : bytes.Contains((byte)0) ? NotText.Binary(shownAs)
            : !Utf8.IsValid(bytes) ? NotUtf8.At(shownAs, FirstBad(bytes))
            : null;
        if (fault is null) return Encoding.UTF8.GetString(bytes);
        found.Add(fault);
        return null;
    }

    private static string? Picture(ReadOnlySpan<byte> bytes) => bytes switch
    {
        [0x89, (byte)'P', (byte)'N', (byte)'G', ..] => "PNG",
        [0xFF, 0xD8, 0xFF, ..] => "JPEG",
        [(byte)'G', (byte)'I', (byte)'F', (byte)'8', ..] => "GIF",
        _ => null,
    };

    private static byte[] ReadUpTo(FileStream stream, int most)
    {
        byte[] buffer = new byte[(int)Math.Clamp(stream.Length + 1, 4096, most)];
        int filled = 0;
        while (filled < most)
        {
            if (filled == buffer.Length) Array.Resize(ref buffer, (int)Math.Min(most, buffer.Length * 2L));
            int got = stream.Read(buffer, filled, buffer.Length - filled);
            if (got == 0) break;
            filled += got;
        }
        return buffer.AsSpan(0, filled).ToArray();
    }

    private static Place FirstBad(ReadOnlySpan<byte> bytes)
    {
        int line = 1, column = 1;
        while (!bytes.IsEmpty && Rune.DecodeFromUtf8(bytes, out Rune rune, out int length) == OperationStatus.Done)
        {
            (line, column) = rune.Value == '\n' ? (line + 1, 1) : (line, column + 1);
            bytes = bytes[length..];
        }
        return new Place(line, column);
    }
}
