using ServiceRunner.Core.Procedures;
using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Files.Checks.Order;

/// <summary>Whether the steps can be put in an order at all.</summary>
internal static class WaitingOrder
{
    public static void Check(ProcedureUnderCheck check)
    {
        int steps = check.Steps.Count, stages = check.Procedure.Stages.Count;
        // After the steps, each stage has two things of its own: it opens (its steps wait for that), it is done.
        Circle circle = new(steps + (2 * stages));
        for (int i = 0; i < steps; i++)
        {
            IReadOnlyList<Placed<string>> after = check.Steps[i].After;
            for (int a = 0; a < after.Count; a++)
            {
                if (check.StepNumber.TryGetValue(after[a].Value, out int before) && !Exclude(check.Steps[i], check.Steps[before])) circle.Waits(i, before);
            }
            AddCovers(check, circle, i);
        }
        AddStages(check, circle, steps);
        foreach (List<int> found in circle.All())
        {
            List<int> named = [.. found.Where(f => f < steps)];
            if (named.Count == 0) continue;
            if (named[0] != named[^1]) named.Add(named[0]);
            Step first = check.Steps[named[0]];
            check.Found.Add(WaitingCircle.Of(check.FileOf(first), first.Id.At, [.. named.Select(n => check.Steps[n].Id.Value)]));
        }
    }

    // A step that takes a part off waits for the one that takes off what covers it.
    private static void AddCovers(ProcedureUnderCheck check, Circle circle, int step)
    {
        foreach (Placed<string> removed in check.Steps[step].Removes)
        {
            if (!check.PartOf.TryGetValue(removed.Value, out Part? part)) continue;
            foreach (Placed<string> over in part.Under)
            {
                if (check.FirstRemoval.TryGetValue(over.Value, out int before) && before != step
                    && !Exclude(check.Steps[step], check.Steps[before])) circle.Waits(step, before);
            }
        }
    }

    private static void AddStages(ProcedureUnderCheck check, Circle circle, int steps)
    {
        IReadOnlyList<Stage> stages = check.Procedure.Stages;
        Dictionary<string, int> number = new(StringComparer.Ordinal);
        for (int s = 0; s < stages.Count; s++) number.TryAdd(stages[s].Id.Value, s);
        int step = 0;
        for (int s = 0; s < stages.Count; s++)
        {
            int opens = steps + (2 * s), done = opens + 1;
            foreach (Placed<string> before in stages[s].OpensAfter)
            {
                if (number.TryGetValue(before.Value, out int other)) circle.Waits(opens, steps + (2 * other) + 1);
            }
            bool gated = stages[s].OpensAfter.Count > 0;
            for (int i = 0; i < stages[s].Steps.Count; i++, step++)
            {
                if (gated) circle.Waits(step, opens);
                circle.Waits(done, step);
            }
        }
    }

    // Steps that can never be in one job do not wait for each other.
    private static bool Exclude(Step a, Step b)
    {
        foreach (Condition one in a.OnlyIf)
        {
            foreach (Condition other in b.OnlyIf)
            {
                if (one.Fact.Value == other.Fact.Value && !one.Answers.Any(other.Answers.Contains)) return true;
            }
        }
        return false;
    }
}
