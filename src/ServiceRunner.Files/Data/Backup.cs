using System.IO.Compression;
using System.Security.Cryptography;
using ServiceRunner.Files.Journal;
using ServiceRunner.Files.Machine;

namespace ServiceRunner.Files.Data;

/// <summary>
/// Copies a data folder into one file, also while another run appends to it. It takes no lock and changes nothing in
/// the folder: the journal is copied up to where it ended, and what is done with it is done to the copy.
/// </summary>
public static class Backup
{
    /// <param name="replace">Whether a file that is there may be replaced.</param>
    public static BackupOutcome Write(DataFolder folder, string file, bool replace = false)
    {
        file = Path.GetFullPath(file);
        string place = Path.GetDirectoryName(file) ?? file;
        if (Directory.Exists(file) || (File.Exists(file) && !replace)) return new BackupRefused(new BackupExists(file), []);
        if (!Directory.Exists(place)) return new BackupRefused(new BackupPlaceMissing(place), []);
        (Staging? staging, DataFault? taken) = Staging.Beside(file);
        if (staging is null) return new BackupRefused(taken!, []);
        using (staging)
        {
            try
            {
                BackupCopy copy = new(folder, staging);
                return copy.Copy() is { } fault ? new BackupRefused(fault, []) : Pack(folder, copy, staging, file);
            }
            catch (Exception e) when (DurableFile.IsDisk(e))
            {
                return new BackupRefused(DurableFile.FaultOf(e, file), []);
            }
        }
    }

    private static BackupOutcome Pack(DataFolder folder, BackupCopy copy, Staging staging, string file)
    {
        (List<DataFault> damage, DataFault? fault) = copy.MakeWhole();
        if (fault is not null) return new BackupRefused(fault, damage);
        if (damage.Count > 0 && File.Exists(file)) return new BackupRefused(new BackupNotReplaced(file), damage);
        string packed = staging.In("packed");
        (List<string> leftOut, fault) = Zip(folder.Bench, staging.In(BackupCopy.Name), packed);
        if (fault is not null) return new BackupRefused(fault, damage);
        // Read again as a restore would, before it takes the name: a backup that it replaces stays until then.
        (BackupFile? made, fault) = BackupFile.Open(packed);
        if (made is null) return new BackupRefused(Named(fault!, file), damage);
        (long lines, int logs) = (made.Lines, made.Logs);
        made.Dispose();
        File.Move(packed, file, overwrite: true);
        return DurableFile.SyncFolderOf(file) is { } unsynced ? new BackupRefused(unsynced, damage) : new BackedUp(lines, logs, damage, leftOut);
    }

    private static (List<string> LeftOut, DataFault? Fault) Zip(string bench, string copy, string packed)
    {
        List<string> leftOut = [];
        List<BackupEntry> entries = [];
        foreach (string path in Directory.EnumerateFiles(copy, "*", SearchOption.AllDirectories).Order(StringComparer.Ordinal))
        {
            string name = Path.GetRelativePath(copy, path).Replace(Path.DirectorySeparatorChar, '/');
            if (!BackupList.IsKnown(name))
            {
                leftOut.Add(name);
                continue;
            }
            using FileStream stream = File.OpenRead(path);
            entries.Add(new BackupEntry(name, stream.Length, Convert.ToHexStringLower(SHA256.HashData(stream))));
        }
        using FileStream file = new(packed, DurableFile.Options(FileMode.CreateNew, FileShare.None));
        using (ZipArchive zip = new(file, ZipArchiveMode.Create, leaveOpen: true))
        {
            using (Stream list = zip.CreateEntry(BackupList.Name).Open()) list.Write(new BackupList(bench, entries).Write());
            foreach (BackupEntry entry in entries)
            {
                using FileStream from = File.OpenRead(Path.Combine([copy, .. entry.Name.Split('/')]));
                using Stream to = zip.CreateEntry(entry.Name).Open();
                from.CopyTo(to);
            }
        }
        return (leftOut, Kernel.Sync(file.SafeFileHandle) is var error and not 0 ? new SyncFailed(Path.GetFileName(packed), error) : null);
    }

    private static DataFault Named(DataFault fault, string file) => fault switch
    {
        BackupTooLarge x => x with { File = file },
        _ => new BackupUnread(file),
    };
}

public abstract record BackupOutcome
{
    private protected BackupOutcome() { }
}

/// <param name="Logs">Of how many jobs, and the bench.</param>
/// <param name="Damage">What is damaged in the folder; the backup holds what is whole.</param>
/// <param name="LeftOut">Files of the procedures' folder whose names not every system takes.</param>
public sealed record BackedUp(long Lines, int Logs, IReadOnlyList<DataFault> Damage, IReadOnlyList<string> LeftOut) : BackupOutcome;

public sealed record BackupRefused(DataFault Fault, IReadOnlyList<DataFault> Damage) : BackupOutcome;
