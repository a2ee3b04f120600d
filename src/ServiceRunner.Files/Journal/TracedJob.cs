using ServiceRunner.Files.Data;

namespace ServiceRunner.Files.Journal;

/// <summary>A job that a batch was used on.</summary>
/// <param name="Subject">The job's id.</param>
/// <param name="Number">The workshop's own number.</param>
/// <param name="Title">What it is.</param>
/// <param name="Points">Each point, and the line that says so.</param>
/// <param name="Damage">Why the job cannot be read whole, or null.</param>
public sealed record TracedJob(string Subject, string Number, string Title, IReadOnlyList<TracedLine> Points, DataFault? Damage);

/// <summary>A point and the verified line that says what served it; null where that line cannot be read.</summary>
public sealed record TracedLine(string Point, string Name, LogLine? Line);
