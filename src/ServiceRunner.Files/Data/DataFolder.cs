using System.Text;
using ServiceRunner.Files.Machine;

namespace ServiceRunner.Files.Data;

/// <summary>
/// The folder that holds a bench's data. A marker file names the format's version and the bench; a folder without it
/// is not touched. All in it is for its owner only.
/// </summary>
public sealed class DataFolder
{
    public const string Marker = "servicerunner-data";
    public const int Version = 1;

    private DataFolder(string path, string bench) => (Path, Bench) = (path, bench);

    public string Path { get; }

    /// <summary>The bench's random id, made with the folder.</summary>
    public string Bench { get; }

    public string Kept => In("kept");
    public string Owners => In("owners");
    public string Printed => In("printed");
    internal string Lock => In("lock");
    internal string Holder => In("lock-holder");
    internal string IndexFile => In("index.db");
    internal string IndexLog => In("index-log.db");
    internal string IndexInUse => In("index-in-use");

    internal string In(string name) => System.IO.Path.Combine(Path, name);

    /// <summary>Makes a missing or empty folder into a data folder; one that is there already is opened.</summary>
    public static FolderOutcome Create(string path) => Create(path, Identity.New());

    internal static FolderOutcome Create(string path, string bench)
    {
        path = System.IO.Path.GetFullPath(path);
        try
        {
            if (File.Exists(System.IO.Path.Combine(path, Marker))) return Open(path);
            if (Directory.Exists(path) && Directory.EnumerateFileSystemEntries(path).Any(e => System.IO.Path.GetFileName(e) != Marker + ".part"))
                return new FolderRefused(new NotADataFolder(path));
            DurableFile.CreateFolder(path);
            if (!OperatingSystem.IsWindows()) File.SetUnixFileMode(path, DurableFile.OwnerFolder);
            DataFault? fault = DurableFile.Write(System.IO.Path.Combine(path, Marker), Encoding.ASCII.GetBytes($"{Version}\nbench {bench}\n"));
            fault ??= DurableFile.SyncFolderOf(path);
            return fault is null ? Open(path) : new FolderRefused(fault);
        }
        catch (Exception e) when (DurableFile.IsDisk(e))
        {
            return new FolderRefused(DurableFile.FaultOf(e, System.IO.Path.Combine(path, Marker)));
        }
    }

    /// <summary>Opens a data folder that is there. Nothing is written.</summary>
    public static FolderOutcome Open(string path)
    {
        path = System.IO.Path.GetFullPath(path);
        string marker = System.IO.Path.Combine(path, Marker);
        try
        {
            if (!Directory.Exists(path)) return new FolderRefused(new FolderMissing(path));
            if (!File.Exists(marker)) return new FolderRefused(new NotADataFolder(path));
            (string bench, DataFault? fault) = ReadMarker(File.ReadAllLines(marker));
            return fault is null ? new FolderReady(new DataFolder(path, bench)) : new FolderRefused(fault);
        }
        catch (Exception e) when (DurableFile.IsDisk(e))
        {
            return new FolderRefused(DurableFile.FaultOf(e, marker));
        }
    }

    /// <summary>The bench that a marker names; a later format is refused, whatever else stands there.</summary>
    internal static (string Bench, DataFault? Fault) ReadMarker(string[] lines)
    {
        if (lines.Length == 0 || !int.TryParse(lines[0], out int version)) return ("", new Damaged(Marker, 0, Damage.NotALine));
        if (version > Version) return ("", new FormatFromTheFuture(version));
        return lines.Length > 1 && lines[1].StartsWith("bench ", StringComparison.Ordinal) ? (lines[1][6..], null) : ("", new Damaged(Marker, 0, Damage.NotALine));
    }
}

public abstract record FolderOutcome
{
    private protected FolderOutcome() { }
}

public sealed record FolderReady(DataFolder Folder) : FolderOutcome;

public sealed record FolderRefused(DataFault Fault) : FolderOutcome;
