using ServiceRunner.Core.Benches;
using ServiceRunner.Core.Jobs;
using ServiceRunner.Core.Procedures;
using ServiceRunner.Core.Quantities;
using ServiceRunner.Files.Sentences;
using ServiceRunner.Screens.Baths;
using ServiceRunner.Screens.Oiling;
using ServiceRunner.Screens.Parts;
using ServiceRunner.Screens.Pick;
using ServiceRunner.Session;

namespace ServiceRunner.Screens.Run;

public sealed partial class RunModel
{
    private Ask? AskAtHand => !LooksBack && Offer is Offer.Answer answer ? answer.Ask : null;

    private PlannedStep? StepAtHand => LooksBack ? null : Shown;

    private string Unless(bool possible, string whyNot) => NotRunning.Length > 0 ? NotRunning : possible ? "" : whyNot;

    /// <inheritdoc/>
    public override IReadOnlyList<ScreenAction> Actions =>
    [
        new([.. Session.Workshop.Pedal.GoOn.Select(k => k.Value)], LooksBack ? "return" : OfferWords.Key(Offer, Session.Workshop),
            "Goes on: does the one thing named beside the key. A key held down goes on once.", () => "", GoOn, 0),
        new([.. Session.Workshop.Pedal.Back.Select(k => k.Value)], "look back", "Shows what was done before; going on returns.", () => "", LookBack, 3),
        new(["v"], "type it", "Types the answer to the question at hand: a figure, a state, what else is seen.",
            () => Unless(AskAtHand is { Typable: true }, "Nothing here wants typing."), () => Type(AskAtHand!), AskAtHand is { Typable: true } ? 1 : 60),
        new(["l"], "leave open", "Leaves the question at hand without an answer; that is a deviation.",
            () => Unless(AskAtHand is not null, "No question is open here."), () => Act(new JobAction.Leave(AskAtHand!.Step, AskAtHand.Key), "Left open, and written down."), 20),
        new(["b"], "bottle", "Chooses the bottle for the role at hand, for this session; or takes a new one into use.",
            () => Unless(AskAtHand is Ask.Oil oil && RoleBottles.Lubricants(Shell, oil.Point.Role).Count > 0, "No lubricant of the shelf is at hand here."), () => RoleBottles.Choose(Shell, ((Ask.Oil)AskAtHand!).Point.Role), AskAtHand is Ask.Oil ? 2 : 60),
        new(["o"], "other lubricant", "Serves the point at hand with another lubricant of the shelf.",
            () => Unless(AskAtHand is Ask.Oil && Session.Workshop.Lubricants.Count > 0, "No point is at hand, or the workshop file names no lubricant."), OtherLubricant, 61),
        InstrumentAction,
        new(["e"], "end the clock", "Ends a clock now, also before its aim.",
            () => !State.RunningSoaks.IsEmpty ? "" : "No clock of this job runs.", () => OneClock("End which clock?", End), 5),
        new(["+"], "more time", "Gives a clock more time: its aim moves, its most stays.",
            () => !State.RunningSoaks.IsEmpty ? "" : "No clock of this job runs.", () => OneClock("More time for which clock?", s => ClockTime.Ask(Shell, Job, s)), 17),
        new(["s"], "pass over", "Passes over the step; that is a deviation.",
            () => Unless(StepAtHand is not null, "No step is at hand."), () => Act(new JobAction.Skip(State.At(StepAtHand!.Key)), $"Passed over: {StepAtHand!.Step.Do}."), 10),
        new(["u"], "take back", "Takes the last act back; the log keeps that it was done.",
            () => NothingToTakeBack, TakeBack, 4),
        new(["f"], "finding", "Notes something wrong or unusual.", () => Over, () => Findings.NewFinding.Ask(Shell, this, ""), 6),
        ScreenAction.Always("F5", "findings", "Shows what was found in this job, what was decided, what waits for it and what the owner said.", () => Shell.Go(new Findings.FindingsModel(Shell, Job, this)), 11),
        new(["p"], "pause", "Marks the place when you turn away.", () => NotRunning, () => Act(new JobAction.Pause(""), "The place is marked."), 7),
        new(["h"], State.Phase is Phase.Held ? "end the wait" : "let it wait", "Lets the job wait for the owner, a part or a day; or ends that, with the tray looked through first.",
            () => State.Phase is Phase.Running or Phase.Paused or Phase.Held ? "" : NotRunning, Hold, 8),
        new(["g"], "go to a step", "Takes another step than the one suggested.",
            () => NotRunning, ChooseStep, 12),
        new(["a"], "done meanwhile", "Enters steps that were done away from the screen, with the time as you remember it.",
            () => Unless(StepAtHand is not null, "No step is at hand."), EnterAfterwards, 13),
        new(["r"], "do it again", "Takes the step that you look back at up once more.",
            () => Unless(LooksBack, "Look back at the step first."), Again, LooksBack ? 1 : 62),
        new(["m"], "move a part", "Says what became of a part: moved, set aside, sent out, lost, found, replaced, cleaned, a finding on it.",
            () => State.Phase.IsFinal ? NotRunning : "", () => new PartActs(Shell, this).OpenOne(), 14),
        PartsModel.Reach(Shell, Job, () => PartsModel.FirstOf(StepAtHand?.Step)),
        new(["k"], "mark", "Marks the moment, to be looked at when the hands are free; it stands in the report.",
            () => State.Phase.IsFinal ? NotRunning : "", Mark, 18),
        new(["d"], "done otherwise", "Notes that something was done in another way than written.",
            () => State.Phase.IsFinal ? NotRunning : "", NoteDeviation, 15),
        new(["c"], "close", "Closes the job; with something owed it wants a reason.", () => NotRunning, Close, Offer is Offer.Close ? 1 : 63),
        new(["x"], "return or break off", "Ends the job before its end: returned unrepaired, or broken off; with the reason.", () => State.Phase.IsFinal ? NotRunning : "", EndJob, 64),
        .. IntakeActions,
        new(["F7"], "oiling", "Shows the map of the movement with its oiling points, and the list of them.",
            () => Job.Plan.Points.Count == 0 ? "This job has no oiling points." : "", ShowPoints, AskAtHand is Ask.Oil ? 4 : 95),
        ScreenAction.Always("Esc", "bench", "Returns to the bench; clocks go on.", () => Shell.GoBack(), 16),
    ];

