using System.Runtime.InteropServices;
using Microsoft.Win32.SafeHandles;

namespace ServiceRunner.Files.Machine;

/// <summary>What .NET does not tell truthfully, asked of the operating system itself.</summary>
internal static partial class Kernel
{
    private const int Interrupted = 4;
    private const int FullSync = 51;
    private const int ClockSinceBoot = 7;

    /// <summary>
    /// Brings a file's bytes to the disk; 0, or the error's number. .NET's own flush swallows EIO on Unix, and then an
    /// action would be acknowledged that is on no disk.
    /// </summary>
    public static int Sync(SafeFileHandle file)
    {
        if (OperatingSystem.IsWindows())
        {
            try
            {
                RandomAccess.FlushToDisk(file);
                return 0;
            }
            catch (IOException e)
            {
                return e.HResult & 0xFFFF;
            }
        }
        if (OperatingSystem.IsMacOS() && FileControl(file, FullSync) == 0) return 0;
        return Repeat(() => OperatingSystem.IsMacOS() ? SyncAll(file) : SyncData(file));
    }

    /// <summary>Brings a folder's list of names to the disk: without it a new file may be gone after a power cut.</summary>
    public static int SyncFolder(string path)
    {
        if (OperatingSystem.IsWindows()) return 0;
        int folder = Open(path, 0);
        if (folder < 0) return Marshal.GetLastPInvokeError();
        int error = Repeat(() => SyncAll(folder));
        _ = Close(folder);
        return error;
    }

    /// <summary>Time since the machine's boot, sleep included; null where there is no such clock.</summary>
    public static TimeSpan? SinceBoot()
    {
        if (OperatingSystem.IsLinux())
            return GetTime(ClockSinceBoot, out Instant t) == 0 ? TimeSpan.FromTicks(t.Seconds * TimeSpan.TicksPerSecond + t.Nanoseconds / 100) : null;
        if (OperatingSystem.IsMacOS())
            return GetTimebase(out Timebase b) == 0 ? TimeSpan.FromTicks((long)((UInt128)ContinuousTime() * b.Numerator / b.Denominator / 100)) : null;
        return OperatingSystem.IsWindows() ? TimeSpan.FromMilliseconds((long)TickCount()) : null;
    }

    /// <summary>Which boot of the machine this is; empty where it does not tell.</summary>
    public static string Boot()
    {
        if (OperatingSystem.IsLinux()) return LinuxBoot();
        if (!OperatingSystem.IsMacOS()) return "";
        byte[] text = new byte[64];
        nint length = text.Length;
        return SystemValue("kern.bootsessionuuid", text, ref length, 0, 0) == 0 ? System.Text.Encoding.ASCII.GetString(text, 0, (int)length).TrimEnd('\0') : "";
    }

    private static string LinuxBoot()
    {
        try
        {
            return File.ReadAllText("/proc/sys/kernel/random/boot_id").Trim();
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return "";
        }
    }

    private static int Repeat(Func<int> call)
    {
        while (true)
        {
            if (call() == 0) return 0;
            int error = Marshal.GetLastPInvokeError();
            if (error != Interrupted) return error;
        }
    }

    [StructLayout(LayoutKind.Sequential)]
    private struct Instant
    {
        public nint Seconds;
        public nint Nanoseconds;
    }

    [StructLayout(LayoutKind.Sequential)]
    private struct Timebase
    {
        public uint Numerator;
        public uint Denominator;
    }

    [LibraryImport("libc", EntryPoint = "fdatasync", SetLastError = true)]
    private static partial int SyncData(SafeFileHandle file);

    [LibraryImport("libc", EntryPoint = "fsync", SetLastError = true)]
    private static partial int SyncAll(SafeFileHandle file);

    [LibraryImport("libc", EntryPoint = "fsync", SetLastError = true)]
    private static partial int SyncAll(int file);

    [LibraryImport("libc", EntryPoint = "fcntl", SetLastError = true)]
    private static partial int FileControl(SafeFileHandle file, int command);

    [LibraryImport("libc", EntryPoint = "open", SetLastError = true, StringMarshalling = StringMarshalling.Utf8)]
    private static partial int Open(string path, int flags);

    [LibraryImport("libc", EntryPoint = "close")]
    private static partial int Close(int file);

    [LibraryImport("libc", EntryPoint = "clock_gettime", SetLastError = true)]
    private static partial int GetTime(int clock, out Instant time);

    [LibraryImport("libc", EntryPoint = "mach_continuous_time")]
    private static partial ulong ContinuousTime();

    [LibraryImport("libc", EntryPoint = "mach_timebase_info")]
    private static partial int GetTimebase(out Timebase timebase);

    [LibraryImport("libc", EntryPoint = "sysctlbyname", StringMarshalling = StringMarshalling.Utf8)]
    private static partial int SystemValue(string name, byte[] value, ref nint length, nint newValue, nint newLength);

    /// <summary>Runs on through sleep, unlike .NET's own tick count, which may follow the unbiased clock.</summary>
    [LibraryImport("kernel32", EntryPoint = "GetTickCount64")]
    private static partial ulong TickCount();
}
