using ServiceRunner.Files.Journal;

namespace ServiceRunner.Files.Data;

/// <summary>Verifies a journal's segments as they come out of a backup, one behind the other, without unpacking them.</summary>
internal sealed class BackupJournal
{
    private readonly Chains _chains = new(default, null, []);
    private readonly LineReader _reader = new();
    private byte[] _buffer = new byte[80_000];
    private long _more;

    public long Lines { get; private set; }
    public int Subjects => _chains.Subjects!.Count;

    /// <summary>True once every append is whole.</summary>
    public bool IsEnded => _more == 0;

    /// <summary>Reads one segment to its end; true if every line is whole and follows in both chains.</summary>
    public bool Follow(Stream segment)
    {
        int filled = 0;
        while (true)
        {
            int read = segment.Read(_buffer, filled, _buffer.Length - filled);
            if (read == 0) return filled == 0;
            int searched = filled, start = 0;
            filled += read;
            while (_buffer.AsSpan(searched, filled - searched).IndexOf((byte)'\n') is >= 0 and int newline)
            {
                int end = searched + newline + 1;
                if (!Follow(_buffer.AsMemory(start, end - start))) return false;
                start = searched = end;
            }
            filled -= start;
            if (filled > LineCodec.MaxLength) return false;
            byte[] next = filled > _buffer.Length / 2 ? new byte[_buffer.Length * 2] : _buffer;
            Buffer.BlockCopy(_buffer, start, next, 0, filled);
            _buffer = next;
        }
    }

    private bool Follow(ReadOnlyMemory<byte> bytes)
    {
        if (_reader.Read(bytes, out _) is not { } line || _chains.Follow(line) is not null) return false;
        if (_more > 0 && line.More != _more - 1) return false;
        _more = line.More;
        Lines++;
        return true;
    }
}
