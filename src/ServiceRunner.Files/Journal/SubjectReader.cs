using System.Collections.Concurrent;
using Microsoft.Win32.SafeHandles;
using ServiceRunner.Files.Data;
using ServiceRunner.Files.Index;

namespace ServiceRunner.Files.Journal;

/// <summary>Reads a subject's lines where the index says they lie, and believes none of it unverified.</summary>
internal sealed class SubjectReader(string folder) : IDisposable
{
    // Between two lines of one job lie at most a few of others; far apart they are read one by one.
    private const int Together = 64 * 1024;

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

    /// <summary>Single lines of one subject, each verified; null where a line is not what the index says. Lines that lie together are read together.</summary>
    public LogLine?[] ReadLines(string subject, IReadOnlyList<(long N, LinePlace Place)> wanted, LineReader reader)
    {
        LogLine?[] lines = new LogLine?[wanted.Count];
        int i = 0;
        while (i < wanted.Count)
        {
            LinePlace first = wanted[i].Place;
            int last = i;
            while (last + 1 < wanted.Count && wanted[last + 1].Place is var next && next.Year == first.Year && next.Offset >= wanted[last].Place.Offset && next.End - first.Offset <= Together) last++;
            byte[]? bytes = first.Length > 0 ? Bytes(first.Year, first.Offset, wanted[last].Place.End - first.Offset) : null;
            for (; i <= last; i++)
            {
                LinePlace place = wanted[i].Place;
                if (bytes is null || place.Length <= 0) continue;
                // A line that served several points is read once.
                if (i > 0 && wanted[i - 1] == wanted[i]) lines[i] = lines[i - 1];
                else if (reader.Read(bytes.AsMemory((int)(place.Offset - first.Offset), place.Length), out _) is { } line && line.Subject == subject && line.SubjectSequence == wanted[i].N) lines[i] = line;
            }
        }
        return lines;
    }

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

    private byte[]? Bytes(int year, long offset, long length)
    {
        try
        {
            SafeFileHandle file = _files.GetOrAdd(year, y =>
                File.OpenHandle(new Segment(folder, y).Path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete));
            if (offset < 0 || length <= 0 || length > Array.MaxLength || offset + length > RandomAccess.GetLength(file)) return null;
            byte[] bytes = GC.AllocateUninitializedArray<byte>((int)length);
            int filled = 0;
            while (filled < bytes.Length)
            {
                int read = RandomAccess.Read(file, bytes.AsSpan(filled), offset + filled);
                if (read == 0) return null;
                filled += read;
            }
            return bytes;
        }
        catch (Exception e) when (DurableFile.IsDisk(e))
        {
            return null;
        }
    }

    public void Dispose()
    {
        foreach (SafeFileHandle file in _files.Values) file.Dispose();
    }
}
