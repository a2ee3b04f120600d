using ServiceRunner.Files.Data;

namespace ServiceRunner.Files.Journal;

/// <summary>What a reading of the whole journal finds, in the order of the files.</summary>
/// <param name="File">The segment's name.</param>
public abstract record ScanItem(string File, long Offset);

/// <summary>A line whose hashes match. Whether it follows the line before is told by the damage before it, if any.</summary>
public sealed record ScannedLine(string File, long Offset, LogLine Line) : ScanItem(File, Offset)
{
    internal LinePlace Place { get; init; }
}

/// <summary>A line that is not as it was written, or does not follow; the length is that of the bytes concerned.</summary>
public sealed record ScannedDamage(string File, long Offset, long Length, Damage What) : ScanItem(File, Offset)
{
    public Damaged ToFault() => new(File, Offset, What);
}
