using System.Net.Sockets;
using System.Runtime.InteropServices;

namespace ServiceRunner.Pedal;

/// <summary>Whose a folder, a socket's other end and this process are: .NET tells modes, but not owners.</summary>
internal static partial class SystemUser
{
    private const int FileType = 0xF000, FolderType = 0x4000, SocketType = 0xC000, Permissions = 0x1FF;

    /// <summary>This process's user; 0 on Windows, which has no such numbers.</summary>
    public static uint Me { get; } = OperatingSystem.IsWindows() ? 0 : EffectiveUser();

    /// <summary>True for a folder that only this user can enter. A link to one will do only where that is said.</summary>
    public static bool HasAlone(string folder, bool throughLink = false) => Has(folder, throughLink, mode => (mode & Permissions) == 0x1C0);

    /// <summary>True for a folder of this user in which nobody else can put or remove names.</summary>
    public static bool AloneWritesIn(string folder) => Has(folder, throughLink: true, mode => (mode & 0x12) == 0);

    private static bool Has(string folder, bool throughLink, Func<int, bool> allows)
    {
        if (OperatingSystem.IsWindows()) return Directory.Exists(folder);
        if (OperatingSystem.IsLinux())
            return Ask(folder, throughLink) is { } found && found.User == Me && (found.Mode & FileType) == FolderType && allows(found.Mode);
        // Elsewhere the owner is not asked: a folder with rights for its owner alone, which we may enter, is ours, unless we are root.
        DirectoryInfo info = new(folder);
        return Me != 0 && info.Exists && (throughLink || info.LinkTarget is null) && allows((int)info.UnixFileMode) && (Access(folder, 3) == 0);
    }

    /// <summary>True for what may be removed as the leftover of a dead run: a socket, or where that cannot be told an empty file.</summary>
    public static bool IsSocket(string path) => OperatingSystem.IsLinux()
        ? Ask(path, throughLink: false) is { } found && (found.Mode & FileType) == SocketType
        : new FileInfo(path) is { Exists: true, Length: 0 };

    /// <summary>The user at the other end; null where the system does not tell (Windows), -1 where it should and did not.</summary>
    public static long? AtOtherEnd(Socket socket)
    {
        if (OperatingSystem.IsWindows()) return null;
        (int level, int option, int at) = OperatingSystem.IsMacOS() ? (0, 1, 4) // LOCAL_PEERCRED: version, user, …
            : (1, RuntimeInformation.ProcessArchitecture is Architecture.Ppc64le ? 21 : 17, 4); // SO_PEERCRED: process, user, group
        Span<byte> answer = stackalloc byte[128];
        try
        {
            return socket.GetRawSocketOption(level, option, answer) < at + 4 ? -1 : MemoryMarshal.Read<uint>(answer[at..]);
        }
        catch (SocketException)
        {
            return -1;
        }
    }

    // statx lays its answer out alike on every processor, as stat does not.
    private static (uint User, int Mode)? Ask(string path, bool throughLink)
    {
        const int Here = -100, NoFollow = 0x100, TypeModeUser = 0xB;
        byte[] answer = new byte[256];
        if (StatX(Here, path, throughLink ? 0 : NoFollow, TypeModeUser, answer) != 0) return null;
        return (MemoryMarshal.Read<uint>(answer.AsSpan(20)), MemoryMarshal.Read<ushort>(answer.AsSpan(28)));
    }

    [LibraryImport("libc", EntryPoint = "geteuid")]
    private static partial uint EffectiveUser();

    [LibraryImport("libc", EntryPoint = "access", StringMarshalling = StringMarshalling.Utf8)]
    private static partial int Access(string path, int mode);

    [LibraryImport("libc", EntryPoint = "statx", StringMarshalling = StringMarshalling.Utf8)]
    private static partial int StatX(int folder, string path, int flags, uint wanted, byte[] answer);
}