    /// <summary>Marks the moment.</summary>
    public void Mark() => Act(new JobAction.Mark(StepAtHand is { } step ? State.At(step.Key) : null), "The moment is marked.");

    /// <inheritdoc/>
    protected override void TakeBack()
    {
        _back = null;
        base.TakeBack();
    }

    private void OneClock(string which, Action<Soak> act)
    {
        List<Soak> running = [.. State.RunningSoaks];
        if (running is [var only]) act(only);
        else Shell.Choose(which, [.. running.Select(s => new Choice(JobWords.Clock(s.Begun, Session.Workshop), Times.Clock(s.Length(Session.Now).Length), () => act(s)))]);
    }

    private void End(Soak soak) => Act(new JobAction.EndSoak(soak.Begun.Step), $"Ended after {Times.Clock(soak.Length(Session.Now).Length)}.");

    private void ShowPoints()
    {
        _back = null;
        Shell.Go(new OilingModel(Shell, this));
    }

    private void OtherLubricant()
    {
        Ask.Oil oil = (Ask.Oil)AskAtHand!;
        Shell.Choose($"{oil.Point.Name}: served with what?", [.. Session.Workshop.Lubricants.Select(l => new Choice(l.Name, Times.List(l.Roles.Select(r => JobWords.Role(r))), () =>
            Act(new JobAction.Answer(oil.Step, oil.Key, new AnswerValue.Served(l.Id, Session.Bench.BatchNames.GetValueOrDefault(l.Id) ?? "")), $"Served with {l.Name}.")))]);
    }

    private void NoteDeviation() => Shell.Ask(Prompt.Because("What was done in another way, and why?", "A few words.", text =>
        Complaint(Session.Act(Job, new JobAction.NoteDeviation(StepAtHand is { } step ? State.At(step.Key) : null, text)), "Written down.")));

    private void Hold()
    {
        if (State.Phase is Phase.Held)
        {
            if (PartsLedger.InTray(State).Count > 0) Shell.Go(new TrayCheckModel(Shell, Job));
            else Act(new JobAction.Restart(), "On the bench again.");
            return;
        }
        Shell.Choose("What does it wait for?",
        [
            new Choice("The owner's word", "", () => AskHold(HoldFor.Owner)),
            new Choice("A part", "", () => AskHold(HoldFor.Part)),
            new Choice("A day", "", () => AskHold(HoldFor.Day)),
            new Choice("Something else", "", () => AskHold(HoldFor.Other)),
        ]);
    }

    private void AskHold(HoldFor what) => Shell.Ask(new Prompt("What exactly?", "As: a fourth wheel, ordered today.", "", detail =>
        what is HoldFor.Day or HoldFor.Part ? AskUntil(what, detail.Trim()) : AskCondition(what, detail.Trim(), null)));

