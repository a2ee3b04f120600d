using ServiceRunner.Files.Data;

namespace ServiceRunner.Session;

/// <summary>Notices that the disk runs out of room while there still is some: once for each falling below what is little.</summary>
public sealed class DiskWatch(Func<long?> left)
{
    /// <summary>How often it looks.</summary>
    public static readonly TimeSpan Every = TimeSpan.FromSeconds(10);

    // So much above the bound it is armed again: what swings around the bound is one falling.
    private const long Enough = DiskSpace.Little + DiskSpace.Little / 4;

    private TimeSpan? _looked;
    private bool _told;

    /// <summary>The bytes that are left, if that is to be told now; else null.</summary>
    public long? Look(TimeSpan now)
    {
        if (_looked is { } looked && now - looked < Every) return null;
        _looked = now;
        if (left() is not { } bytes) return null;
        if (bytes >= Enough) _told = false;
        if (bytes >= DiskSpace.Little || _told) return null;
        _told = true;
        return bytes;
    }
}
