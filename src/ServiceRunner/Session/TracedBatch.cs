using ServiceRunner.Files.Journal;
using ServiceRunner.Files.Sentences;

namespace ServiceRunner.Session;

/// <summary>Which jobs and which points a batch served.</summary>
/// <param name="Batch">The batch, as asked for.</param>
/// <param name="Uses">Job by job, in the order in which they were booked in.</param>
public sealed record TracedBatch(string Batch, IReadOnlyList<TracedUse> Uses)
{
    /// <summary>How many points it served.</summary>
    public int Points => Uses.Sum(u => u.Points.Count);

    internal static TracedBatch Of(string batch, IReadOnlyList<TracedJob> jobs, string folder) =>
        new(batch, [.. jobs.Select(j => Use(j, folder))]);

    private static TracedUse Use(TracedJob job, string folder)
    {
        List<TracedPoint> points = new(job.Points.Count);
        List<string> faults = [];
        if (job.Damage is { } damage) faults.Add(FaultWords.Sentence(damage, folder));
        foreach (TracedLine line in job.Points)
        {
            if (line.Said is { } said) points.Add(new TracedPoint(line.Point, line.Name, said.Role, said.Lubricant, said.By, said.At, said.Remembered, line.N));
            else if (!line.Read) faults.Add($"What served '{line.Name}' cannot be read.");
            else faults.Add($"The index says that it served '{line.Name}', and the log does not; delete the file 'index.db' in {folder}, it is made anew from the journal.");
        }
        return new TracedUse(job.Subject, job.Number, job.Title, points, faults.Count == 0 ? "" : string.Join(' ', faults.Distinct()));
    }
}

/// <summary>What a batch served in one job.</summary>
/// <param name="Job">The job's id.</param>
/// <param name="Number">The workshop's own number.</param>
/// <param name="What">What it is.</param>
/// <param name="Points">The points.</param>
/// <param name="Fault">Why not all of it can be told, as sentences; empty if it can.</param>
public sealed record TracedUse(string Job, string Number, string What, IReadOnlyList<TracedPoint> Points, string Fault);

/// <summary>A point that a batch served.</summary>
/// <param name="Point">Its id.</param>
/// <param name="Name">What it is called.</param>
/// <param name="Role">The role that it wanted.</param>
/// <param name="Lubricant">The lubricant by its id.</param>
/// <param name="By">Who.</param>
/// <param name="At">When it was written down.</param>
/// <param name="Remembered">The time as remembered, if it was entered afterwards.</param>
/// <param name="Entry">The entry of the job that says so.</param>
public sealed record TracedPoint(string Point, string Name, string Role, string Lubricant, string By, DateTimeOffset At, DateTimeOffset? Remembered, long Entry);
