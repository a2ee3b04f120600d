using System.Runtime.InteropServices;

namespace ServiceRunner.Terminal;

/// <summary>The few questions to the terminal that neither .NET nor the library asks, put to the C library.</summary>
internal static partial class Tty
{
    private const short PollIn = 1, PollErr = 8, PollHup = 16, PollInvalid = 32;
    private const int TermiosRoom = 256; // more than any system's struct termios, which is only handed back as it came
    private const int Interrupted = 4, Again = 11, AgainElsewhere = 35;

    public enum Input { Nothing, Ready, Gone }

    /// <summary>Waits until there is something to read. Gone: the other end was closed, and nothing will come any more.</summary>
    public static Input Wait(int milliseconds)
    {
        PollFd fd = new() { Fd = 0, Events = PollIn };
        if (poll(ref fd, 1, milliseconds) <= 0) return Input.Nothing;
        if ((fd.Returned & (PollHup | PollErr | PollInvalid)) != 0) return Input.Gone;
        return (fd.Returned & PollIn) != 0 ? Input.Ready : Input.Nothing;
    }

    /// <summary>Reads what is there; 0 when the other end was closed.</summary>
    public static int Read(byte[] buffer)
    {
        nint count = read(0, buffer, (nuint)buffer.Length);
        while (count < 0 && Marshal.GetLastPInvokeError() == Interrupted) count = read(0, buffer, (nuint)buffer.Length);
        return count < 0 ? 0 : (int)count;
    }

    /// <summary>Writes all of it to standard output; false when nobody reads any more.</summary>
    public static bool Write(byte[] bytes)
    {
        while (bytes.Length > 0)
        {
            nint count = write(1, bytes, (nuint)bytes.Length);
            if (count > 0) bytes = bytes[(int)count..];
            else if (Marshal.GetLastPInvokeError() is Again or AgainElsewhere) Thread.Sleep(10);
            else if (Marshal.GetLastPInvokeError() != Interrupted) return false;
        }
        return true;
    }

    /// <summary>The line settings (echo, line by line, signals from keys) as they are now, or null without a terminal.</summary>
    public static byte[]? Settings()
    {
        byte[] settings = new byte[TermiosRoom];
        return tcgetattr(0, settings) == 0 ? settings : null;
    }

    /// <summary>Puts line settings back, at once, without waiting for a terminal that may have stopped reading.</summary>
    public static void Set(byte[]? settings)
    {
        if (settings is not null) _ = tcsetattr(0, 0, settings);
    }

    /// <summary>Writes to the terminal, but gives up rather than wait for it.</summary>
    public static void WriteWithoutWaiting(byte[] bytes)
    {
        int fd = open("/dev/tty", OpenForWriting | (OperatingSystem.IsLinux() ? 0x800 : 0x4)); // O_NONBLOCK
        if (fd < 0) return;
        _ = write(fd, bytes, (nuint)bytes.Length);
        _ = close(fd);
    }

    /// <summary>What a shell's Ctrl+Z does: stops all that runs in the foreground with us.</summary>
    public static void StopForeground() => _ = kill(0, OperatingSystem.IsLinux() ? 20 : 18); // SIGTSTP

    private const int OpenForWriting = 1;

    [StructLayout(LayoutKind.Sequential)]
    private struct PollFd
    {
        public int Fd;
        public short Events;
        public short Returned;
    }

    [LibraryImport("libc", SetLastError = true)] private static partial int poll(ref PollFd fds, nuint count, int milliseconds);

    [LibraryImport("libc", SetLastError = true)] private static partial nint read(int fd, byte[] buffer, nuint count);

    [LibraryImport("libc", SetLastError = true)] private static partial nint write(int fd, byte[] buffer, nuint count);

    [LibraryImport("libc", SetLastError = true)] private static partial int tcgetattr(int fd, byte[] termios);

    [LibraryImport("libc", SetLastError = true)] private static partial int tcsetattr(int fd, int when, byte[] termios);

    [LibraryImport("libc", SetLastError = true, StringMarshalling = StringMarshalling.Utf8)] private static partial int open(string path, int flags);

    [LibraryImport("libc", SetLastError = true)] private static partial int close(int fd);

    [LibraryImport("libc", SetLastError = true)] private static partial int kill(int process, int signal);
}
