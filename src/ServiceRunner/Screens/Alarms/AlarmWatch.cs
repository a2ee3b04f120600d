using ServiceRunner.Core.Jobs;
using ServiceRunner.Core.Quantities;
using ServiceRunner.Files.Sentences;
using ServiceRunner.Session;

namespace ServiceRunner.Screens.Alarms;

/// <summary>An alarm that wants an answer.</summary>
public sealed record OpenAlarm(OpenJob Job, Soak Soak, Urgency Urgency)
{
    /// <summary>Names the clock, for whoever tells alarms.</summary>
    public string About => $"{Job.Id} {Soak.Begun.Step}";
}

/// <summary>
/// Watches every clock of the bench. An aim that is reached and a most that is passed want an answer; the most is told
/// again until it has one. Several are told one after the other, the most urgent first.
/// </summary>
public sealed class AlarmWatch(BenchSession session)
{
    // A most that is passed is told again after this time, until somebody answers.
    private static readonly TimeSpan Repeat = TimeSpan.FromSeconds(20);

    private readonly Dictionary<(string Job, StepRef Step), Told> _told = [];

    private HashSet<string> _open = [];

    private sealed record Told(Standing Standing, TimeSpan At);

    /// <summary>Alarms that want an answer, the most urgent and most overdue first.</summary>
    public IReadOnlyList<OpenAlarm> Open(Moment now) =>
        [.. session.RunningSoaks().Select(r => (r.Job, r.Soak, Urgency: r.Soak.Alarm(now))).Where(r => r.Urgency is not null)
            .OrderByDescending(r => r.Urgency).ThenByDescending(r => r.Soak.Length(now).Length - r.Soak.Window.Aim)
            .Select(r => new OpenAlarm(r.Job, r.Soak, r.Urgency!.Value))];

    /// <summary>
    /// What is to be told now, the most urgent first: each clock once when it comes to its least, its aim and past its most,
    /// and the last again and again. A clock that is met for the first time is told only if it wants an answer.
    /// </summary>
    /// <param name="now">The moment.</param>
    /// <param name="steady">A clock that nobody can set.</param>
    public IReadOnlyList<OpenAlarm> Due(Moment now, TimeSpan steady)
    {
        List<OpenAlarm> due = [];
        foreach ((OpenJob job, Soak soak) in session.RunningSoaks())
        {
            (string, StepRef) key = (job.Id, soak.Begun.Step);
            Standing standing = soak.Standing(now);
            Urgency? wants = soak.Alarm(now);
            Told? told = _told.GetValueOrDefault(key);
            bool changed = told is null ? wants is not null : standing > told.Standing;
            bool again = wants is Urgency.High && told is not null && steady - told.At >= Repeat;
            if (changed || again)
            {
                if (wants is { } urgency) due.Add(new OpenAlarm(job, soak, urgency));
                else if (standing == Standing.Within) due.Add(new OpenAlarm(job, soak, Urgency.Low));
            }
            if (told is null || changed || again || standing < told.Standing) _told[key] = new Told(standing, changed || again ? steady : told?.At ?? steady);
        }
        return [.. due.OrderByDescending(a => a.Urgency)];
    }

    /// <summary>What alarms were about that wanted an answer at the last look and want none now.</summary>
    public IReadOnlyList<string> Settled(Moment now)
    {
        HashSet<string> open = [.. Open(now).Select(a => a.About)];
        List<string> settled = [.. _open.Where(a => !open.Contains(a))];
        _open = open;
        return settled;
    }

    /// <summary>An alarm in words, for the screen and the voice: which jar it is comes first.</summary>
    public string Words(OpenAlarm alarm, Moment now)
    {
        Elapsed length = alarm.Soak.Length(now);
        return $"{JobWords.Clock(alarm.Soak.Begun, session.Workshop)}, {alarm.Job.State.Number}: {JobWords.Of(alarm.Soak.Standing(now), alarm.Soak.Window, length.Length)}";
    }
}
