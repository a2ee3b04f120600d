using System.Buffers.Binary;
using System.Numerics;
using Microsoft.Win32.SafeHandles;
using ServiceRunner.Files.Data;
using ServiceRunner.Files.Machine;

namespace ServiceRunner.Files.Index;

/// <summary>
/// A file under LiteDB that puts a check behind each of its pages, since LiteDB has none and serves flipped bits as data
/// or as nothing found. A page that cannot be written (the disk is full) stays in memory: an error in the middle of a
/// LiteDB transaction would later end the process from its finalizer.
/// </summary>
internal sealed class PageFile : Stream
{
    private const int Page = 8192, Check = 8, Stored = Page + Check;

    private readonly SafeFileHandle _file;
    private readonly Dictionary<long, byte[]> _unwritten = [];
    private readonly byte[] _buffer = new byte[Stored];
    private readonly Lock _gate = new();
    private readonly Func<bool> _mayWrite;
    private long _length;
    private bool _ended;

    /// <param name="mayWrite">Asked before each write: the mark that the file is in use must be on the disk before the first.</param>
    public PageFile(string path, Func<bool>? mayWrite = null)
    {
        _mayWrite = mayWrite ?? (() => true);
        _file = DurableFile.OpenOwn(path);
        _length = RandomAccess.GetLength(_file) / Stored * Page;
    }

    /// <summary>All that was written is in the file.</summary>
    public bool IsWhole => _unwritten.Count == 0;

    public override bool CanRead => true;
    public override bool CanSeek => true;
    public override bool CanWrite => true;
    public override long Length => _length;
    public override long Position { get; set; }

    /// <summary>Lets go of the file. LiteDB may still hold the stream after a failure, and is not disturbed.</summary>
    public void End()
    {
        lock (_gate)
        {
            _ended = true;
            _file.Dispose();
        }
    }

    public bool Sync() => IsWhole && Kernel.Sync(_file) == 0;

    public override int Read(byte[] buffer, int offset, int count) => Read(buffer.AsSpan(offset, count));

    public override int Read(Span<byte> buffer)
    {
        lock (_gate)
        {
            int done = 0;
            while (done < buffer.Length && Position < _length)
            {
                (long page, int from) = (Position / Page, (int)(Position % Page));
                ReadOnlySpan<byte> bytes = Load(page)[from..];
                int part = (int)Math.Min(Math.Min(bytes.Length, buffer.Length - done), _length - Position);
                bytes[..part].CopyTo(buffer[done..]);
                done += part;
                Position += part;
            }
            return done;
        }
    }

    public override void Write(byte[] buffer, int offset, int count) => Write(buffer.AsSpan(offset, count));

    public override void Write(ReadOnlySpan<byte> buffer)
    {
        lock (_gate)
        {
            while (buffer.Length > 0)
            {
                (long page, int from) = (Position / Page, (int)(Position % Page));
                int part = Math.Min(Page - from, buffer.Length);
                if (part < Page && page * Page < _length) Load(page);
                else if (part < Page) _buffer.AsSpan().Clear();
                buffer[..part].CopyTo(_buffer.AsSpan(from));
                Store(page);
                Position += part;
                _length = Math.Max(_length, (page + 1) * Page);
                buffer = buffer[part..];
            }
        }
    }

    public override void SetLength(long value)
    {
        lock (_gate)
        {
            long pages = (value + Page - 1) / Page;
            _length = pages * Page;
            foreach (long page in _unwritten.Keys.Where(p => p >= pages).ToList()) _unwritten.Remove(page);
            if (!_ended) Try(() => RandomAccess.SetLength(_file, pages * Stored));
        }
    }

    public override long Seek(long offset, SeekOrigin origin) => Position = origin switch
    {
        SeekOrigin.Begin => offset,
        SeekOrigin.Current => Position + offset,
        _ => _length + offset,
    };

    public override void Flush() { }

    /// <summary>One page, verified; the span is good until the next call.</summary>
    private ReadOnlySpan<byte> Load(long page)
    {
        if (_unwritten.TryGetValue(page, out byte[]? kept)) kept.CopyTo(_buffer, 0);
        else
        {
            _buffer.AsSpan().Clear();
            if (!_ended) RandomAccess.Read(_file, _buffer, page * Stored);
            ulong check = BinaryPrimitives.ReadUInt64LittleEndian(_buffer.AsSpan(Page));
            // A page that was never written is all zeros, and has no check.
            if (check == 0 ? _buffer.AsSpan().ContainsAnyExcept((byte)0) : check != CheckOf(page)) throw new IndexUnusableException("a page does not match its check");
        }
        return _buffer.AsSpan(0, Page);
    }

    private void Store(long page)
    {
        if (_ended) return;
        BinaryPrimitives.WriteUInt64LittleEndian(_buffer.AsSpan(Page), CheckOf(page));
        if (Try(() => RandomAccess.Write(_file, _buffer, page * Stored))) _unwritten.Remove(page);
        else _unwritten[page] = [.. _buffer];
    }

    private bool Try(Action write)
    {
        try
        {
            if (!_mayWrite()) return false;
            write();
            return true;
        }
        catch (Exception e) when (DurableFile.IsDisk(e))
        {
            return false;
        }
    }

    /// <summary>CRC-32C over the page's number and bytes, and a bit that says that there is one.</summary>
    private ulong CheckOf(long page)
    {
        uint crc = BitOperations.Crc32C(uint.MaxValue, (ulong)page);
        for (int i = 0; i < Page; i += sizeof(ulong)) crc = BitOperations.Crc32C(crc, BinaryPrimitives.ReadUInt64LittleEndian(_buffer.AsSpan(i)));
        return 1UL << 32 | crc;
    }
}
