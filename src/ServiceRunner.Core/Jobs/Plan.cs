using ServiceRunner.Core.Procedures;

namespace ServiceRunner.Core.Jobs;

/// <summary>A step in its stage, and its place in the suggested order of the whole job.</summary>
public sealed record PlannedStep(StepKey Key, Step Step, Stage Stage, int Index)
{
    /// <summary>Whether the step belongs to a job, by the facts answered so far.</summary>
    public Belonging BelongsTo(Job job)
    {
        foreach (Condition condition in Step.OnlyIf)
        {
            if (!job.Facts.TryGetValue(condition.Fact, out string? answer)) return Belonging.Unasked;
            if (!condition.Answers.Contains(answer)) return Belonging.No;
        }
        return Belonging.Yes;
    }
}

/// <summary>A procedure as it stands in a job.</summary>
/// <param name="Instance">Its name in the job.</param>
/// <param name="Procedure">As read.</param>
/// <param name="Mends">For a repair: the part of the job that it mends; empty otherwise.</param>
public readonly record struct Joined(string Instance, Procedure Procedure, string Mends = "");

/// <summary>
/// The procedures of a job as one list of steps, with everything found by its id. It depends on what was brought into
/// the job - pinned texts, and parts that none of them names - and never on what was done.
/// </summary>
public sealed class Plan
{
    private readonly Dictionary<StepKey, PlannedStep> _steps = [];
    private readonly Dictionary<string, Part> _parts = new(StringComparer.Ordinal);
    private readonly Dictionary<string, OilingPoint> _points = new(StringComparer.Ordinal);
    private readonly Dictionary<string, JobQuestion> _questions = new(StringComparer.Ordinal);
    private readonly Dictionary<string, PartSheet> _sheets = new(StringComparer.Ordinal);
    private readonly ILookup<(string Instance, string Stage), PlannedStep> _byStage;
    private readonly ILookup<string, string> _holders;
    private readonly ILookup<string, string> _coveredBy;
    private readonly ILookup<string, PlannedStep> _baths;
    private readonly ILookup<string, (PlannedStep Step, string Ask, ExamineFacet Facet)> _looks;
    private readonly Dictionary<string, string> _titles = new(StringComparer.Ordinal);

    /// <summary>Joins procedures in the order given, each under its instance's name.</summary>
    /// <param name="procedures">The first is the main one; ids of those behind it are set apart by their instance.</param>
    /// <param name="added">Parts that none of them names.</param>
    public Plan(IEnumerable<Joined> procedures, IEnumerable<Part>? added = null)
    {
        List<PlannedStep> steps = [];
        List<PointMap> maps = [];
        foreach ((string instance, Procedure read, string mends) in procedures)
        {
            Procedure procedure = _titles.Count == 0 ? read : Apart.From(read, instance, mends);
            _titles[instance] = read.Title;
            foreach (Stage stage in procedure.Stages)
                foreach (Step step in stage.Steps)
                {
                    PlannedStep planned = new(new StepKey(instance, step.Id), step, stage, steps.Count);
                    if (_steps.TryAdd(planned.Key, planned)) steps.Add(planned);
                }
            foreach (Part part in procedure.Parts) _parts.TryAdd(part.Id, part);
            List<OilingPoint> own = [.. procedure.OilingPoints.Where(p => _points.TryAdd(p.Id, p))];
            if (procedure.Map is { } size && own.Any(p => p.On is not null)) maps.Add(new PointMap(procedure.Title, size, [.. own.Where(p => p.On is not null)]));
            if (procedure.Sheet is { } sheet) _sheets.TryAdd(instance, sheet);
            foreach (JobQuestion question in procedure.Asks) _questions.TryAdd(question.Fact, question);
        }
        foreach (Part part in added ?? []) _parts.TryAdd(part.Id, part);
        Steps = steps;
        _byStage = steps.ToLookup(s => (s.Key.Instance, s.Stage.Id.Value));
        Maps = maps;
        _holders = _parts.Values.Where(p => p.Seat is not null).ToLookup(p => p.Seat!.Value.Value, p => p.Id.Value);
        _looks = steps.SelectMany(s => s.Step.Examine.Select(e => (Part: e.Part?.Value ?? e.Spot.Value, Look: (s, Ask.ExamineKey(e.Spot), e)))).ToLookup(x => x.Part, x => x.Look);
        _baths = steps.SelectMany(s => s.Step.Clock is { } clock and not ClockFacet.Wait ? clock.Parts.Select(p => (Part: p.Value, s)) : []).ToLookup(x => x.Part, x => x.s);
        _coveredBy = _parts.Values.SelectMany(p => p.Under.Select(u => (Part: p.Id.Value, Cover: u.Value))).ToLookup(x => x.Cover, x => x.Part);
    }

