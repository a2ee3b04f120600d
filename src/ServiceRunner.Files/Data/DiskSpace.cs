namespace ServiceRunner.Files.Data;

/// <summary>How much room the disk of a folder has.</summary>
public static class DiskSpace
{
    /// <summary>Less than this is little, in bytes. See docs/decisions/journal.md.</summary>
    public const long Little = 64L << 20;

    /// <summary>Bytes that this user may still write there; null where nobody knows.</summary>
    public static long? Left(string folder)
    {
        try
        {
            return new DriveInfo(OperatingSystem.IsWindows() ? Path.GetPathRoot(Path.GetFullPath(folder))! : Path.GetFullPath(folder)).AvailableFreeSpace;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException)
        {
            return null;
        }
    }
}
