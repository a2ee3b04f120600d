using ServiceRunner.Core.Benches;
using ServiceRunner.Core.Jobs;
using ServiceRunner.Core.Lubricants;
using ServiceRunner.Core.Procedures;
using ServiceRunner.Core.Quantities;
using ServiceRunner.Files.Sentences;
using ServiceRunner.Lines;
using ServiceRunner.Screens.Large;
using ServiceRunner.Screens.Oiling;
using ServiceRunner.Session;

namespace ServiceRunner.Screens.Run;

/// <summary>
/// One job, step by step. One key goes on, one looks back; while looking back, going on only returns. What going on
/// does is the job's <see cref="Core.Jobs.Offer"/>, and nothing else decides it.
/// </summary>
public sealed partial class RunModel : JobScreen
{
    private readonly KnockGuard _guard;
    // Somebody who types 22,5 at a question with choices means a figure, not two choices.
    private readonly KnockGuard _choices = new(TimeSpan.FromMilliseconds(400));
    private Job? _waitsOf;
    private Waits _waits = new([], 0);
    private StepKey? _chosen;
    private int? _back;
    private string _lastOffer = "";
    private bool _touched = true;

    public RunModel(Shell shell, OpenJob job) : base(shell, job)
    {
        _guard = new KnockGuard(TimeSpan.FromMilliseconds(shell.Session.Workshop.Pedal.DeadMilliseconds));
    }

    /// <inheritdoc/>
    public override string Name => "Run";

    /// <inheritdoc/>
    public override string Head => $"{State.Number}, {JobWords.Of(State.Phase)}: {State.What}";

    /// <summary>What going on would do.</summary>
    public Offer Offer
    {
        get
        {
            Circumstances at = Session.Circumstances(Job);
            Offer offer = Core.Jobs.Offer.Of(State, at);
            if (_chosen is not { } chosen || State.Phase is not Phase.Running) return offer;
            if (State.IsSettled(chosen) || Job.Plan.Find(chosen) is not { } step)
            {
                _chosen = null;
                return offer;
            }
            return offer is Core.Jobs.Offer.End ? offer : Core.Jobs.Offer.OfStep(State, step, at);
        }
    }

    /// <summary>The step that is shown: the one at hand, or the one looked back at.</summary>
    public PlannedStep? Shown => _back is { } back ? Settled[back] : Offer.About;

    /// <summary>True if the act and the clocks are shown in large letters, to be read from across the bench.</summary>
    public bool Large => Shell.Large;

    /// <summary>The repair that the shown step belongs to, or null.</summary>
    public Repair? RepairShown => Shown is { } step && !State.Repairs.IsEmpty ? Repair.AllOf(State, Job.Plan).FirstOrDefault(r => r.Instance == step.Key.Instance) : null;

    /// <summary>What waits for a fault, and how much does not.</summary>
    public Waits Waits
    {
        get
        {
            if (State.Findings.IsEmpty) return new Waits([], 0);
            if (!ReferenceEquals(_waitsOf, State)) (_waitsOf, _waits) = (State, Core.Jobs.Waits.Of(State, Job.Plan));
            return _waits;
        }
    }

    /// <summary>True while looking back.</summary>
    public bool LooksBack => _back is not null;

    /// <summary>What speaks against the step at hand.</summary>
    public IReadOnlyList<Blocker> Against => Shown is { } step && !LooksBack && State.Phase is Phase.Running && !State.Soaks.ContainsKey(State.At(step.Key))
        ? Blocker.Of(State, step, Job.Plan) : [];

    /// <summary>What speaks against serving the point at hand with what is offered.</summary>
    public IReadOnlyList<PointConcern> Concerns => !LooksBack && Offer is Offer.Answer { Ask: Ask.Oil oil, Act: JobAction.Answer { Value: AnswerValue.Served served } }
        && Session.Workshop.Lubricants.FirstOrDefault(l => l.Id.Value == served.Lubricant) is { } lubricant
        ? PointConcern.Of(oil.Point, lubricant, served.Batch, Session.Circumstances(Job)) : [];

    /// <summary>The steps that were settled, in the order of that.</summary>
    public IReadOnlyList<PlannedStep> Settled => [.. State.Steps.Values.Where(r => r.End is not null)
        .OrderBy(r => r.End!.At.Wall).ThenBy(r => Job.Plan.Find(r.Step.Key)?.Index ?? 0).Select(r => Job.Plan.Find(r.Step.Key)!).Where(s => s is not null)];

    /// <summary>The step after the one at hand, in the suggested order.</summary>
    public PlannedStep? Then => Shown is { } step && !LooksBack
        ? Job.Plan.Steps.Skip(step.Index + 1).FirstOrDefault(s => s.BelongsTo(State) != Belonging.No && !State.IsSettled(s.Key)) : null;

    /// <summary>Goes on, unless the key was held or knocked.</summary>
    public void GoOn()
    {
        if (!_guard.Admits(Shell.Steady))
        {
            Shell.Say(KnockGuard.Ignored(Session.Workshop.Pedal.DeadMilliseconds));
            return;
        }
        GoOnForSure();
    }