    /// <summary>False if the workshop wants no second person to look: then no step asks for one.</summary>
    public bool AsksWitness { get; init; } = true;

    /// <summary>All steps in the suggested order.</summary>
    public IReadOnlyList<PlannedStep> Steps { get; }

    /// <summary>The steps of one stage of a joined procedure.</summary>
    public IEnumerable<PlannedStep> StepsOf(string instance, string stage) => _byStage[(instance, stage)];

    /// <summary>All parts.</summary>
    public IReadOnlyCollection<Part> Parts => _parts.Values;

    /// <summary>All oiling points.</summary>
    public IReadOnlyCollection<OilingPoint> Points => _points.Values;

    /// <summary>The maps that oiling points lie on: one for each procedure that has one. A point is on the first alone.</summary>
    public IReadOnlyList<PointMap> Maps { get; }

    /// <summary>The sheet of the part to be made in a joined procedure, or null.</summary>
    public PartSheet? SheetOf(string instance) => _sheets.GetValueOrDefault(instance);

    /// <summary>A step, or null.</summary>
    public PlannedStep? Find(StepKey key) => _steps.GetValueOrDefault(key);

    /// <summary>A part, or null.</summary>
    public Part? Part(string id) => _parts.GetValueOrDefault(id);

    /// <summary>A part's name, or its id if no procedure names it.</summary>
    public string NameOf(string part) => _parts.GetValueOrDefault(part)?.Name ?? part;

    /// <summary>The title of a joined procedure; empty if there is none of that name.</summary>
    public string TitleOf(string instance) => _titles.GetValueOrDefault(instance) ?? "";

    /// <summary>The baths, spin-offs and dryings that a part is named in, in the suggested order.</summary>
    public IEnumerable<PlannedStep> BathsOf(string part) => _baths[part];

    /// <summary>The looks that a part gets, each with its step, its ask's key and what may be seen.</summary>
    public IEnumerable<(PlannedStep Step, string Ask, ExamineFacet Facet)> LooksAt(string part) => _looks[part];

    /// <summary>An oiling point, or null.</summary>
    public OilingPoint? Point(string id) => _points.GetValueOrDefault(id);

    /// <summary>A question about the job, or null.</summary>
    public JobQuestion? Question(string fact) => _questions.GetValueOrDefault(fact);

    /// <summary>Screws and pins that hold a part.</summary>
    public IEnumerable<string> HoldersOf(string part) => _holders[part];

    /// <summary>Parts that lie under a part.</summary>
    public IEnumerable<string> CoveredBy(string part) => _coveredBy[part];

    /// <summary>The steps that belong to the job, or may, in the suggested order.</summary>
    public IEnumerable<PlannedStep> InForce(Job job) => Steps.Where(s => s.BelongsTo(job) != Belonging.No);

    /// <summary>The first fact that a step depends on and that is not answered yet, or null.</summary>
    public JobQuestion? OpenQuestion(PlannedStep step, Job job) =>
        step.Step.OnlyIf.Where(c => !job.Facts.ContainsKey(c.Fact)).Select(c => Question(c.Fact)).FirstOrDefault(q => q is not null);
}

/// <summary>The map of a procedure.</summary>
/// <param name="Title">The procedure's title.</param>
/// <param name="Size">Its frame in mm.</param>
/// <param name="Points">The points on it, in the order in which the procedure names them.</param>
public sealed record PointMap(string Title, MapSize Size, IReadOnlyList<OilingPoint> Points);

/// <summary>Whether a step belongs to a job.</summary>
public enum Belonging
{
    /// <summary>It does.</summary>
    Yes,

    /// <summary>A fact of the job rules it out.</summary>
    No,

    /// <summary>That depends on a fact that nobody has asked yet.</summary>
    Unasked,
}
