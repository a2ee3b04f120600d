using ServiceRunner.Files.Data;
using ServiceRunner.Files.Events;

namespace ServiceRunner.Files.Journal;

/// <summary>A job that a batch was used on.</summary>
/// <param name="Subject">The job's id.</param>
/// <param name="Number">The workshop's own number.</param>
/// <param name="Title">What it is.</param>
/// <param name="Points">Each point, and what its line says.</param>
/// <param name="Damage">Why the job cannot be read whole, or null.</param>
public sealed record TracedJob(string Subject, string Number, string Title, IReadOnlyList<TracedLine> Points, DataFault? Damage);

/// <summary>A point and what the verified line says that served it.</summary>
/// <param name="Point">The point's id.</param>
/// <param name="Name">What it is called.</param>
/// <param name="N">The line of the job that the index names.</param>
/// <param name="Read">False if that line cannot be read.</param>
/// <param name="Said">What it says; null if it says nothing of this point and batch.</param>
public sealed record TracedLine(string Point, string Name, long N, bool Read, ServedSaid? Said);
