using ServiceRunner.Files.Journal;

namespace ServiceRunner.Files.Index;

/// <summary>A line that the index is to take in, after it was acknowledged or read.</summary>
internal readonly record struct IndexedLine(string Subject, long N, Digest BodyHash, LogHead Head, LinePlace Place, Func<SubjectRow>? Row);

/// <summary>The last line that the index knows.</summary>
internal readonly record struct IndexHead(LogHead Head, LinePlace Place);

/// <summary>A run of lines of one subject that lie one behind another.</summary>
internal readonly record struct Extent(string Subject, int Year, long Offset, long Length, long FirstN, long Count)
{
    public long EndN => FirstN + Count;
}

/// <summary>A subject's last line, and where the run begins that it ends.</summary>
internal readonly record struct SubjectEntry(SubjectHead Head, LinePlace Last, long RunFirstN, long RunOffset)
{
    public static SubjectEntry First(IndexedLine line) => new(new SubjectHead(line.N, line.BodyHash), line.Place, line.N, line.Place.Offset);

    /// <summary>The entry after one more line: it prolongs the run if it lies right behind.</summary>
    public SubjectEntry Next(IndexedLine line) =>
        line.Place.Year == Last.Year && line.Place.Offset == Last.End
            ? this with { Head = new SubjectHead(line.N, line.BodyHash), Last = line.Place }
            : First(line);

    public Extent Run(string subject) => new(subject, Last.Year, RunOffset, Last.End - RunOffset, RunFirstN, Head.N - RunFirstN + 1);
}

/// <summary>The index contradicts itself or the journal, and is thrown away.</summary>
internal sealed class IndexUnusableException(string what) : Exception(what);
