using ServiceRunner.Files.Data;

namespace ServiceRunner.Files.Journal;

/// <summary>What the opening found and dealt with, to be told.</summary>
public abstract record LogNote
{
    private protected LogNote() { }
}

/// <summary>An action that was never acknowledged had begun to be written; its bytes were moved aside.</summary>
public sealed record TornTail(string File, long Offset, long Length, string MovedTo) : LogNote;

public sealed record IndexRebuilt(RebuildReason Why, long Lines) : LogNote;

/// <summary>The index knew of acknowledged lines that the journal has no more. It holds no truth, but this must be shown.</summary>
public sealed record EndsBeforeIndex(long IndexSequence, long JournalSequence) : LogNote;

/// <summary>The journal is damaged there; what was opened to read ends before it.</summary>
public sealed record ReadsUpTo(Damaged Damage) : LogNote;

/// <summary>The folder's marker names another bench than the journal, which is believed.</summary>
public sealed record BenchDiffers(string Marker, string Journal) : LogNote;

public enum RebuildReason
{
    Missing,
    Unreadable,
    /// <summary>The machine stopped while the index was in use; LiteDB does not sync, so it may be anything.</summary>
    MachineStopped,
    DoesNotMatch,
}
