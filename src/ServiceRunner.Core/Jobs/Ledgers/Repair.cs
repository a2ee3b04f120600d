namespace ServiceRunner.Core.Jobs;

/// <summary>A procedure that a finding brought into the job.</summary>
/// <param name="Instance">Its name in the job.</param>
/// <param name="Title">The procedure's title.</param>
/// <param name="Finding">The finding's id.</param>
/// <param name="Part">The part that it mends and that waits for it; empty if it is of no part.</param>
/// <param name="Left">Steps neither done nor passed over.</param>
/// <param name="Total">Steps in all.</param>
public sealed record Repair(string Instance, string Title, string Finding, string Part, int Left, int Total)
{
    /// <summary>True if every step of it is settled.</summary>
    public bool IsFinished => Left == 0;

    /// <summary>True if it came to its end by being given up, or by passing over every step of it: nothing is mended by that.</summary>
    public bool IsGivenUp { get; init; }

    /// <summary>The repairs of a job, in the order they came.</summary>
    public static IReadOnlyList<Repair> AllOf(Job job, Plan plan) => [.. job.Repairs.Select(r => Of(job, plan, r))];

    /// <summary>The repair that a part waits in, or null.</summary>
    public static Repair? OpenOn(Job job, Plan plan, string part) =>
        job.Repairs.Where(r => r.Part == part).Select(r => Of(job, plan, r)).FirstOrDefault(r => !r.IsFinished);

    private static Repair Of(Job job, Plan plan, JobEvent.RepairJoined joined)
    {
        int left = 0, total = 0;
        bool worked = false;
        foreach (PlannedStep step in plan.InForce(job).Where(s => s.Key.Instance == joined.Instance))
        {
            total++;
            if (!job.WasSettled(step.Key)) left++;
            worked |= job.Steps.GetValueOrDefault(step.Key)?.End is { Done: true };
        }
        return new Repair(joined.Instance, plan.TitleOf(joined.Instance), joined.Finding, joined.Part, left, total) { IsGivenUp = left == 0 && (!worked || job.GivenUp.Contains(joined.Instance)) };
    }
}
