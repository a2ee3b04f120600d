using System.Text;
using ServiceRunner.Files.Data;

namespace ServiceRunner.Pedal;

/// <summary>One file name for a bench's socket, and why it cannot be used; empty if it can.</summary>
internal readonly record struct PedalPlace(string Path, string WhyNot = "");

/// <summary>
/// Where a bench's socket may lie, the best place first. The bench takes the first that will do; whoever calls it looks
/// at all of them, since a switch's program may run without the variables of the session in which the bench was opened.
/// </summary>
/// <param name="DataFolder">The data folder.</param>
/// <param name="Bench">The bench's id.</param>
/// <param name="Runtime">What XDG_RUNTIME_DIR says.</param>
/// <param name="Temporary">The folders for temporary files.</param>
internal sealed record PedalPlaces(string DataFolder, string Bench, string? Runtime, IReadOnlyList<string> Temporary)
{
    /// <summary>A socket's path has 108 bytes on Linux and Windows and 104 on macOS, the end's zero included.</summary>
    public const int LongestPath = 103;

    private const int LongestBench = 40;

    /// <summary>The places of this machine and this session.</summary>
    public static PedalPlaces Of(DataFolder folder) => new(folder.Path, folder.Bench, Environment.GetEnvironmentVariable("XDG_RUNTIME_DIR"),
        OperatingSystem.IsWindows() ? [] : [.. new[] { Path.GetTempPath(), "/tmp/" }.Distinct()]);

    /// <summary>False for an id that is no plain name: somebody edited the marker file, and it could lead out of the folder.</summary>
    public bool HasPlainBench => Bench.Length is > 0 and <= LongestBench && Bench.All(c => char.IsAsciiLetterOrDigit(c) || c == '-');

    /// <summary>The places for the bench itself; folders of its own are made.</summary>
    public IEnumerable<PedalPlace> ToListen() => Places(make: true);

    /// <summary>The places where a bench may be listening; nothing is made.</summary>
    public IEnumerable<string> ToCall() => Places(make: false).Where(p => p.WhyNot.Length == 0).Select(p => p.Path);

    private IEnumerable<PedalPlace> Places(bool make)
    {
        if (OperatingSystem.IsWindows())
        {
            // A folder of the user's profile is closed to other users by what it inherits.
            string local = Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData, Environment.SpecialFolderOption.DoNotVerify);
            yield return Own(Path.Combine(local, "servicerunner-run"), make);
            yield break;
        }
        if (RuntimeFolder(make) is { } runtime) yield return Own(Path.Combine(runtime, "servicerunner"), make);
        yield return InDataFolder();
        foreach (string temporary in Temporary) yield return Own(Path.Combine(temporary, $"servicerunner-{SystemUser.Me}"), make);
    }

    private string? RuntimeFolder(bool make)
    {
        if (!string.IsNullOrEmpty(Runtime)) return Path.IsPathRooted(Runtime) && SystemUser.HasAlone(Runtime, throughLink: true) ? Runtime : null;
        // A caller outside the session (a timer, a device rule) has no such variable, but knows where it would point to.
        string usual = $"/run/user/{SystemUser.Me}";
        return !make && SystemUser.HasAlone(usual) ? usual : null;
    }

    private PedalPlace InDataFolder() => SystemUser.AloneWritesIn(DataFolder)
        ? Measured(Path.Combine(DataFolder, "pedal.sock"))
        : new("", $"others can write in {DataFolder}, or it is another user's");

    private PedalPlace Own(string folder, bool make)
    {
        PedalPlace place = Measured(Path.Combine(folder, $"{Bench}.sock"));
        if (place.WhyNot.Length > 0) return place;
        try
        {
            if (make && !OperatingSystem.IsWindows()) Directory.CreateDirectory(folder, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
            else if (make) Directory.CreateDirectory(folder);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return new("", $"{folder} cannot be made: {e.Message}");
        }
        return SystemUser.HasAlone(folder) ? place : new("", $"{folder} is not a folder that you alone can open");
    }

    private static PedalPlace Measured(string path) => Encoding.UTF8.GetByteCount(path) <= LongestPath
        ? new(path)
        : new("", $"{path} is longer than the {LongestPath} bytes that a socket's name may have");
}
