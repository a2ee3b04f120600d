namespace ServiceRunner.Core.Jobs;

/// <summary>
/// What the owner agreed to at most as the piece came in, against what all findings cost together that are to be
/// mended: those declined and those that stay as they are cost nothing.
/// </summary>
/// <param name="Limit">What was agreed.</param>
/// <param name="Currency">Its currency; empty if the figure stands alone.</param>
/// <param name="Sum">What all cost together; null if one is priced in another currency, or it is not known in which.</param>
public sealed record AgreedLimit(decimal Limit, string Currency, decimal? Sum)
{
    /// <summary>True if the sum is known and not above the limit.</summary>
    public bool IsKept => Sum <= Limit;

    /// <summary>By how much the sum is above the limit; nought if it is not, or is not known.</summary>
    public decimal Over => Math.Max(0, (Sum ?? 0) - Limit);

    /// <summary>The limit of a job, or null if none was agreed.</summary>
    public static AgreedLimit? Of(Job job)
    {
        if (job.Intake.CostLimit is not { } limit) return null;
        decimal? sum = 0;
        foreach (Noted<JobEvent.FindingNoted> finding in job.Findings)
        {
            if (job.FateOf(finding.Event.Finding) is not { Cost: { Value: > 0 } cost, Agreed: not false, Verdict: not Verdict.Accept } fate) continue;
            sum = fate.Currency == job.Intake.Currency ? sum + cost.Value : null;
        }
        return new AgreedLimit(limit.Value, job.Intake.Currency, sum);
    }
}
