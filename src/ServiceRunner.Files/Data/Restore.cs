namespace ServiceRunner.Files.Data;

/// <summary>Makes a data folder from a backup: all of it, or nothing.</summary>
public static class Restore
{
    /// <param name="to">A folder that is missing or empty.</param>
    public static RestoreOutcome Read(string file, string to)
    {
        (file, to) = (Path.GetFullPath(file), Path.TrimEndingDirectorySeparator(Path.GetFullPath(to)));
        try
        {
            if (File.Exists(to) || (Directory.Exists(to) && Directory.EnumerateFileSystemEntries(to).Any())) return new RestoreRefused(new RestoreNotEmpty(to));
            (BackupFile? backup, DataFault? fault) = BackupFile.Open(file);
            if (backup is null) return new RestoreRefused(fault!);
            using (backup) return Make(backup, to);
        }
        catch (Exception e) when (DurableFile.IsDisk(e))
        {
            return new RestoreRefused(DurableFile.FaultOf(e, to));
        }
    }

    private static RestoreOutcome Make(BackupFile backup, string to)
    {
        (Staging? staging, DataFault? taken) = Staging.Beside(to);
        if (staging is null) return new RestoreRefused(taken!);
        using (staging)
        {
            string made = staging.In("made");
            DurableFile.CreateFolder(made);
            if (backup.Unpack(made) is { } fault) return new RestoreRefused(fault);
            if (DataFolder.Open(made) is FolderRefused refused) return new RestoreRefused(refused.Fault);
            // Of an empty folder only: if something came into it meanwhile, this fails and nothing is lost.
            if (Directory.Exists(to)) Directory.Delete(to);
            Directory.Move(made, to);
            if (DurableFile.SyncFolderOf(to) is { } unsynced) return new RestoreRefused(unsynced);
        }
        return DataFolder.Open(to) switch
        {
            FolderReady ready => new Restored(ready.Folder, backup.Lines, backup.Logs, backup.Ignored),
            FolderRefused refused => new RestoreRefused(refused.Fault),
            _ => throw new InvalidOperationException("an outcome of no kind"),
        };
    }
}

public abstract record RestoreOutcome
{
    private protected RestoreOutcome() { }
}

/// <param name="Ignored">What was in the backup and is no part of a data folder.</param>
public sealed record Restored(DataFolder Folder, long Lines, int Logs, IReadOnlyList<string> Ignored) : RestoreOutcome;

public sealed record RestoreRefused(DataFault Fault) : RestoreOutcome;
