using Microsoft.Win32.SafeHandles;
using ServiceRunner.Files.Data;
using ServiceRunner.Files.Machine;

namespace ServiceRunner.Files.Journal;

/// <summary>Appends to the newest segment: one write, one sync, then it is so.</summary>
internal sealed class JournalWriter : IDisposable
{
    private readonly string _folder;
    private SafeFileHandle? _file;
    private Segment _segment;
    private long _length;
    private int _poison;

    public JournalWriter(string folder)
    {
        _folder = folder;
        IReadOnlyList<Segment> segments = Segment.In(folder);
        if (segments.Count == 0) return;
        _segment = segments[^1];
        _file = DurableFile.OpenOwn(_segment.Path);
        _length = RandomAccess.GetLength(_file);
    }

    /// <summary>Where the bytes were put; or the fault, and then they are not there.</summary>
    /// <param name="year">A year that has gone by gives no older file: the order of lines is that of their numbers.</param>
    public (LinePlace Place, DataFault? Fault) Append(ReadOnlySpan<byte> bytes, int year)
    {
        if (_poison != 0) return (default, new Poisoned(_poison));
        bool isNew = false;
        try
        {
            if (_file is null || year > _segment.Year)
            {
                Begin(year);
                isNew = true;
            }
            RandomAccess.Write(_file!, bytes, _length);
        }
        catch (Exception e) when (DurableFile.IsDisk(e))
        {
            TakeBack();
            return (default, DurableFile.FaultOf(e, _segment.Path));
        }
        int error = Kernel.Sync(_file!);
        if (error == 0 && isNew) error = Kernel.SyncFolder(_folder);
        if (error != 0)
        {
            // After a failed sync the kernel may call the lost pages clean, and a second sync would lie.
            _poison = error;
            return (default, new SyncFailed(_segment.Name, error));
        }
        LinePlace place = new(_segment.Year, _length, bytes.Length);
        _length += bytes.Length;
        return (place, null);
    }

    private void Begin(int year)
    {
        Segment next = new(_folder, year);
        SafeFileHandle file = DurableFile.OpenOwn(next.Path);
        _file?.Dispose();
        (_file, _segment, _length) = (file, next, RandomAccess.GetLength(file));
    }

    private void TakeBack()
    {
        if (_file is null) return;
        try
        {
            RandomAccess.SetLength(_file, _length);
        }
        catch (Exception e) when (DurableFile.IsDisk(e))
        {
            // Half a line stays at the end: what came behind it would be damage.
            _poison = Math.Max(1, e.HResult);
        }
    }

    public void Dispose() => _file?.Dispose();
}
