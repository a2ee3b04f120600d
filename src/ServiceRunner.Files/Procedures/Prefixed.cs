using ServiceRunner.Core.Procedures;
using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Files.Procedures;

/// <summary>The steps of a file taken in, under the name by which it was taken in.</summary>
internal static class Prefixed
{
    /// <summary>
    /// Its steps with ids <c>alias/step</c>. What stands beside the taking in holds for each of them. A stage's gate has
    /// no place in the outer file, so that its steps wait for those of the stages that open it.
    /// </summary>
    public static List<Step> Steps(IReadOnlyList<Stage> stages, FileItem.TakenIn item, ProcedureFile from, Allowance allowance)
    {
        List<Step> steps = [];
        string prefix = item.Alias.Value + "/";
        List<Placed<string>> after = [.. item.After.Select(a => new Placed<string>(a.Value, default))];
        List<Condition> onlyIf = [.. item.OnlyIf.Select(c => c with { Fact = new(c.Fact.Value, default) })];
        foreach (Stage stage in stages)
        {
            List<Placed<string>> gate = [.. Gate(stages, stage).Select(id => new Placed<string>(prefix + id, default)), .. after];
            foreach (Step step in stage.Steps)
            {
                if (!allowance.Take(1 + step.After.Count + gate.Count + onlyIf.Count)) return steps;
                steps.Add(step with
                {
                    Id = new(prefix + step.Id.Value, step.Id.At),
                    After = [.. step.After.Select(a => new Placed<string>(prefix + a.Value, a.At)), .. gate],
                    OnlyIf = [.. step.OnlyIf, .. onlyIf],
                    TakenFrom = step.TakenFrom.Length > 0 ? step.TakenFrom : from.File,
                });
            }
        }
        return steps;
    }

    private static IEnumerable<string> Gate(IReadOnlyList<Stage> stages, Stage stage) =>
        stages.Where(s => s != stage && stage.OpensAfter.Any(o => o.Value == s.Id.Value)).SelectMany(s => s.Steps).Select(s => s.Id.Value);
}
