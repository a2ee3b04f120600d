using ServiceRunner.Core.Jobs;
using ServiceRunner.Files.Sentences;
using ServiceRunner.Screens.Run;

namespace ServiceRunner.Screens.Oiling;

/// <summary>
/// The oiling points of a job on the map of its movement and in a list. What going on does is what it does in Run, and is
/// done there: here it is only looked at from another side.
/// </summary>
public sealed class OilingModel(Shell shell, RunModel run) : ScreenModel(shell)
{
    private static readonly string[] Shared = ["b", "o", "l", "u", "f", "k"];
    private bool? _dialSide;
    private int? _at;

    /// <summary>The job, step by step.</summary>
    public RunModel Run => run;

    /// <inheritdoc/>
    public override string Name => "Oiling";

    /// <inheritdoc/>
    public override string Head => $"{run.Job.State.Number}, oiling: {run.Job.State.What}";

    /// <summary>The question at hand if it is about points, else null.</summary>
    public Ask? Question => run.Offer is Offer.Answer { Ask: Ask.Oil or Ask.StaysDry } answer ? answer.Ask : null;

    /// <summary>The points with how they stand.</summary>
    public IReadOnlyList<PointView> Points =>
        PointView.Of(run.Job.State, run.Job.Plan, Shell.Session.Workshop, Question is Ask.Oil oil ? oil.Point.Id.Value : "", Shell.Session.Now.Wall);

    /// <summary>The side that is turned to the repairer, where there is room for one: as chosen, else the next point's.</summary>
    public bool DialSide(IReadOnlyList<PointView> points) =>
        _dialSide ?? points.FirstOrDefault(p => p.Stand == PointStand.Next)?.Point?.On?.DialSide ?? false;

    /// <summary>The marked line of the list: as moved, else what is at hand, else the first that is to come.</summary>
    public int At(IReadOnlyList<PointView> points)
    {
        PointStand wanted = Question switch { Ask.Oil => PointStand.Next, Ask.StaysDry => PointStand.Dry, _ => PointStand.ToCome };
        return Math.Clamp(_at ?? points.ToList().FindIndex(p => p.Stand == wanted), 0, Math.Max(0, points.Count - 1));
    }

    private string NoPoint => Question is not null ? "" : $"No oiling point is at hand{(OfferWords.Next(run.Offer) is { Length: > 0 } next ? $", but '{next}'" : "")}; Esc returns to the step.";

    /// <inheritdoc/>
    public override IReadOnlyList<ScreenAction> Actions
    {
        get
        {
            IReadOnlyList<ScreenAction> actions = run.Actions;
            return
            [
                actions[0] with { WhyNot = () => NoPoint, Do = GoOn, Help = "Serves the next point, just as in Run." },
                new(["t"], "turn over", "Turns the movement over, where one side is shown at a time.", () => run.Job.Plan.Maps.Count == 0 ? "This movement has no map." : "", () => _dialSide = !DialSide(Points), 5),
                ScreenAction.Always("Down", "", "Marks the next point of the list.", () => _at = Math.Min(Points.Count - 1, At(Points) + 1), 100),
                ScreenAction.Always("Up", "", "Marks the point before.", () => _at = Math.Max(0, At(Points) - 1), 100),
                .. actions.Where(a => Shared.Contains(a.Keys[0])),
                ScreenAction.Always("Esc", "step", "Returns to the step.", () => Shell.GoBack(), 16),
            ];
        }
    }

    private void GoOn()
    {
        (_at, _dialSide) = (null, null);
        run.GoOn();
    }

    /// <inheritdoc/>
    public override bool Press(Stroke key) => Question is not null && run.Press(key);

    /// <inheritdoc/>
    public override void Touched() => run.Touched();

    /// <inheritdoc/>
    public override void Tick() => run.Tick();

    /// <inheritdoc/>
    public override void Draw(Sheet sheet, int top, int rows) => OilingPage.Draw(sheet, top, rows, this, Shell);
}
