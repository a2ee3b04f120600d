using Microsoft.Win32.SafeHandles;
using ServiceRunner.Files.Machine;

namespace ServiceRunner.Files.Data;

/// <summary>Files that are wholly on the disk, or not there.</summary>
internal static class DurableFile
{
    private const UnixFileMode OwnerOnly = UnixFileMode.UserRead | UnixFileMode.UserWrite;
    internal const UnixFileMode OwnerFolder = OwnerOnly | UnixFileMode.UserExecute;
    private const int NoSpace = 28, NoQuota = 122, NoQuotaMac = 69, ReadOnlySystem = 30;
    private const int WindowsDiskFull = 112, WindowsHandleDiskFull = 39;

    /// <summary>Opens a file to read and write, made for its owner only if it is new.</summary>
    public static SafeFileHandle OpenOwn(string path)
    {
        // .NET sets a mode only through a stream; a file made 0600 here is then opened like any other.
        if (!OperatingSystem.IsWindows() && !File.Exists(path)) new FileStream(path, Options(FileMode.CreateNew, FileShare.ReadWrite | FileShare.Delete)).Dispose();
        return File.OpenHandle(path, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.ReadWrite | FileShare.Delete);
    }

    /// <summary>Writes a file aside, syncs it, puts it in its place and syncs the folder; null when that is done.</summary>
    public static DataFault? Write(string path, ReadOnlySpan<byte> bytes)
    {
        string aside = path + ".part";
        try
        {
            File.Delete(aside);
            using (SafeFileHandle file = OpenOwn(aside))
            {
                RandomAccess.Write(file, bytes, 0);
                if (Kernel.Sync(file) is var error and not 0) return new SyncFailed(Path.GetFileName(path), error);
            }
            File.Move(aside, path, overwrite: true);
            return SyncFolderOf(path);
        }
        catch (Exception e) when (IsDisk(e))
        {
            return FaultOf(e, path);
        }
    }

    public static DataFault? SyncFolderOf(string path) =>
        Kernel.SyncFolder(Path.GetDirectoryName(Path.GetFullPath(path))!) is var error and not 0 ? new SyncFailed(Path.GetFileName(path), error) : null;

    public static void CreateFolder(string path)
    {
        if (OperatingSystem.IsWindows()) Directory.CreateDirectory(path);
        else Directory.CreateDirectory(path, OwnerFolder);
    }

    /// <summary>Whether an exception is the disk's doing. .NET gives EFBIG as an argument out of range.</summary>
    public static bool IsDisk(Exception e) => e is IOException or UnauthorizedAccessException or ArgumentOutOfRangeException { ParamName: "value" };

    public static DataFault FaultOf(Exception e, string path)
    {
        string file = Path.GetFileName(path);
        int error = OperatingSystem.IsWindows() ? e.HResult & 0xFFFF : e.HResult;
        return e switch
        {
            UnauthorizedAccessException => new ReadOnlyFolder(Path.GetDirectoryName(path)!),
            ArgumentOutOfRangeException => new WriteFailed(file, 27),
            DirectoryNotFoundException => new FolderMissing(Path.GetDirectoryName(path)!),
            _ when !OperatingSystem.IsWindows() && error == ReadOnlySystem => new ReadOnlyFolder(Path.GetDirectoryName(path)!),
            _ when IsFull(error) => new DiskFull(file),
            _ => new WriteFailed(file, error),
        };
    }

    private static bool IsFull(int error)
    {
        if (OperatingSystem.IsWindows()) return error is WindowsDiskFull or WindowsHandleDiskFull;
        return error is NoSpace or NoQuota || (OperatingSystem.IsMacOS() && error == NoQuotaMac);
    }

    /// <summary>To open a file for its owner only.</summary>
    public static FileStreamOptions Options(FileMode mode, FileShare share)
    {
        FileStreamOptions options = new() { Mode = mode, Access = FileAccess.ReadWrite, Share = share, BufferSize = 0 };
        if (!OperatingSystem.IsWindows() && mode != FileMode.Open) options.UnixCreateMode = OwnerOnly;
        return options;
    }
}
