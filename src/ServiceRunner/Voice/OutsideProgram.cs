namespace ServiceRunner.Voice;

/// <summary>A program that the machine has or that the workshop file names, and how it has behaved in this run.</summary>
internal sealed class OutsideProgram(string path, IReadOnlyList<string> arguments)
{
    // Twice not ended in time: a third wait would only make alarms late.
    private const int MostHangs = 2;

    private int _hangs;

    /// <summary>Where it is.</summary>
    public string Path => path;

    /// <summary>What the workshop or this program puts before what is given.</summary>
    public IReadOnlyList<string> Arguments => arguments;

    /// <summary>What it is called, without folder and ending.</summary>
    public string Name => System.IO.Path.GetFileNameWithoutExtension(path);

    /// <summary>True once it was given up for this run.</summary>
    public bool GivenUp => _hangs >= MostHangs;

    /// <summary>Notes how a run ended.</summary>
    public void Ended(ChildEnd end)
    {
        if (end == ChildEnd.Hung) _hangs++;
        else if (end == ChildEnd.Done) _hangs = 0;
    }

    /// <summary>The file of a program on a search path, or null. The current folder is not searched: a file that lies there by chance is not meant.</summary>
    public static string? Find(string name, string searchPath)
    {
        if (name.Contains(System.IO.Path.DirectorySeparatorChar) || System.IO.Path.IsPathFullyQualified(name)) return CanRun(name) ? System.IO.Path.GetFullPath(name) : null;
        string[] endings = OperatingSystem.IsWindows() ? [".exe", ""] : [""];
        foreach (string folder in searchPath.Split(System.IO.Path.PathSeparator).Where(System.IO.Path.IsPathFullyQualified))
        {
            foreach (string ending in endings)
            {
                string path = System.IO.Path.Combine(folder, name + ending);
                if (CanRun(path)) return path;
            }
        }
        return null;
    }

    private static bool CanRun(string path)
    {
        try
        {
            if (!File.Exists(path)) return false;
            return OperatingSystem.IsWindows() || (File.GetUnixFileMode(path) & (UnixFileMode.UserExecute | UnixFileMode.GroupExecute | UnixFileMode.OtherExecute)) != 0;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException)
        {
            return false;
        }
    }

    /// <summary>The programs to try, in their order: the one named, or all of the known ones that the machine has.</summary>
    public static IReadOnlyList<OutsideProgram> Choose(IReadOnlyList<string> named, IEnumerable<IReadOnlyList<string>> known, string searchPath) =>
        [.. (named.Count > 0 ? [named] : known).Select(command => (Path: Find(command[0], searchPath), command)).Where(c => c.Path is not null)
            .Select(c => new OutsideProgram(c.Path!, [.. c.command.Skip(1)]))];
}