    /// <summary>Goes on without a look at the guard: what was typed in words was not knocked.</summary>
    public void GoOnForSure()
    {
        if (LooksBack)
        {
            _back = null;
            return;
        }
        Offer offer = Offer;
        if (offer is Offer.Answer { Ask: Ask.Oil oil } && RoleBottles.AskFirst(Shell, oil.Point.Role)) return;
        if (offer.Act is { } act) Act(act, DoneWords(offer));
        else if (offer is Offer.Answer { Ask: { Choices.Count: 0 } ask }) Type(ask);
        else Shell.Say(OfferWords.WhyNothing(offer, Session.Workshop, Job.Plan, Session.Now));
    }

    /// <summary>Takes up a repair: its first step that is not settled comes to hand.</summary>
    public void TakeUp(string instance)
    {
        _back = null;
        _chosen = Job.Plan.InForce(State).FirstOrDefault(s => s.Key.Instance == instance && !State.IsSettled(s.Key))?.Key;
    }

    /// <summary>Looks at the step settled before the one shown.</summary>
    public void LookBack()
    {
        if (Settled.Count == 0) Shell.Say("Nothing was done yet.");
        else _back = Math.Max(0, (_back ?? Settled.Count) - 1);
    }

    private string DoneWords(Offer offer) => offer switch
    {
        Offer.Start => "Begun.",
        Offer.Resume => "Look at what lies before you; then go on.",
        Offer.Begin x => $"The clock runs: {Times.Window(x.Facet.Window)}.",
        Offer.End x => $"Ended after {Times.Clock(x.Soak.Length(Session.Now).Length)}.",
        Offer.Do x => Moved(x.Step.Step),
        Offer.Answer { Act: JobAction.Leave } => "Nobody else works here: no second person looked.",
        Offer.Answer { Left: 1 } x => Moved(x.Step.Step),
        Offer.Answer x => $"Noted. {Times.Count(x.Left - 1, "question")} left in this step.",
        _ => "",
    };

    private string Moved(Step step)
    {
        if (step.Removes.Count == 0) return $"Done: {step.Do}.";
        IEnumerable<IGrouping<string, string>> places = step.Removes.Select(p => p.Value).GroupBy(p => Job.Plan.Part(p)?.Compartment ?? "", p => Job.Plan.NameOf(p));
        return $"Off: {Times.List(places.Select(g => $"{Times.List(g)}{(g.Key.Length > 0 ? $" to {JobWords.Compartment(g.Key)}" : "")}"))}.";
    }

    /// <inheritdoc/>
    public override void Tick()
    {
        // A clock that comes due changes what the key does; the foot may already be on its way down for something else.
        string offer = $"{Offer.GetType().Name} {Offer.About?.Key}";
        if (!_touched && offer != _lastOffer) _guard.OfferChanged(Shell.Steady);
        (_lastOffer, _touched) = (offer, false);
    }

    /// <inheritdoc/>
    public override void Touched() => _touched = true;

    /// <inheritdoc/>
    public override bool Press(Stroke key)
    {
        if (key.Name is not [>= '1' and <= '9']) return false;
        if (!_choices.Admits(Shell.Steady))
        {
            Shell.Say("Figures that follow each other so fast are not taken for choices; v types a figure.", refusal: true);
            return true;
        }
        return TakeNumber(key.Name[0] - '0');
    }

    /// <inheritdoc/>
    public override bool TakeNumber(int number)
    {
        number--;
        switch (Offer)
        {
            case Offer.Fact x when number >= 0 && number < x.Question.Answers.Count:
                Act(new JobAction.AnswerFact(x.Question.Fact, x.Question.Answers[number]), $"Noted: {x.Question.Answers[number]}.");
                return true;
            case Offer.Answer x when number >= 0 && number < x.Ask.Choices.Count:
                Act(new JobAction.Answer(x.Ask.Step, x.Ask.Key, new AnswerValue.Chosen(x.Ask.Choices[number])), $"Noted: {x.Ask.Choices[number]}.");
                return true;
            default:
                return false;
        }
    }

    private void Type(Ask ask) => Shell.Ask(new Prompt(AskWords.Question(ask), AskWords.Form(ask), "", text =>
        Answered(ask, text, "")));

    // A typed answer may make a deviation that wants its reason: then the next question is for that.
    private string Answered(Ask ask, string text, string reason)
    {
        JobAction.Answer answer = new(ask.Step, ask.Key, new AnswerValue.Typed(text), reason);
        ActOutcome outcome = Session.Act(Job, answer);
        if (outcome is ActOutcome.Refused { Why: Rejection.ReasonWanted wanted })
            return Shell.AskNext(Prompt.Reason(wanted.Kinds, why => Answered(ask, text, why)));
        return Complaint(outcome, $"Noted: {text.Trim()}.");
    }

    /// <inheritdoc/>
    public override IEnumerable<Telling> Sentences() => RunLines.Of(this, Shell);

    /// <inheritdoc/>
    public override IEnumerable<Telling> MoreSentences() => RunLines.More(this, Shell);

    /// <inheritdoc/>
    public override string Topic => $"{SpokenOffer.Key(Offer)} {_back}";

    /// <inheritdoc/>
    public override void Draw(Sheet sheet, int top, int rows)
    {
        if (Large) LargePage.Draw(sheet, top, rows, this, Shell);
        else RunPage.Draw(sheet, top, rows, this, Shell);
    }
}
