namespace ServiceRunner.Core.Jobs;

/// <summary>A step that waits, and what it waits for in the end.</summary>
public sealed record WaitingStep(PlannedStep Step, Blocker Because);

/// <summary>What a fault holds back, and what may go on meanwhile.</summary>
/// <param name="Waiting">Steps that wait for a repair, a decision, the owner or a part that is away: directly, or behind another one that does.</param>
/// <param name="Free">How many of the steps that are left do not.</param>
public sealed record Waits(IReadOnlyList<WaitingStep> Waiting, int Free)
{
    /// <summary>The steps of a job that wait for something outside the order of the work itself.</summary>
    public static Waits Of(Job job, Plan plan)
    {
        List<PlannedStep> left = [.. plan.InForce(job).Where(s => !job.IsSettled(s.Key))];
        Holding holding = Holding.Of(job, plan);
        Dictionary<StepKey, Blocker> because = [];
        foreach (PlannedStep step in left)
            if (Blocker.Of(job, step, plan, holding).FirstOrDefault(IsFromOutside) is { } cause) because[step.Key] = cause;
        // Later steps follow in the list, so that one pass nearly always does; another one settles what points backwards.
        for (int before = -1; because.Count > 0 && before != because.Count;)
        {
            before = because.Count;
            foreach (PlannedStep step in left.Where(s => !because.ContainsKey(s.Key)))
                if (Behind(step, left, because, holding) is { } cause) because[step.Key] = cause;
        }
        List<WaitingStep> waiting = [.. left.Where(s => because.ContainsKey(s.Key)).Select(s => new WaitingStep(s, because[s.Key]))];
        return new Waits(waiting, left.Count - waiting.Count);
    }

    private static bool IsFromOutside(Blocker blocker) => blocker is Blocker.RepairFirst or Blocker.FindingStops or Blocker.NoConsent or Blocker.NotAtHand;

    // A step waits with the steps that it comes after, and with those of a stage that opens its own.
    private static Blocker? Behind(PlannedStep step, List<PlannedStep> left, Dictionary<StepKey, Blocker> because, Holding holding)
    {
        foreach (string after in step.Step.After.Select(a => a.Value))
            if (because.TryGetValue(new StepKey(step.Key.Instance, after), out Blocker? cause)) return cause;
        foreach (string stage in step.Stage.OpensAfter.Select(s => s.Value))
            foreach (PlannedStep other in left)
                if (other.Key.Instance == step.Key.Instance && other.Stage.Id.Value == stage && !holding.IsAside(other.Key) && because.TryGetValue(other.Key, out Blocker? cause)) return cause;
        return null;
    }
}
