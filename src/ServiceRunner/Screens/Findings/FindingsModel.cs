using ServiceRunner.Core.Jobs;
using ServiceRunner.Files.Sentences;
using ServiceRunner.Screens.Run;
using ServiceRunner.Session;

namespace ServiceRunner.Screens.Findings;

/// <summary>
/// What was found wrong or unusual in a job: how sure, what was decided, what each holds back, what it costs, and what
/// the owner said.
/// </summary>
public sealed partial class FindingsModel(Shell shell, OpenJob job, RunModel run) : JobScreen(shell, job)
{
    private readonly Dictionary<string, string> _titles = [];
    private Job? _seen;
    private IReadOnlyList<FindingEntry> _entries = [];
    private int _at;

    /// <inheritdoc/>
    public override string Name => "Findings";

    /// <inheritdoc/>
    public override string Head => $"{State.Number}: findings";

    /// <summary>The findings in the order noted.</summary>
    public IReadOnlyList<FindingEntry> Entries
    {
        get
        {
            // A job is another object after each act, and this is asked many times a second.
            if (!ReferenceEquals(_seen, State)) (_seen, _entries) = (State, FindingsLedger.Of(State, Job.Plan));
            return _entries;
        }
    }

    /// <summary>What they hold back.</summary>
    public Waits Waits => run.Waits;

    /// <summary>Which one is marked.</summary>
    public int At => Math.Clamp(_at, 0, Math.Max(0, Entries.Count - 1));

    /// <summary>The marked one, or null.</summary>
    public FindingEntry? Marked => Entries.Count == 0 ? null : Entries[At];

    private string WithOne => Over.Length > 0 ? Over : Marked is null ? "Nothing was found yet: n notes a finding." : "";

    private Repair? OpenRepair => Marked?.Repairs.FirstOrDefault(r => !r.IsFinished);

    private string WithRepair => Over.Length > 0 ? Over : OpenRepair is null ? "No repair for this finding is in the job, or it is at its end." : "";

    private string ForOwner => Over.Length > 0 ? Over : FindingsLedger.ToEstimate(State, Job.Plan).Count == 0 ? RejectionWords.Sentence(new Rejection.NothingToEstimate(), Job.Plan) : "";

    /// <inheritdoc/>
    public override IReadOnlyList<ScreenAction> Actions =>
    [
        new(["Enter", "PageDown"], "decide", "Decides the marked finding: mend it here, replace, send out, ask the owner, leave it, done with.", () => WithOne, Decide, 1),
        ScreenAction.Always("Down", "", "Marks the next finding.", () => _at = Math.Min(Entries.Count - 1, At + 1), 100),
        ScreenAction.Always("Up", "", "Marks the finding before.", () => _at = Math.Max(0, At - 1), 100),
        new(["n"], "new finding", "Notes something wrong or unusual.", () => Over, () => NewFinding.Ask(Shell, this, ""), 2),
        new(["g"], "go to its repair", "Takes up the repair of the marked finding.", () => WithRepair, GoToRepair, 3),
        new(["c"], "cost", "Says what the marked finding will cost in money and time.", () => WithOne, Price, 4),
        new(["e"], "estimate", "Writes the estimate down, as the owner is told it, and as a page to print, with the condition of the piece.", () => ForOwner, Estimate, 5),
        new(["a"], "owner's answer", "Writes down what the owner said, how and when.", () => ForOwner, Answer, 6),
        new(["w"], "weigh", "Says how much the marked finding weighs, and how sure it is.", () => WithOne, Weigh, 7),
        new(["p"], "picture", "Keeps a picture with the marked finding.", () => WithOne, Picture, 8),
        new(["x"], "give the repair up", "Passes over what is left of the repair, with the reason.", () => WithRepair, GiveUp, 9),
        new(["u"], "take back", "Takes the last act back; the log keeps that it was done.", () => NothingToTakeBack, TakeBack, 10),
        Parts.PartsModel.Reach(Shell, Job, () => Marked?.Noted.Event.Part ?? "", 101),
        ScreenAction.Always("Esc", "back", "Returns to the screen before.", () => Shell.GoBack(), 11),
    ];

    /// <summary>The title of the repair that the step names for the marked finding; empty if it names none.</summary>
    public string SuggestedTitle => Marked is { Suggested: { Length: > 0 } id } ? TitleOf(id) : "";

    private string TitleOf(string procedure) => _titles.TryGetValue(procedure, out string? known) ? known
        : _titles[procedure] = Session.Library.Read(procedure)?.Procedure?.Title ?? procedure;

    /// <summary>What a finding is, in a few words.</summary>
    public string Words(FindingEntry finding) => FindingWords.Of(finding.Noted.Event, Job.Plan);

    private void GoToRepair()
    {
        run.TakeUp(OpenRepair!.Instance);
        Shell.GoBack();
    }

    private void GiveUp()
    {
        Repair repair = OpenRepair!;
        Shell.Ask(Prompt.Words($"Why is '{repair.Title}' given up? {Times.Count(repair.Left, "step")} left.", "A few words; they are written down with your initials.", reason =>
            Complaint(Session.Act(Job, new JobAction.GiveUpRepair(repair.Instance, reason)), $"Given up: {repair.Title}.")));
    }

    private void Weigh()
    {
        FindingEntry finding = Marked!;
        NewFinding.AskWeight(Shell, Words(finding), (weight, sure) => Act(new JobAction.WeighFinding(finding.Id, weight, sure), $"Weighed: {JobWords.Of(weight)}, {JobWords.Of(sure)}."));
    }

    private void Picture()
    {
        FindingEntry finding = Marked!;
        Shell.Ask(Prompt.Words("Which file is the picture?", "Its path, as /home/me/pivot.jpg. JPEG or PNG; it is copied, and the file may go.", path =>
            Complaint(Session.KeepPhoto(Job, finding.Id, null, path, Words(finding)), "The picture is kept.")));
    }

    /// <inheritdoc/>
    public override void Draw(Sheet sheet, int top, int rows) => FindingsPage.Draw(sheet, top, rows, this, Shell);
}
