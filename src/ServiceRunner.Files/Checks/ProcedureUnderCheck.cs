using System.Runtime.InteropServices;
using ServiceRunner.Core.Procedures;
using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Files.Checks;

/// <summary>What a step does to a part.</summary>
internal enum PartAct
{
    Removes,
    Tries,
    Fits,
    Replaces,
    Bath,
    Spin,
    Dry,
    Brush,
    Coat,
    Examine,
}

/// <summary>A step's act on a part: the step's number in the list, what, and where it is written.</summary>
internal readonly record struct PartMention(int Step, PartAct Act, Place At);

/// <summary>A procedure laid open once for all checks: steps by number and id, what happens to each part and point.</summary>
internal sealed class ProcedureUnderCheck
{
    private static readonly List<PartMention> NoMentions = [];
    private readonly Dictionary<string, List<PartMention>> _parts = new(StringComparer.Ordinal);

    public ProcedureUnderCheck(string file, Procedure procedure, List<Diagnostic> found)
    {
        (File, Procedure, Found) = (file, procedure, found);
        foreach (Part part in procedure.Parts) PartOf[part.Id.Value] = part;
        foreach (JobQuestion ask in procedure.Asks) Asked.TryAdd(ask.Fact.Value, ask);
        foreach (Stage stage in procedure.Stages)
        {
            foreach (Step step in stage.Steps)
            {
                StepNumber.TryAdd(step.Id.Value, Steps.Count);
                StageOf.Add(stage);
                Open(step, Steps.Count);
                Steps.Add(step);
            }
        }
    }

    public string File { get; }

    public Procedure Procedure { get; }

    public List<Diagnostic> Found { get; }

    public List<Step> Steps { get; } = [];

    public List<Stage> StageOf { get; } = [];

    public Dictionary<string, int> StepNumber { get; } = new(StringComparer.Ordinal);

    public Dictionary<string, Part> PartOf { get; } = new(StringComparer.Ordinal);

    public Dictionary<string, JobQuestion> Asked { get; } = new(StringComparer.Ordinal);

    public Dictionary<string, List<(int Step, Place At)>> Served { get; } = new(StringComparer.Ordinal);

    /// <summary>The first step that takes a part off.</summary>
    public Dictionary<string, int> FirstRemoval { get; } = new(StringComparer.Ordinal);

    /// <summary>Everything that happens to a part, in the order of the list.</summary>
    public List<PartMention> Of(string part) => _parts.GetValueOrDefault(part, NoMentions);

    /// <summary>The file in which a step stands.</summary>
    public string FileOf(Step step) => step.TakenFrom.Length > 0 ? step.TakenFrom : File;

    public string FileOf(int step) => FileOf(Steps[step]);

    public string FileOf(Part part) => part.TakenFrom.Length > 0 ? part.TakenFrom : File;

    public string FileOf(OilingPoint point) => point.TakenFrom.Length > 0 ? point.TakenFrom : File;

    private void Open(Step step, int number)
    {
        Add(step.Removes, PartAct.Removes, number);
        foreach (Placed<string> removed in step.Removes) FirstRemoval.TryAdd(removed.Value, number);
        Add(step.Replaces, PartAct.Replaces, number);
        if (step.Clock is { } clock)
            Add(clock.Parts, clock is ClockFacet.Bath ? PartAct.Bath : clock is ClockFacet.Dry ? PartAct.Dry : PartAct.Spin, number);
        if (step.Brush is { } brush) Add(brush.Parts, PartAct.Brush, number);
        if (step.Coat is { } coat) Add(coat.Parts, PartAct.Coat, number);
        Add(step.Tries, PartAct.Tries, number);
        Add(step.Fits, PartAct.Fits, number);
        foreach (ExamineFacet examined in step.Examine)
        {
            if (examined.Part is { } part) Add([part], PartAct.Examine, number);
        }
        foreach (Placed<string> point in step.Oil)
        {
            ref List<(int, Place)>? served = ref CollectionsMarshal.GetValueRefOrAddDefault(Served, point.Value, out _);
            (served ??= []).Add((number, point.At));
        }
    }

    private void Add(IReadOnlyList<Placed<string>> parts, PartAct act, int step)
    {
        for (int i = 0; i < parts.Count; i++)
        {
            ref List<PartMention>? mentions = ref CollectionsMarshal.GetValueRefOrAddDefault(_parts, parts[i].Value, out _);
            (mentions ??= []).Add(new PartMention(step, act, parts[i].At));
        }
    }
}
