using ServiceRunner.Core.Procedures;

namespace ServiceRunner.Core.Jobs;

/// <summary>
/// What the open repairs of a job hold back: their parts, and the steps that care for nothing but those parts. Such a
/// step waits, and nobody else waits for it: whether a part is clean is asked again when it is fitted.
/// </summary>
public sealed class Holding
{
    private static readonly Holding Nothing = new([], []);

    private readonly Dictionary<string, Repair> _parts;
    private readonly HashSet<StepKey> _aside;

    private Holding(Dictionary<string, Repair> parts, HashSet<StepKey> aside) => (_parts, _aside) = (parts, aside);

    /// <summary>What is held back in a job.</summary>
    public static Holding Of(Job job, Plan plan)
    {
        if (job.Repairs.IsEmpty) return Nothing;
        Dictionary<string, Repair> parts = new(StringComparer.Ordinal);
        foreach (string part in job.Repairs.Select(r => r.Part).Where(p => p.Length > 0).Distinct())
            if (Repair.OpenOn(job, plan, part) is { } repair) parts[part] = repair;
        if (parts.Count == 0) return Nothing;
        Holding holding = new(parts, []);
        holding.SetAside([.. plan.InForce(job).Where(s => !job.WasSettled(s.Key))]);
        return holding;
    }

    /// <summary>The repair of another procedure than this one that a part waits in, or null.</summary>
    public Repair? Elsewhere(string part, string instance) => _parts.GetValueOrDefault(part) is { } repair && repair.Instance != instance ? repair : null;

    /// <summary>True if a step cares for parts in repair alone, or comes after one that does in the same stage.</summary>
    public bool IsAside(StepKey step) => _aside.Contains(step);

    /// <summary>The repair that a step waits for because it touches nothing but parts in repair, or null.</summary>
    public Repair? Whole(PlannedStep step)
    {
        // Taking it off is what the repair itself waits for.
        if (_parts.Count == 0 || step.Step.Removes.Count > 0 || Touched(step.Step) is not { Count: > 0 } touched) return null;
        return touched.TrueForAll(p => Elsewhere(p, step.Key.Instance) is not null) ? Elsewhere(touched[0], step.Key.Instance) : null;
    }

    private void SetAside(List<PlannedStep> left)
    {
        foreach (PlannedStep step in left)
            if (step.Step.Fits.Count + step.Step.Tries.Count == 0 && Whole(step) is not null) _aside.Add(step.Key);
        for (int before = -1; before != _aside.Count;)
        {
            before = _aside.Count;
            foreach (PlannedStep step in left)
                if (step.Step.After.Any(a => _aside.Contains(new StepKey(step.Key.Instance, a)) && left.Any(o => o.Key.Step == a && o.Key.Instance == step.Key.Instance && o.Stage.Id.Value == step.Stage.Id.Value)))
                    _aside.Add(step.Key);
        }
    }

    private static List<string> Touched(Step step) =>
    [
        .. step.Fits.Concat(step.Tries).Concat(step.Clock?.Parts ?? []).Concat(step.Brush?.Parts ?? []).Concat(step.Coat?.Parts ?? []).Select(p => p.Value),
        .. step.Examine.Where(e => e.Part is not null).Select(e => e.Part!.Value.Value),
    ];
}
