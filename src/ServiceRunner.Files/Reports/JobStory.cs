using ServiceRunner.Core.Jobs;
using ServiceRunner.Core.Procedures;
using ServiceRunner.Core.Workshops;
using ServiceRunner.Files.Sentences;

namespace ServiceRunner.Files.Reports;

/// <summary>
/// What was done in a job, told once as data: the job, its plan and the workshop joined, ids turned into what they are
/// called. <see cref="TextReport"/> and <see cref="HtmlReport"/> only write it down.
/// </summary>
public sealed class JobStory
{
    private readonly Plan _plan;
    private readonly Workshop _workshop;

    /// <param name="job">The job.</param>
    /// <param name="plan">Its procedures.</param>
    /// <param name="workshop">The workshop.</param>
    /// <param name="owner">The owner's name; empty if none was given or it was erased.</param>
    /// <param name="head">The journal's head as the report is made.</param>
    public JobStory(Job job, Plan plan, Workshop workshop, string owner, string head)
    {
        (Job, _plan, _workshop, Owner, Head) = (job, plan, workshop, owner, head);
        Kept = [.. job.Log.Where(e => !job.TakenBack.Contains(e.Number)).SelectMany(e => e.Events)];
        Findings = FindingStories.Of(job, plan, workshop.Currency);
        OwnersWord = FindingStories.Owner(job, plan);
        Pictures = [.. job.Photos.Where(p => p.Event.Finding.Length == 0).Select(p => FindingStories.Picture(p.Event))];
        Deviations = [.. job.Deviations.Select(d => new DeviationLine(JobWords.DeviationKind(d.Event.Kind), Do(d.Event.Step), JobWords.DeviationDetail(d.Event), d.Event.Reason, d.By, d.At.Wall))];
        Stages = StageStories.Of(job, plan, Kept, workshop);
        BasketLines baskets = new(job, plan);
        Soaks = [.. job.Soaks.Values.OrderBy(s => s.BegunAt.Wall).Select(s => Soak(s, baskets))];
        Baskets = baskets.All;
        Points = PointLines.Of(job, plan, workshop);
        Maps = [.. plan.Maps.Select(m => new MapStory(m, Points.Where(p => m.Points.Any(o => o.Id.Value == p.Id)).ToDictionary(p => p.Id)))];
        Rates = [.. Kept.OfType<JobEvent.RateTaken>().GroupBy(r => r.Step).Select(g => new RateLines(Stage(g.Key), [.. g]))];
        Parts = PartsStory.Of(job, plan);
        Marks = [.. job.Marks.Select(m => new MarkLine(Do(m.Event.Step), m.By, m.At.Wall))];
        Owed = Owed.Of(job, plan);
    }

    /// <summary>The job itself, for what needs no words.</summary>
    public Job Job { get; }

    /// <summary>The workshop's name.</summary>
    public string Workshop => _workshop.Name;

    /// <summary>The owner's name; empty if none was given or it was erased.</summary>
    public string Owner { get; }

    /// <summary>The journal's head as the report was made.</summary>
    public string Head { get; }

    /// <summary>Why the job could not be read to its end, as a sentence; empty if it could.</summary>
    public string ReadOnlyUpTo { get; init; } = "";

    /// <summary>Every event that was not taken back.</summary>
    public IReadOnlyList<JobEvent> Kept { get; }

    /// <summary>Findings in the order noted.</summary>
    public IReadOnlyList<FindingLine> Findings { get; }

    /// <summary>What the owner was told and answered, in order.</summary>
    public IReadOnlyList<OwnerLine> OwnersWord { get; }

    /// <summary>Pictures that are of no finding.</summary>
    public IReadOnlyList<PictureLine> Pictures { get; }

    /// <summary>Deviations in the order noted.</summary>
    public IReadOnlyList<DeviationLine> Deviations { get; }

    /// <summary>Stages in the plan's order, with the steps that were touched.</summary>
    public IReadOnlyList<StageStory> Stages { get; }

    /// <summary>Clocks in the order begun.</summary>
    public IReadOnlyList<SoakLine> Soaks { get; }

    /// <summary>Baskets that several clocks had, or that hold many parts.</summary>
    public IReadOnlyList<BasketLine> Baskets { get; }

    /// <summary>Oiling points in the plan's order, then those that no procedure names.</summary>
    public IReadOnlyList<PointLine> Points { get; }

    /// <summary>The maps that points lie on.</summary>
    public IReadOnlyList<MapStory> Maps { get; }

    /// <summary>Rates by the step that took them.</summary>
    public IReadOnlyList<RateLines> Rates { get; }

    /// <summary>What became of the parts.</summary>
    public IReadOnlyList<PartsLine> Parts { get; }

    /// <summary>Marked moments.</summary>
    public IReadOnlyList<MarkLine> Marks { get; }

    /// <summary>What the job owes.</summary>
    public Owed Owed { get; }

    /// <summary>What is owed in a few words.</summary>
    public string OwedBriefly => OfferWords.OwedWords(Owed, _plan);

    /// <summary>What is owed, one by one.</summary>
    public IEnumerable<(string Kind, string Name)> OwedEach =>
    [
        .. Owed.Steps.Select(s => ("step", _plan.Find(s)?.Step.Do ?? s.Step)),
        .. Owed.Parts.Select(p => ("part", _plan.NameOf(p))),
        .. Owed.Points.Select(p => ("oiling point", _plan.Point(p)?.Name ?? p)),
        .. Owed.Soaks.Select(s => ("running clock", Do(s))),
    ];

    /// <summary>Questions about the movement and their answers, by the question.</summary>
    public IEnumerable<(string Question, string Answer)> Facts =>
        Job.Facts.Select(f => (_plan.Question(f.Key)?.Ask ?? AskWords.Spoken(f.Key), f.Value)).OrderBy(f => f.Item1, StringComparer.Ordinal);

    /// <summary>Who wrote in the log: initials, and the name where the workshop file has one.</summary>
    public IEnumerable<(string Initials, string Name)> People =>
        Job.Log.Select(e => e.By).Where(b => b.Length > 0).Distinct().Select(b => (b, _workshop.People.FirstOrDefault(p => p.Initials.Value == b)?.Name ?? ""));

    /// <summary>Steps done, passed over, and in the job.</summary>
    public (int Done, int PassedOver, int All) Progress
    {
        get
        {
            List<StepEnd?> ends = [.. _plan.InForce(Job).Select(s => Job.Steps.GetValueOrDefault(s.Key)?.End)];
            return (ends.Count(e => e is { Done: true }), ends.Count(e => e is { Done: false }), ends.Count);
        }
    }

    private string Do(StepRef? step) => step is { } s ? _plan.Find(s.Key)?.Step.Do ?? s.Step : "";

    // The rates as received and those at the end may be taken by steps that say the same.
    private string Stage(StepRef step) =>
        $"{(_plan.Find(step.Key) is { } planned ? $"{planned.Stage.Title}: " : "")}{Do(step)}{(step.Occurrence > 1 ? $" (time {step.Occurrence})" : "")}";

    private SoakLine Soak(Soak s, BasketLines baskets)
    {
        (string basket, IReadOnlyList<string> without) = baskets.Of(s.Begun);
        return new(JobWords.Clock(s.Begun, _workshop), s.Begun.Window, s.Ended?.Length, s.Ended?.Certain ?? true, [.. s.Begun.Parts.Select(_plan.NameOf)], s.By, s.BegunAt.Wall)
        {
            Basket = basket,
            Without = without,
        };
    }
}
