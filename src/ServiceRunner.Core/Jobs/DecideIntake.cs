namespace ServiceRunner.Core.Jobs;

public static partial class Decider
{
    private static Decision NoteIntake(Job job, JobAction.NoteIntake x, Circumstances at)
    {
        if (x.CostLimit is { Value: < 0 }) return Refuse(new Rejection.BelowNought());
        JobEvent.IntakeNoted noted = Noted(x, job.Intake, at);
        return Fold.IntakeOf(noted) == job.Intake ? new Decision.Accepted([]) : Accept(noted);
    }

    private static Decision NameOwner(Job job, JobAction.NameOwner x) =>
        x.Owner == job.Owner ? new Decision.Accepted([]) : Accept(new JobEvent.OwnerNamed(x.Owner));

    // Booking is one entry: what was noted at the counter stands beside the opening.
    private static Decision Open(JobAction.Open open, Circumstances at)
    {
        if (open.Intake?.CostLimit is { Value: < 0 }) return Refuse(new Rejection.BelowNought());
        JobEvent.IntakeNoted? noted = open.Intake is { } x ? Noted(x, Intake.None, at) : null;
        return Accept(
        [
            new JobEvent.Opened(open.Number, open.What, open.Owner),
            .. noted is null || Fold.IntakeOf(noted) == Intake.None ? Array.Empty<JobEvent>() : [noted],
            .. open.Procedures,
            .. open.Facts.Select(f => new JobEvent.FactAnswered(f.Key, f.Value)),
        ]);
    }

    // A limit that is not touched keeps the currency that it was agreed in, whatever the workshop file says by now.
    private static JobEvent.IntakeNoted Noted(JobAction.NoteIntake x, Intake before, Circumstances at) =>
        new(x.Serial.Trim(), x.Accessories.Trim(), x.Promised, x.CostLimit,
            x.CostLimit is not { } limit ? "" : before.CostLimit == limit ? before.Currency : at.Workshop.Currency, x.Condition.Trim());
}
