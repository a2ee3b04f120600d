using System.Diagnostics;
using ServiceRunner.Core.Benches;
using ServiceRunner.Core.Jobs;
using ServiceRunner.Core.Lubricants;
using ServiceRunner.Core.Quantities;
using ServiceRunner.Core.Workshops;
using ServiceRunner.Files.Data;
using ServiceRunner.Files.Events;
using ServiceRunner.Files.Index;
using ServiceRunner.Files.Journal;
using ServiceRunner.Files.Machine;
using ServiceRunner.Files.Procedures;

namespace ServiceRunner.Session;

/// <summary>
/// A bench with its data folder open: decides actions, writes them down, and only then lets the state follow. Screens
/// and verbs work through it, so that they can never disagree.
/// </summary>
public sealed class BenchSession : IDisposable
{
    // Opening reads the bench's lines since it last carried all forward; this bounds how many.
    private const int CarryAfter = 300;

    private readonly JobLog _log;
    private readonly MachineClock _clock;
    private readonly JobReader _reader;
    private readonly Dictionary<string, OpenJob> _open = [];
    private IReadOnlyList<SubjectRow>? _board, _all;

    internal BenchSession(DataFolder folder, JobLog log, JobReader reader, Workshop workshop, ProcedureLibrary library, MachineClock clock)
    {
        (Folder, _log, _reader, Workshop, Library, _clock) = (folder, log, reader, workshop, library, clock);
        Owners = new OwnerBook(new Owners(folder));
        (Bench, BenchFault) = ReadBench();
    }

    /// <summary>The data folder.</summary>
    public DataFolder Folder { get; }

    /// <summary>What stands in the workshop.</summary>
    public Workshop Workshop { get; }

    /// <summary>Procedures that a job can be booked in with.</summary>
    public ProcedureLibrary Library { get; }

    /// <summary>Names and addresses, beside the log.</summary>
    public OwnerBook Owners { get; }

    /// <summary>Told how long each append took, and why it was refused.</summary>
    internal Action<TimeSpan, DataFault?>? Wrote { get; set; }

    /// <summary>The bench as it stands.</summary>
    public Bench Bench { get; private set; }

    /// <summary>Why the log of the bench could not be read to its end; the bench is then as it stood before. Null if it was.</summary>
    public DataFault? BenchFault { get; private set; }

    /// <summary>True if nothing can be written.</summary>
    public bool ReadsOnly => _log.Mode == OpenMode.Read;

    /// <summary>What was noticed on opening.</summary>
    public IReadOnlyList<LogNote> Notes => _log.Notes;

    /// <summary>The journal's head, for the report.</summary>
    public LogHead Head => _log.Head;

    /// <summary>The moment.</summary>
    public Moment Now => _clock.Now();

    /// <summary>Jobs on the board: those at hand first, then those that wait, then those finished in the last thirty days.</summary>
    public IReadOnlyList<SubjectRow> Board() => _board ??= ReadBoard();

    private IReadOnlyList<SubjectRow> ReadBoard()
    {
        DateTimeOffset recent = Now.Wall - TimeSpan.FromDays(30);
        return [.. _log.Rows("job", openOnly: true).Concat(_log.RowsSince("job", recent).Where(r => !r.Open))
            .OrderBy(r => Array.IndexOf(BoardOrder, r.State) is var rank and >= 0 ? rank : BoardOrder.Length).ThenByDescending(r => r.Since)];
    }

    // What is at hand stands first, what waits for others behind it, what is over last.
    private static readonly string[] BoardOrder =
    [
        "on the bench", "interrupted", "booked in", "waiting for a day", "waiting for a part", "waiting for the owner", "waiting", "ready", "closed, not finished",
    ];

    /// <summary>All jobs, of all years, by the time they were booked in.</summary>
    public IReadOnlyList<SubjectRow> AllJobs() => _all ??= _log.Rows("job", openOnly: false);

    /// <summary>Jobs of a number; the number as typed, or the job's id.</summary>
    public IReadOnlyList<SubjectRow> Find(string number) =>
        _log.FindByNumber(number) is { Count: > 0 } rows ? rows : _log.Row(number) is { Kind: "job" } row ? [row] : [];

    /// <summary>Which jobs and which points a batch served; a part of its name is another name.</summary>
    public TracedBatch Trace(string batch) => TracedBatch.Of(batch, _log.Trace(batch), Folder.Path);

    /// <summary>A job with its plan, read and verified, or why it cannot be.</summary>
    public JobReading Read(string id)
    {
        JobReading reading = Known(id);
        return reading is JobReading.Ready { Job.WhyNoPlan: { Length: > 0 } fault } ? new JobReading.Unreadable(fault) : reading;
    }

