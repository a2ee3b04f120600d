using ServiceRunner.Core.Jobs;
using ServiceRunner.Core.Workshops;

namespace ServiceRunner.Files.Reports;

/// <summary>Every sheet of a part to be made in a job, in the order in which the procedures came into it.</summary>
public sealed record JobSheets
{
    /// <param name="job">The job.</param>
    /// <param name="plan">Its procedures.</param>
    /// <param name="workshop">The workshop.</param>
    public JobSheets(Job job, Plan plan, Workshop workshop)
    {
        (Job, Workshop) = (job, workshop.Name);
        Sheets = [.. job.Procedures.Select(p => MakingSheet.Of(job, plan, p.Instance)).OfType<MakingSheet>()];
    }

    /// <summary>The job.</summary>
    public Job Job { get; }

    /// <summary>The workshop's name.</summary>
    public string Workshop { get; }

    /// <summary>The sheets; empty if no procedure of the job has one.</summary>
    public IReadOnlyList<MakingSheet> Sheets { get; }

    /// <summary>Why the job could not be read to its end, as a sentence; empty if it could.</summary>
    public string ReadOnlyUpTo { get; init; } = "";
}
