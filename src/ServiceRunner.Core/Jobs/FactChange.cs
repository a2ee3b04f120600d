namespace ServiceRunner.Core.Jobs;

/// <summary>What another answer to a fact of the job would do to its steps, before it is given.</summary>
/// <param name="Joining">Steps that come into the job.</param>
/// <param name="Leaving">Steps that drop out.</param>
/// <param name="LeavingSettled">Of those that drop out, how many were done or passed over already; the log keeps them.</param>
public sealed record FactChange(int Joining, int Leaving, int LeavingSettled)
{
    /// <summary>What an answer would do.</summary>
    public static FactChange Of(Job job, Plan plan, string fact, string answer)
    {
        Job then = job with { Facts = job.Facts.SetItem(fact, answer) };
        int joining = 0, leaving = 0, settled = 0;
        foreach (PlannedStep step in plan.Steps)
        {
            bool before = step.BelongsTo(job) != Belonging.No, after = step.BelongsTo(then) != Belonging.No;
            if (!before && after) joining++;
            if (!before || after) continue;
            leaving++;
            if (job.IsSettled(step.Key)) settled++;
        }
        return new FactChange(joining, leaving, settled);
    }
}