    // As Read, with the procedures unread.
    private JobReading Known(string id)
    {
        if (_open.TryGetValue(id, out OpenJob? known)) return new JobReading.Ready(known);
        SubjectReading lines = _log.Read(id);
        JobReading reading = _reader.Read(id, lines);
        if (reading is JobReading.Ready ready) _open[id] = ready.Job;
        return reading;
    }

    /// <summary>Books a job in and gives its id, or why not.</summary>
    public (string Id, ActOutcome Outcome) Book(string number, string what, string owner, ReadProcedure procedure, JobAction.NoteIntake? intake = null)
    {
        string id = Identity.New();
        if (_reader.Keep(procedure.Sources) is { } fault) return (id, new ActOutcome.Failed(fault));
        Plan plan = new([new Joined("1", procedure.Procedure!)]);
        ActOutcome outcome = Act(new OpenJob(id, null, plan), new JobAction.Open(number, what, owner, [Pinned(procedure)], Preferred(procedure), intake), Identity.New());
        return (id, outcome);
    }

    /// <summary>Brings a procedure into a job as the repair for a finding. The part is the one that waits for it; empty if it is of none.</summary>
    public ActOutcome BringIn(OpenJob job, string finding, string part, ReadProcedure procedure) =>
        _reader.Keep(procedure.Sources) is { } fault
            ? new ActOutcome.Failed(fault)
            : Act(job, new JobAction.BringIn(finding, part, Pinned(procedure), Preferred(procedure)));

    /// <summary>Keeps a copy of a picture, by its content, and writes down what it is of. The file itself is not touched.</summary>
    public ActOutcome KeepPhoto(OpenJob job, string finding, StepRef? step, string path, string caption) => PhotoFile.Read(path) switch
    {
        { Complaint: { Length: > 0 } complaint } => new ActOutcome.Unfit(complaint),
        var photo => _reader.Keep(photo.Bytes, out string hash) is { } fault
            ? new ActOutcome.Failed(fault)
            : Act(job, new JobAction.KeepPhoto(finding, step, photo.Name, hash, caption)),
    };

    private static JobEvent.ProcedureJoined Pinned(ReadProcedure read) => new(
        "1", read.Procedure!.Id, read.Procedure.Title, read.Procedure.Revision, [.. read.Sources.Select(s => new PinnedText(s.Name, s.Sha256))], "");

    // What the workshop always answers alike need not be asked.
    private Dictionary<string, string> Preferred(ReadProcedure read) => read.Procedure!.Asks
        .Where(q => Workshop.Prefers.TryGetValue(q.Fact, out string? answer) && q.Answers.Contains(answer))
        .ToDictionary(q => q.Fact.Value, q => Workshop.Prefers[q.Fact]);

    /// <summary>Acts on a job. The outcome is known when the disk has it.</summary>
    /// <param name="job">The job.</param>
    /// <param name="action">What to do.</param>
    /// <param name="actionId">The caller's id of this action; a new one if null.</param>
    public ActOutcome Act(OpenJob job, JobAction action, string? actionId = null)
    {
        if (job.WhyReadOnly.Length > 0) return new ActOutcome.ReadOnlyJob(job.WhyReadOnly);
        Circumstances at = Circumstances(job, actionId);
        switch (Decider.Decide(job.Job, action, at))
        {
            case Decision.Refused refused:
                return new ActOutcome.Refused(refused.Why);
            case Decision.Accepted { Events: [] }:
                return new ActOutcome.Done([]);
            case Decision.Accepted accepted:
                LogEntry entry = new((job.Job?.Log.Count ?? 0) + 1, at.ActionId, at.By, at.Now, accepted.Events);
                Job next = Fold.Next(job.Id, job.Job, entry);
                Plan plan = Changes(job.Job, next) ? _reader.PlanOf(next, out _) ?? job.Plan : job.Plan;
                List<NewLine> lines = [new NewLine(job.Id, at.ActionId, at.By, at.Now, EventLines.Encode(entry.Events)) { After = entry.Number - 1, Row = () => JobRows.Of(next, plan, at with { Plan = plan }) }];
                List<BenchEvent> follow = [.. Bench.Follow(next)];
                if (follow.Count > 0) lines.Add(BenchLine(follow, at.ActionId, at.By, at.Now));
                if (Append(lines) is AppendRefused failed) return new ActOutcome.Failed(failed.Fault);
                if (follow.Count > 0) Bench = Bench.After(new BenchEntry(Bench.LastNumber + 1, at.ActionId, at.By, at.Now, follow));
                (job.Job, job.Plan) = (next, plan);
                _open[job.Id] = job;
                _board = _all = null;
                return new ActOutcome.Done(accepted.Events);
            default:
                throw new InvalidOperationException("a decision of no kind");
        }
    }

