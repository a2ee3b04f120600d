using Microsoft.Win32.SafeHandles;

namespace ServiceRunner.Files.Journal;

/// <summary>The lines of one segment as they lie there, unverified, in blocks that are never written again.</summary>
internal static class SegmentLines
{
    // Below the large object heap's limit: a rebuild reads thousands of blocks.
    private const int Block = 80_000;

    /// <param name="Bytes">With the newline; empty if too long to be a line.</param>
    /// <param name="Length">In the file.</param>
    public readonly record struct RawLine(long Offset, ReadOnlyMemory<byte> Bytes, long Length, bool Ended);

    public static IEnumerable<RawLine> Read(Segment segment, long from)
    {
        using SafeFileHandle file = File.OpenHandle(segment.Path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete, FileOptions.SequentialScan);
        byte[] block = new byte[Block];
        long start = from;
        int filled = 0, searched = 0;
        long skipped = 0;
        while (true)
        {
            int read = RandomAccess.Read(file, block.AsSpan(filled), start + filled);
            filled += read;
            int line = 0;
            while (block.AsSpan(searched, filled - searched).IndexOf((byte)'\n') is >= 0 and int newline)
            {
                int end = searched + newline + 1;
                yield return skipped > 0
                    ? new RawLine(start + line - skipped, default, end - line + skipped, true)
                    : new RawLine(start + line, block.AsMemory(line, end - line), end - line, true);
                skipped = 0;
                line = searched = end;
            }
            searched = filled;
            if (read == 0) break;
            if (filled < block.Length) continue;
            int rest = filled - line;
            if (rest > LineCodec.MaxLength)
            {
                skipped += rest;
                line = filled;
                rest = 0;
            }
            byte[] next = new byte[rest >= Block / 2 ? Math.Max(Block, rest * 2) : Block];
            block.AsSpan(line, rest).CopyTo(next);
            (block, start, filled, searched) = (next, start + line, rest, rest);
        }
        int last = LastStart(block, filled);
        if (filled > last || skipped > 0)
            yield return new RawLine(start + last - skipped, skipped > 0 ? default : block.AsMemory(last, filled - last), filled - last + skipped, false);
    }

    private static int LastStart(byte[] block, int filled) => block.AsSpan(0, filled).LastIndexOf((byte)'\n') + 1;
}
