using System.Diagnostics;

namespace ServiceRunner.Files.Tests.Journal;

/// <summary>A test that mounts a small disk, which only root may: skipped by name where that is not so.</summary>
[AttributeUsage(AttributeTargets.Method)]
public sealed class FactMountingAttribute : FactAttribute
{
    private const int MayMount = 21;

    public FactMountingAttribute()
    {
        if (!Allowed()) Skip = "needs root on Linux, to mount a small disk";
    }

    private static bool Allowed()
    {
        if (!OperatingSystem.IsLinux()) return false;
        string? effective = File.ReadLines("/proc/self/status").FirstOrDefault(l => l.StartsWith("CapEff:", StringComparison.Ordinal));
        return effective is not null && (Convert.ToUInt64(effective[7..].Trim(), 16) >> MayMount & 1) == 1;
    }
}

/// <summary>A file system in memory of a given size.</summary>
public sealed class SmallDisk : IDisposable
{
    public SmallDisk(string size)
    {
        Path = Directory.CreateTempSubdirectory("small-disk-").FullName;
        Run("mount", "-t", "tmpfs", "-o", "size=" + size, "tmpfs", Path);
    }

    public string Path { get; }

    public void Resize(string size) => Run("mount", "-o", "remount,size=" + size, Path);

    public void MakeReadOnly() => Run("mount", "-o", "remount,ro", Path);

    public void MakeWritable() => Run("mount", "-o", "remount,rw", Path);

    public void Fill()
    {
        using FileStream file = new(System.IO.Path.Combine(Path, "filler"), FileMode.CreateNew, FileAccess.Write, FileShare.None, bufferSize: 0);
        byte[] page = new byte[4096];
        while (true)
        {
            try
            {
                file.Write(page);
            }
            catch (IOException)
            {
                return;
            }
        }
    }

    private static void Run(params string[] command)
    {
        using Process process = Process.Start(command[0], command[1..]);
        process.WaitForExit();
        Assert.Equal(0, process.ExitCode);
    }

    public void Dispose()
    {
        Run("umount", "-l", Path);
        Directory.Delete(Path);
    }
}
