using System.Collections.Concurrent;
using Microsoft.Win32.SafeHandles;
using ServiceRunner.Files.Data;
using ServiceRunner.Files.Index;

namespace ServiceRunner.Files.Journal;

/// <summary>Reads a subject's lines where the index says they lie, and believes none of it unverified.</summary>
internal sealed class SubjectReader(string folder) : IDisposable
{
    private readonly ConcurrentDictionary<int, SafeFileHandle> _files = new();

    /// <summary>The lines up to the first that is not as it must be, and where that is.</summary>
    public (List<LogLine> Lines, Damaged? Flaw) Read(string subject, IReadOnlyList<Extent> extents, List<LinePlace>? places = null)
    {
        List<LogLine> lines = [];
        LineReader reader = new();
        foreach (Extent extent in extents)
        {
            if (Read(subject, extent, reader, lines, places) is { } flaw) return (lines, flaw);
        }
        return (lines, null);
    }

    public LogLine? ReadLine(LinePlace place) =>
        Bytes(place.Year, place.Offset, place.Length) is { } bytes ? new LineReader().Read(bytes, out _) : null;

    private Damaged? Read(string subject, Extent extent, LineReader reader, List<LogLine> lines, List<LinePlace>? places)
    {
        string file = Segment.NameOf(extent.Year);
        if (Bytes(extent.Year, extent.Offset, extent.Length) is not { } bytes) return new Damaged(file, extent.Offset, Damage.Missing);
        long n = extent.FirstN;
        int start = 0;
        while (start < bytes.Length)
        {
            int newline = bytes.AsSpan(start).IndexOf((byte)'\n');
            int end = newline < 0 ? bytes.Length : start + newline + 1;
            if (reader.Read(bytes.AsMemory(start, end - start), out Damage what) is not { } line) return new Damaged(file, extent.Offset + start, what);
            if (Follows(subject, n, line, lines) is { } broken) return new Damaged(file, extent.Offset + start, broken);
            lines.Add(line);
            places?.Add(new LinePlace(extent.Year, extent.Offset + start, end - start));
            start = end;
            n++;
        }
        return n == extent.EndN ? null : new Damaged(file, extent.Offset + extent.Length, Damage.SubjectSequence);
    }

    private static Damage? Follows(string subject, long n, LogLine line, List<LogLine> before)
    {
        if (line.Subject != subject || line.SubjectSequence != n) return Damage.SubjectSequence;
        if (before.Count > 0) return before[^1].SubjectSequence + 1 == n && line.PreviousBody == before[^1].BodyHash ? null : Damage.BodyLink;
        return n > 1 || line.PreviousBody.IsNone ? null : Damage.BodyLink;
    }

    /// <summary>Fills the bytes from a place on; false if that cannot be done.</summary>
    public bool TryRead(int year, long offset, Span<byte> bytes)
    {
        try
        {
            SafeFileHandle file = File(year);
            int filled = 0;
            while (offset >= 0 && filled < bytes.Length && RandomAccess.Read(file, bytes[filled..], offset + filled) is > 0 and int read) filled += read;
            return filled == bytes.Length;
        }
        catch (Exception e) when (DurableFile.IsDisk(e))
        {
            return false;
        }
    }

    private byte[]? Bytes(int year, long offset, long length)
    {
        try
        {
            if (offset < 0 || length <= 0 || length > Array.MaxLength || offset + length > RandomAccess.GetLength(File(year))) return null;
        }
        catch (Exception e) when (DurableFile.IsDisk(e))
        {
            return null;
        }
        byte[] bytes = GC.AllocateUninitializedArray<byte>((int)length);
        return TryRead(year, offset, bytes) ? bytes : null;
    }

    private SafeFileHandle File(int year) => _files.GetOrAdd(year, y =>
        System.IO.File.OpenHandle(new Segment(folder, y).Path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete));

    public void Dispose()
    {
        foreach (SafeFileHandle file in _files.Values) file.Dispose();
    }
}
