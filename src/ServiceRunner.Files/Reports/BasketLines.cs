using ServiceRunner.Core.Jobs;

namespace ServiceRunner.Files.Reports;

/// <summary>Parts that go through the jars together, named once: a whole movement goes through six of them.</summary>
/// <param name="Name">As <c>basket 1</c>.</param>
/// <param name="Parts">What their procedure puts in, by name.</param>
public sealed record BasketLine(string Name, IReadOnlyList<string> Parts);

/// <summary>Finds which clocks had the same basket, and what was left out of it.</summary>
internal sealed class BasketLines(Job job, Plan plan)
{
    // So many are named where they are.
    private const int Few = 3;

    private readonly List<IReadOnlyList<string>> _sets = [];

    /// <summary>The baskets met so far.</summary>
    public IReadOnlyList<BasketLine> All => [.. _sets.Select((s, i) => new BasketLine(Name(i), [.. s.Select(plan.NameOf)]))];

    private static string Name(int index) => $"basket {index + 1}";

    /// <summary>The basket of a clock (empty where its parts are few), and the parts that were left out of it.</summary>
    public (string Basket, IReadOnlyList<string> Without) Of(JobEvent.SoakBegun soak)
    {
        List<string> written = [.. plan.Find(soak.Step.Key)?.Step.Clock?.Parts.Select(p => p.Value) ?? []];
        bool whole = !job.Alone.ContainsKey(soak.Step) && soak.Parts.Count > 0 && soak.Parts.All(written.Contains);
        IReadOnlyList<string> set = whole ? written : soak.Parts;
        IReadOnlyList<string> without = [.. set.Except(soak.Parts).Select(plan.NameOf)];
        if (set.Count <= Few) return ("", without);
        int index = _sets.FindIndex(s => s.SequenceEqual(set));
        if (index < 0)
        {
            index = _sets.Count;
            _sets.Add(set);
        }
        return (Name(index), without);
    }
}
