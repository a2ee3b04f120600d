namespace ServiceRunner.Files.Data;

/// <summary>What can go wrong with what is kept on the disk, as data; the sentences are elsewhere.</summary>
public abstract record DataFault
{
    private protected DataFault() { }
}

public sealed record FolderMissing(string Path) : DataFault;

/// <summary>The folder has files in it, and is not one of ours.</summary>
public sealed record NotADataFolder(string Path) : DataFault;

public sealed record FormatFromTheFuture(int Version) : DataFault;

public sealed record ReadOnlyFolder(string Path) : DataFault;

/// <param name="Holder">The process that has the folder and since when; empty where it cannot be read.</param>
public sealed record InUse(string Holder) : DataFault;

public sealed record DiskFull(string File) : DataFault;

/// <param name="Error">The operating system's number.</param>
public sealed record WriteFailed(string File, int Error) : DataFault;

public sealed record SyncFailed(string File, int Error) : DataFault;

/// <summary>An earlier sync failed. What the disk holds is unknown until the log is opened again.</summary>
public sealed record Poisoned(int Error) : DataFault;

/// <param name="File">The file's name within the data folder.</param>
/// <param name="Offset">Where the damaged line begins, in bytes.</param>
public sealed record Damaged(string File, long Offset, Damage What) : DataFault;

/// <summary>The log of the bench goes on with what this version does not know.</summary>
/// <param name="What">The kind of the event, or the version of the line.</param>
public sealed record BenchFromTheFuture(string What) : DataFault;

/// <summary>An entry of the bench is whole and yet cannot be what this program wrote.</summary>
public sealed record BenchMakesNoSense(long Entry, string Why) : DataFault;

/// <summary>Somebody else has appended to this subject since the decision was made.</summary>
public sealed record SubjectMoved(string Subject, long Expected, long Actual) : DataFault;

/// <summary>An imported body is damaged, or is not the one that comes after the subject's last.</summary>
public sealed record DoesNotFollow(string Subject, long N) : DataFault;

/// <summary>The log was opened to read.</summary>
public sealed record ReadOnlyMode : DataFault;

/// <summary>The index failed twice, the second time freshly rebuilt. The journal is not touched by that.</summary>
public sealed record IndexFailed(string What) : DataFault;

public sealed record KeptTextMissing(string Hash) : DataFault;

public sealed record KeptTextChanged(string Hash) : DataFault;

/// <summary>A file or folder has that name already, and was not to be replaced.</summary>
public sealed record BackupExists(string File) : DataFault;

/// <summary>The data is damaged, and an earlier backup may hold more than what is whole of it.</summary>
public sealed record BackupNotReplaced(string File) : DataFault;

public sealed record BackupPlaceMissing(string Folder) : DataFault;

/// <summary>The folder in which something is made first is another run's, or nothing of ours.</summary>
public sealed record PartTaken(string Path) : DataFault;

/// <summary>A file could not be read.</summary>
/// <param name="Error">The operating system's number.</param>
public sealed record ReadFailed(string File, int Error) : DataFault;

/// <summary>What was just written cannot be read back whole.</summary>
public sealed record BackupUnread(string File) : DataFault;

public sealed record BackupMissing(string File) : DataFault;

public sealed record NotABackup(string File) : DataFault;

/// <param name="Entry">What in the backup is not as it was written; empty if that cannot be told.</param>
public sealed record BackupDamaged(string File, string Entry) : DataFault;

/// <summary>Larger than a backup is allowed to be: it might be made to fill the disk.</summary>
public sealed record BackupTooLarge(string File, string Entry) : DataFault;

/// <summary>A restored folder is only made where there is nothing yet.</summary>
public sealed record RestoreNotEmpty(string Path) : DataFault;

/// <summary>How a line of the journal is not as it was written.</summary>
public enum Damage
{
    /// <summary>The last line has no end.</summary>
    Unfinished,
    NotALine,
    /// <summary>The line's own hash does not match its bytes.</summary>
    LineHash,
    BodyHash,
    /// <summary>The bench's sequence skips or repeats a number.</summary>
    Sequence,
    /// <summary>The line does not name the bench's previous line.</summary>
    LineLink,
    Bench,
    SubjectSequence,
    /// <summary>The body does not name the subject's previous body.</summary>
    BodyLink,
    /// <summary>A file or a line that must be there is not.</summary>
    Missing,
    TooLong,
}
