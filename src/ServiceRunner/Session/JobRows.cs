using ServiceRunner.Core.Jobs;
using ServiceRunner.Core.Quantities;
using ServiceRunner.Files.Index;
using ServiceRunner.Files.Sentences;

namespace ServiceRunner.Session;

/// <summary>What the index keeps of a job, so that the board can be shown without reading every job.</summary>
public static class JobRows
{
    /// <summary>A job's row. Without circumstances (a rebuild) what comes next is left open.</summary>
    public static SubjectRow Of(Job job, Plan plan, Circumstances? at)
    {
        (int done, int total) = Progress(job, plan);
        return new SubjectRow
        {
            Subject = job.Id,
            Kind = "job",
            Number = job.Number,
            Title = job.What,
            Owner = job.Owner,
            State = JobWords.Of(job.Phase),
            Since = job.Phase.Since.Wall,
            Done = done,
            Total = total,
            Waiting = Waiting(job, at),
            Serial = job.Intake.Serial,
            Promised = job.Intake.Promised,
            Until = job.Phase is Phase.Held held ? held.Until : null,
            Lots = [.. job.Points.Values.Select(p => p.Event.Batch).Where(b => b.Length > 0).Distinct().Order(StringComparer.Ordinal)],
            Servings = [.. job.Points.Values.Where(p => p.Event.Batch.Length > 0).OrderBy(p => p.Action).ThenBy(p => p.Event.Point, StringComparer.Ordinal)
                .Select(p => new ServedFrom(p.Event.Batch, p.Event.Point, plan.Point(p.Event.Point)?.Name ?? p.Event.Point, p.Action))],
            Open = !job.Phase.IsFinal,
        };
    }

    /// <summary>The bench's row; <see cref="SubjectRow.Done"/> is the number of the entry that last carried all forward.</summary>
    public static SubjectRow OfBench(string bench, int carriedAt, Moment now) =>
        new() { Subject = bench, Kind = "bench", Number = "", Title = "", Owner = "", State = "", Since = now.Wall, Done = carriedAt, Total = 0, Waiting = "", Lots = [], Open = true };

    /// <summary>Steps settled, and steps in the job.</summary>
    public static (int Done, int Total) Progress(Job job, Plan plan)
    {
        int done = 0, total = 0;
        foreach (PlannedStep step in plan.InForce(job))
        {
            total++;
            if (job.IsSettled(step.Key)) done++;
        }
        return (done, total);
    }

    private static string Waiting(Job job, Circumstances? at) => job.Phase switch
    {
        Phase.Held x => x.Until is { } day ? $"{x.Detail} (until {Days.Short(day, DateOnly.FromDateTime(x.Since.Wall.Date))})".Trim() : x.Detail,
        Phase.Paused x => x.Why,
        Phase.Stopped x => x.Reason,
        Phase.Aborted x => x.Reason,
        Phase.Running when at is not null && Offer.Of(job, at) is { } offer => OfferWords.Next(offer),
        _ => "",
    };
}
