using ServiceRunner.Core.Benches;
using ServiceRunner.Core.Jobs;
using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Files.Sentences;

/// <summary>A refusal as one clear sentence: what, and what to do.</summary>
public static class RejectionWords
{
    /// <summary>The sentence of a job's refusal.</summary>
    public static string Sentence(Rejection why, Plan plan) => why switch
    {
        Rejection.NoSuchJob => "There is no such job here.",
        Rejection.AlreadyOpen x => $"Job {x.Number} is booked in already.",
        Rejection.NotNow { Phase: Phase.Idle } => "This job is booked in but not begun: go on to begin it.",
        Rejection.NotNow { Phase: Phase.Paused } => "This job is interrupted: go on to come back to it.",
        Rejection.NotNow { Phase: Phase.Held } x => $"This job is {JobWords.Of(x.Phase)}: restart it first.",
        Rejection.NotNow x => $"This job is {JobWords.Of(x.Phase)}: nothing more can be done in it.",
        Rejection.NoSuchStep x => $"This job has no step '{x.Step.Step}' now.",
        Rejection.AlreadySettled x => $"'{Do(plan, x.Step)}' is settled already: take it back, or take it up again.",
        Rejection.NotSettled x => $"'{plan.Find(x.Step)?.Step.Do ?? x.Step.Step}' is not done yet.",
        Rejection.StillAsks x => $"This step still asks: {AskWords.Question(x.Ask)}",
        Rejection.NothingAsked => "The step does not ask that now.",
        Rejection.NotAChoice x => $"'{x.Answer}' is not among the answers: {Times.List(x.Ask.Choices)}.",
        Rejection.OnlyYes x => $"'{x.Answer}' does not say what you see. {AskWords.Question(x.Ask)}",
        Rejection.NothingTyped => "Nothing was typed.",
        Rejection.NotANumber { Fault: TypedNumber.Fault.Ambiguous } x => $"'{x.Text}' can be read in two ways: type it with a point, as 1.234, or without one.",
        Rejection.NotANumber x => $"'{x.Text}' is not a number. {AskWords.Form(x.Ask)}",
        Rejection.NumberOutOfSense x => $"'{x.Text}' makes no sense here. {AskWords.Form(x.Ask)}",
        Rejection.ReasonWanted x => $"The workshop wants a reason: {Times.List(x.Kinds.Select(JobWords.DeviationKind))}.",
        Rejection.NoClock => "This step has no clock.",
        Rejection.ClockRuns x => $"The clock of '{Do(plan, x.Step)}' runs: end it first.",
        Rejection.ClockDoesNotRun x => $"The clock of '{Do(plan, x.Step)}' does not run.",
        Rejection.NoAlarm => "No alarm wants an answer.",
        Rejection.NoTime => "Say how much more: 2 min, 30 s.",
        Rejection.JarInUse x => $"There is a basket in jar {x.Jar} already.",
        Rejection.NoSuchLubricant x => $"The shelf has no lubricant '{x.Lubricant}'.",
        Rejection.NothingToTakeBack => "There is nothing to take back.",
        Rejection.CannotTakeBack => "That cannot be taken back.",
        Rejection.NoSuchAnswer x => $"'{x.Answer}' is not an answer to '{x.Fact}'.",
        Rejection.InTheFuture => "That time has not come yet.",
        Rejection.SamePerson => "A witness is somebody else.",
        Rejection.TrayUnchecked x => $"{Times.Count(x.Off.Count, "part")} should lie in the tray: look first whether they do.",
        Rejection.NoSuchPart x => $"This job has no part '{x.Part}' there.",
        Rejection.NoSuchFinding => "This job has no such finding.",
        Rejection.RepairAlreadyIn x => $"'{x.Title}' is in the job for this finding already.",
        Rejection.NoSuchRepair => "There is no such repair, or nothing of it is left.",
        Rejection.NothingToEstimate => "No finding waits for the owner: decide first which are to be mended, replaced, sent out or asked about.",
        Rejection.BelowNought => "A figure below nought makes no sense here.",
        Rejection.NothingToWash x => $"No bath of this job left {plan.NameOf(x.Part)} out.",
        _ => throw new InvalidOperationException($"no sentence for {why.GetType().Name}"),
    };

