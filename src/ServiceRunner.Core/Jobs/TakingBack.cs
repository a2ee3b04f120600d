namespace ServiceRunner.Core.Jobs;

/// <summary>Which actions can be taken back: acts of work. What changed the job's phase has its own way back.</summary>
public static class TakingBack
{
    /// <summary>True if an entry can be taken back.</summary>
    public static bool CanTakeBack(this Job job, LogEntry entry) =>
        !job.TakenBack.Contains(entry.Number) && entry.Events.Count > 0 && !IsWorkedOn(job, entry) && entry.Events.All(e => e is not (
            JobEvent.AlarmAnswered or JobEvent.Opened or JobEvent.TakenBack or JobEvent.Started or JobEvent.Paused or JobEvent.Resumed
            or JobEvent.Held or JobEvent.Restarted or JobEvent.Stopped or JobEvent.Aborted or JobEvent.Completed));

    // A repair can be taken out again as long as nothing was done in it; after that it is given up instead.
    private static bool IsWorkedOn(Job job, LogEntry entry) =>
        entry.Events.OfType<JobEvent.ProcedureJoined>().Any(j => job.Steps.Keys.Any(k => k.Instance == j.Instance));

    /// <summary>The last entry that can be taken back, or null.</summary>
    public static LogEntry? LastToTakeBack(this Job job)
    {
        for (int i = job.Log.Count - 1; i >= 0; i--)
            if (job.CanTakeBack(job.Log[i])) return job.Log[i];
        return null;
    }
}
