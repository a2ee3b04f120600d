using ServiceRunner.Core.Procedures;

namespace ServiceRunner.Files.Checks;

/// <summary>
/// The jobs that can come of a procedure, by the answers to the facts on which some steps depend. Steps that exclude
/// each other are never in one of them, so that a check needs no rule of its own for alternatives.
/// </summary>
internal sealed class Worlds
{
    // So many combinations are looked at: eight facts of two answers. Beyond, the first answers stand for the others.
    private const int Most = 256;

    private static readonly Worlds Single = new([], []);

    private readonly string[] _facts;
    private readonly Dictionary<string, int> _number = new(StringComparer.Ordinal);
    private readonly List<string[]> _answers;

    private Worlds(string[] facts, List<string[]> answers)
    {
        (_facts, _answers) = (facts, answers);
        for (int i = 0; i < facts.Length; i++) _number[facts[i]] = i;
    }

    public static Worlds Of(ProcedureUnderCheck check, List<PartMention> mentions)
    {
        HashSet<string>? facts = null;
        foreach (PartMention mention in mentions) Collect(check.Steps[mention.Step], ref facts);
        return facts is null ? Single : Of(check, facts);
    }

    public static Worlds Of(ProcedureUnderCheck check, IEnumerable<int> steps)
    {
        HashSet<string>? facts = null;
        foreach (int step in steps) Collect(check.Steps[step], ref facts);
        return facts is null ? Single : Of(check, facts);
    }

    /// <summary>True if a step is in the job of a world.</summary>
    public bool Has(int world, Step step)
    {
        for (int i = 0; i < step.OnlyIf.Count; i++)
        {
            Condition condition = step.OnlyIf[i];
            if (_number.TryGetValue(condition.Fact.Value, out int fact) && !condition.Answers.Contains(_answers[world][fact])) return false;
        }
        return true;
    }

    /// <summary>
    /// Runs a check in every world and names the world where what it finds is not the same in all of them.
    /// </summary>
    /// <param name="look">The check: what it finds, by key; the sentence is made once the worlds are known.</param>
    public void Each(Action<int, Action<Func<string, Diagnostic>>> look, List<Diagnostic> found)
    {
        if (_answers.Count == 0)
        {
            look(0, say => found.Add(say("")));
            return;
        }
        Dictionary<Diagnostic, (Func<string, Diagnostic> Say, List<int> In)> sayings = [];
        for (int world = 0; world < _answers.Count; world++)
        {
            int here = world;
            look(world, say =>
            {
                Diagnostic key = say("");
                if (!sayings.TryGetValue(key, out (Func<string, Diagnostic> Say, List<int> In) saying)) sayings[key] = saying = (say, []);
                if (!saying.In.Contains(here)) saying.In.Add(here);
            });
        }
        foreach ((Func<string, Diagnostic> say, List<int> worlds) in sayings.Values) found.Add(say(When(worlds)));
    }

    // " if shellac is no": the facts that have one answer wherever it was found, and others where it was not.
    private string When(List<int> worlds)
    {
        if (worlds.Count == _answers.Count) return "";
        List<string> when = [];
        for (int fact = 0; fact < _facts.Length; fact++)
        {
            List<string> here = [.. worlds.Select(w => _answers[w][fact]).Distinct()];
            if (here.Count < _answers.Select(a => a[fact]).Distinct().Count()) when.Add($"{_facts[fact]} is {Words.Or(here)}");
        }
        return when.Count == 0 ? "" : $" if {Words.And(when)}";
    }

    private static void Collect(Step step, ref HashSet<string>? facts)
    {
        for (int i = 0; i < step.OnlyIf.Count; i++)
        {
            (facts ??= new HashSet<string>(StringComparer.Ordinal)).Add(step.OnlyIf[i].Fact.Value);
        }
    }

    private static Worlds Of(ProcedureUnderCheck check, HashSet<string> facts)
    {
        List<List<string>> worlds = [[]];
        foreach (string fact in facts)
        {
            IReadOnlyList<string> answers = check.Asked.GetValueOrDefault(fact)?.Answers is { Count: > 0 } asked ? asked : ["yes", "no"];
            if (worlds.Count * answers.Count > Most) answers = [answers[0]];
            List<List<string>> more = [.. answers.Skip(1).SelectMany(a => worlds.Select(w => (List<string>)[.. w, a]))];
            foreach (List<string> world in worlds) world.Add(answers[0]);
            worlds.AddRange(more);
        }
        return new Worlds([.. facts], [.. worlds.Select(w => w.ToArray())]);
    }
}
