using System.Runtime.InteropServices;
using Microsoft.Win32.SafeHandles;

namespace ServiceRunner.Benchmarks;

/// <summary>A folder to measure in, what it lies on, and the bare call to the kernel that a durable append cannot do without.</summary>
internal sealed partial class Disk : IDisposable
{
    private static readonly string[] NoDisks = ["tmpfs", "ramfs", "devtmpfs"];

    /// <summary>Makes the folder under the system's folder for temporary files (TMPDIR).</summary>
    public Disk() => Folder = Directory.CreateTempSubdirectory("servicerunner-bench-").FullName;

    public string Folder { get; }

    public string In(string name) => Path.Combine(Folder, name);

    /// <summary>Says what the folder lies on: a sync to memory costs nothing, and proves nothing.</summary>
    public void Say()
    {
        string kind = Kind(Folder);
        Pairs.Line("measured on", NoDisks.Contains(kind) ? $"{kind}: NOT A DISK, so syncs cost nothing here; set TMPDIR to a folder on one" : kind);
    }

    /// <summary>A folder in memory to build long logs in, where a sync costs nothing; the folder on the disk if there is none.</summary>
    public static string Memory => Directory.Exists("/dev/shm") ? "/dev/shm" : Path.GetTempPath();

    private static string Kind(string folder)
    {
        if (!File.Exists("/proc/mounts")) return "unknown";
        return File.ReadLines("/proc/mounts").Select(l => l.Split(' '))
            .Where(m => folder == m[1] || folder.StartsWith(m[1].TrimEnd('/') + "/", StringComparison.Ordinal))
            .MaxBy(m => m[1].Length)?[2] ?? "unknown";
    }

    /// <summary>fdatasync itself.</summary>
    public static void Sync(SafeFileHandle file)
    {
        if (SyncData(file) != 0) throw new IOException($"fdatasync: error {Marshal.GetLastPInvokeError()}");
    }

    /// <summary>Copies a data folder.</summary>
    public static void Copy(string from, string to)
    {
        Directory.CreateDirectory(to);
        foreach (string file in Directory.EnumerateFiles(from)) File.Copy(file, Path.Combine(to, Path.GetFileName(file)));
        foreach (string folder in Directory.EnumerateDirectories(from)) Copy(folder, Path.Combine(to, Path.GetFileName(folder)));
    }

    public void Dispose() => Directory.Delete(Folder, recursive: true);

    [LibraryImport("libc", EntryPoint = "fdatasync", SetLastError = true)]
    private static partial int SyncData(SafeFileHandle file);
}