    private string AskUntil(HoldFor what, string detail) => Shell.AskNext(new Prompt("Until which day, if it is known?", DayText.Ahead, "", text =>
    {
        DateOnly today = Session.Now.Day;
        if (DayText.Read(text, today, ahead: true, out DateOnly? read) is { Length: > 0 } no) return no;
        if (read is not { } day) return AskCondition(what, detail, null);
        return day < today ? $"{Days.Long(day)} has passed already." : AskCondition(what, detail, day);
    }));

    private string AskCondition(HoldFor what, string detail, DateOnly? until) =>
        Shell.AskNext(new Prompt("In which condition does it lie?", "What makes it keep: power off, balance secured, covered.", State.Power == Power.Off ? "power off, covered" : "", condition =>
            condition.Trim().Length == 0 ? "Say in which condition it can wait."
                : Answer(new JobAction.Hold(what, detail, condition.Trim(), until), until is { } day ? $"It waits until {Days.Short(day, Session.Now.Day)}." : "It waits.")));

    private void ChooseStep()
    {
        Holding holding = Holding.Of(State, Job.Plan);
        Shell.Choose("Go to which step?", [.. Job.Plan.InForce(State).Where(s => !State.IsSettled(s.Key)).Select(s =>
            new Choice(s.Step.Do, s.Stage.Title + (Blocker.Of(State, s, Job.Plan, holding) is [var first, ..] ? $": {RejectionWords.Sentence(first, Job.Plan)}" : ""), () => _chosen = s.Key))]);
    }

    private void EnterAfterwards()
    {
        List<PlannedStep> open = [.. Job.Plan.InForce(State).Where(s => s.Index >= StepAtHand!.Index && s.BelongsTo(State) == Belonging.Yes && !State.IsSettled(s.Key))];
        Shell.Choose("Done up to and with which step?", [.. open.Select((s, i) => new Choice(s.Step.Do, s.Stage.Title, () =>
            Shell.Ask(new Prompt($"When were the {Times.Count(i + 1, "step")} done?", "As: 14:30, or 2026-11-23 14:30.", Session.Now.Wall.ToString("H:mm", System.Globalization.CultureInfo.InvariantCulture), text =>
                Remembered(text) is not { } when ? $"'{text.Trim()}' is not a time; type 14:30 or 2026-11-23 14:30."
                    : Complaint(Session.Act(Job, new JobAction.EnterAfterwards([.. open.Take(i + 1).Select(x => State.At(x.Key))], when)), $"{Times.Count(i + 1, "step")} entered afterwards.")))))]);
    }

    private DateTimeOffset? Remembered(string text)
    {
        DateTimeOffset now = Session.Now.Wall;
        if (TimeOnly.TryParseExact(text.Trim(), ["H:mm", "HH:mm"], System.Globalization.CultureInfo.InvariantCulture, System.Globalization.DateTimeStyles.None, out TimeOnly time))
        {
            DateTimeOffset today = new(DateOnly.FromDateTime(now.Date).ToDateTime(time), now.Offset);
            return today > now ? today.AddDays(-1) : today;
        }
        return DateTime.TryParseExact(text.Trim(), ["yyyy-MM-dd H:mm", "yyyy-MM-dd HH:mm"], System.Globalization.CultureInfo.InvariantCulture, System.Globalization.DateTimeStyles.None, out DateTime day)
            ? new DateTimeOffset(day, now.Offset) : null;
    }

    private void Again()
    {
        PlannedStep step = Shown!;
        _back = null;
        if (Act(new JobAction.Again(step.Key), $"To be done again: {step.Step.Do}.")) _chosen = step.Key;
    }

    private void Close()
    {
        Owed owed = Owed.Of(State, Job.Plan);
        if (owed.IsNothing) Act(new JobAction.Complete(""), "The job is closed; nothing is owed.");
        else Shell.Ask(Prompt.Because($"Owed: {OfferWords.OwedWords(owed, Job.Plan)}. Why close it all the same?", "A reason; it is written down with your initials.", reason =>
            Complaint(Session.Act(Job, new JobAction.Complete(reason)), "The job is closed with something owed.")));
    }

    private string StillOff => Owed.Of(State, Job.Plan).Parts.Count is > 0 and var parts ? $" {Times.Count(parts, "part")} still off the movement." : "";

    private void EndJob() => Shell.Choose("How does it end?",
    [
        new Choice("Returned unrepaired", "in order, as it can be given back", StopJob),
        new Choice("Broken off", "something went wrong", () => Shell.Ask(Prompt.Because($"Why is it broken off?{StillOff}", "A reason.", reason => Complaint(Session.Act(Job, new JobAction.Abort(reason)), "Broken off.")))),
    ]);

    private void StopJob() => Shell.Ask(Prompt.Because($"Why is it returned unrepaired?{StillOff}", "A reason.", reason =>
        Complaint(Session.Act(Job, new JobAction.Stop(reason)), "Returned unrepaired.")));
}