    /// <summary>The sentence of a refusal at the bench.</summary>
    public static string Sentence(BenchRejection why) => why switch
    {
        BenchRejection.AlreadyBegun => "This bench's log is begun already.",
        BenchRejection.NoSuchPerson => "Nobody of these initials is in the workshop file; add a line under 'people'.",
        BenchRejection.NotSignedIn => "This repairer is not signed in.",
        BenchRejection.NoSuchJar => "The workshop file has no such jar.",
        BenchRejection.JarInUse => "There is a basket in it: end the soak first.",
        BenchRejection.NoSuchLubricant => "The workshop file has no such lubricant.",
        BenchRejection.NoSuchInstrument => "The workshop file has no such instrument for this unit.",
        BenchRejection.NothingTyped => "Nothing was typed.",
        BenchRejection.NoSuchBottle => "The shelf has no such bottle.",
        BenchRejection.OpenedInFuture => "A bottle cannot have been opened on a day that has not come; look at the date.",
        BenchRejection.DatesCrossed => "It cannot be good until a day before it was opened; look at the dates.",
        BenchRejection.NoSuchTemperature => "A bench has between -10 and 50 °C; look at the figure.",
        _ => throw new InvalidOperationException("no sentence for a refusal"),
    };

    /// <summary>What speaks against a step.</summary>
    public static string Sentence(Blocker blocker, Plan plan) => blocker switch
    {
        Blocker.StepFirst x => $"first: {plan.Find(x.Step)?.Step.Do ?? x.Step.Step}",
        Blocker.StageFirst x => $"{Times.Count(x.Left, "step")} left in {plan.Steps.FirstOrDefault(s => s.Stage.Id.Value == x.Stage)?.Stage.Title ?? x.Stage}",
        Blocker.InSoak x => $"{plan.NameOf(x.Part)} is still in '{Do(plan, x.Soak)}'",
        Blocker.AlreadyOff x => $"{plan.NameOf(x.Part)} is off already",
        Blocker.AlreadyOn x => $"{plan.NameOf(x.Part)} is on already",
        Blocker.NotAtHand x => $"{plan.NameOf(x.Part)} is {JobWords.Of(x.Place)}",
        Blocker.Covered x => $"{plan.NameOf(x.By)} is still over {plan.NameOf(x.Part)}",
        Blocker.SeatEmpty x => $"{plan.NameOf(x.Seat)}, which {plan.NameOf(x.Part)} holds, is off",
        Blocker.WouldCover x => $"{plan.NameOf(x.Under)} goes under {plan.NameOf(x.Part)} and is off",
        Blocker.PowerIsOn x => $"the power is on, and {plan.NameOf(x.Part)} is under it: let the mainspring down first",
        Blocker.NotCleaned x => $"{plan.NameOf(x.Part)} was not cleaned",
        Blocker.StillWet x => $"{plan.NameOf(x.Part)} came out of a bath and was not dried",
        Blocker.NotInspected x => $"nobody looked {plan.NameOf(x.Part)} over",
        Blocker.RepairFirst x => $"{plan.NameOf(x.Part)} is in '{plan.TitleOf(x.Instance)}', {Times.Count(x.Left, "step")} left",
        Blocker.FindingStops x => $"a finding stops {(x.Part.Length > 0 ? plan.NameOf(x.Part) : "the work")} until it is decided: {x.What}",
        Blocker.NoConsent x => $"'{plan.TitleOf(x.Instance)}' costs, and the owner has not agreed",
        _ => throw new InvalidOperationException($"no sentence for {blocker.GetType().Name}"),
    };

    private static string Do(Plan plan, StepRef step) => plan.Find(step.Key)?.Step.Do ?? step.Step;
}