    // A plan follows from what was brought into the job, and from nothing else.
    private static bool Changes(Job? before, Job after) =>
        before is not null && (!ReferenceEquals(before.Procedures, after.Procedures) || !ReferenceEquals(before.Repairs, after.Repairs) || !ReferenceEquals(before.AddedParts, after.AddedParts));

    /// <summary>Acts on the bench.</summary>
    public ActOutcome Act(BenchAction action, string? by = null)
    {
        Moment now = Now;
        (IReadOnlyList<BenchEvent> events, BenchRejection why) = BenchDecider.Decide(Bench, action, Workshop, now);
        if (why != BenchRejection.None) return new ActOutcome.RefusedAtBench(why);
        if (events.Count == 0) return new ActOutcome.Done([]);
        string id = Identity.New(), who = by ?? Bench.Repairer;
        if (Append([BenchLine(events, id, who, now)]) is AppendRefused failed) return new ActOutcome.Failed(failed.Fault);
        Bench = Bench.After(new BenchEntry(Bench.LastNumber + 1, id, who, now, events));
        return new ActOutcome.Done([]);
    }

    /// <summary>What a decision on a job needs to know now.</summary>
    public Circumstances Circumstances(OpenJob job, string? actionId = null) =>
        new(job.Plan, Workshop, Now, Bench.Repairer, actionId ?? Identity.New(), Bench.JarsInUse, Bench.BatchNames) { Stock = Stock, Instruments = Bench.Instruments };

    /// <summary>Bottles chosen and asked for in this session.</summary>
    public SessionBottles Bottles { get; } = new();

    private LubricantStock Stock => new() { Bottles = Bench.Bottles(), CelsiusToday = Bench.CelsiusOn(Now.Wall), Chosen = Bottles.Chosen };

    /// <summary>Jobs that have a clock running, with their clocks.</summary>
    public IEnumerable<(OpenJob Job, Soak Soak)> RunningSoaks()
    {
        foreach (string id in Bench.Clocks.Select(c => c.Job).Distinct())
            if (Known(id) is JobReading.Ready { Job: { Job: { } job } open })
                foreach (Soak soak in job.RunningSoaks) yield return (open, soak);
    }

    private AppendOutcome Append(IReadOnlyList<NewLine> lines)
    {
        long begun = Stopwatch.GetTimestamp();
        AppendOutcome outcome = _log.Append(lines);
        Wrote?.Invoke(Stopwatch.GetElapsedTime(begun), (outcome as AppendRefused)?.Fault);
        return outcome;
    }

    private NewLine BenchLine(IReadOnlyList<BenchEvent> events, string actionId, string by, Moment now) =>
        new(Folder.Bench, actionId, by, now, EventLines.Encode(events))
        {
            After = Bench.LastNumber,
            Row = BenchRow(events.Any(e => e is BenchEvent.CarriedForward) ? Bench.LastNumber + 1 : Bench.CarriedAt, now),
        };

    private Func<SubjectRow> BenchRow(int carriedAt, Moment now) => () => JobRows.OfBench(Folder.Bench, carriedAt, now);

    private (Bench Bench, DataFault? Fault) ReadBench() =>
        _reader.ReadBench(_log.Read(Folder.Bench, Math.Max(1, _log.Row(Folder.Bench)?.Done ?? 1)));

    /// <summary>When opened to read only: takes in what the run that owns the folder has written since.</summary>
    public void Refresh()
    {
        if (!ReadsOnly || !_log.Refresh()) return;
        _board = _all = null;
        Owners.Forget();
        (Bench, BenchFault) = ReadBench();
        foreach (OpenJob job in _open.Values)
            if (_reader.Read(job.Id, _log.Read(job.Id)) is JobReading.Ready { Job.WhyNoPlan: "" } fresh) (job.Job, job.Plan) = (fresh.Job.Job, fresh.Job.Plan);
    }

    /// <summary>Writes the state of the bench forward if many lines have gathered since the last time.</summary>
    public void CarryForwardIfDue()
    {
        if (!ReadsOnly && Bench.LastNumber - Bench.CarriedAt > CarryAfter) Act(new BenchAction.CarryForward());
    }

    /// <inheritdoc/>
    public void Dispose() => _log.Dispose();
}
