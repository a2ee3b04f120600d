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
