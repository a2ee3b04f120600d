using ServiceRunner.Files.Data;

namespace ServiceRunner.Files.Journal;

public enum OpenMode
{
    /// <summary>To append: one process at a time.</summary>
    Own,
    /// <summary>To read beside an owner, or where nothing may be written. Nothing is written.</summary>
    Read,
}

public sealed record OpenOptions
{
    /// <summary>Says which year's file an append goes to.</summary>
    public TimeProvider Clock { get; init; } = TimeProvider.System;
    public Action<RebuildProgress>? Progress { get; init; }
}

public readonly record struct RebuildProgress(long Lines, long Bytes, long TotalBytes);

public abstract record OpenOutcome
{
    private protected OpenOutcome() { }
}

public sealed record Opened(JobLog Log) : OpenOutcome;

public sealed record OpenRefused(DataFault Fault) : OpenOutcome;

public abstract record AppendOutcome
{
    private protected AppendOutcome() { }
}

/// <summary>The lines are on the disk.</summary>
public sealed record Appended(IReadOnlyList<LineId> Lines) : AppendOutcome;

/// <summary>Nothing was appended, unless the fault is a failed sync: then nobody knows until the log is opened again.</summary>
public sealed record AppendRefused(DataFault Fault) : AppendOutcome;

public readonly record struct LineId(long Sequence, long SubjectSequence, Digest BodyHash);

/// <param name="Lines">A subject's verified lines in order; none for a subject that is not there.</param>
/// <param name="Damage">Where the journal is damaged; the lines are then those before the damage, and there were more.</param>
public sealed record SubjectReading(IReadOnlyList<LogLine> Lines, Damaged? Damage);

/// <summary>The subject's events have no row in lists when this gives null.</summary>
public delegate Index.SubjectRow? RowOf(string subject, IReadOnlyList<LogLine> lines);

public abstract record RecoverOutcome
{
    private protected RecoverOutcome() { }
}

public sealed record Recovered(DataFolder Folder, long Lines, IReadOnlyList<ScannedDamage> Damage, IReadOnlyList<string> CutSubjects) : RecoverOutcome;

public sealed record RecoverRefused(DataFault Fault) : RecoverOutcome;

/// <summary>Neither the index on the disk nor one in memory could be made: the journal is damaged where it was whole at opening.</summary>
public sealed class JobLogException(DataFault fault) : Exception(fault.ToString())
{
    public DataFault Fault { get; } = fault;
}
