using ServiceRunner.Core.Jobs;

namespace ServiceRunner.Session;

/// <summary>A job at hand: its plan, and its state, which changes with each action.</summary>
public sealed class OpenJob
{
    private static readonly Plan Nothing = new([]);

    private readonly Func<Job, (Plan? Plan, string Fault)>? _read;
    private readonly string _whyReadOnly = "";
    private Plan? _plan;

    /// <summary>A job whose plan is known.</summary>
    public OpenJob(string id, Job? job, Plan plan) => (Id, Job, _plan) = (id, job, plan);

    // Its procedures are read when somebody asks for the plan: a clock on the board needs none of them.
    internal OpenJob(string id, Job job, Func<Job, (Plan? Plan, string Fault)> read, string whyReadOnly) =>
        (Id, Job, _read, _whyReadOnly) = (id, job, read, whyReadOnly);

    /// <summary>Opaque id.</summary>
    public string Id { get; }

    /// <summary>Its state; null while it is being booked in.</summary>
    public Job? Job { get; internal set; }

    /// <summary>Its procedures; another one when something is brought into the job. Nothing is planned where they cannot be read.</summary>
    public Plan Plan
    {
        get => WhyNoPlan.Length > 0 ? Nothing : _plan!;
        internal set => _plan = value;
    }

    /// <summary>Why its procedures cannot be read, as a sentence; empty if they can.</summary>
    public string WhyNoPlan
    {
        get
        {
            if (_plan is not null) return "";
            (_plan, string fault) = _read!(State);
            return fault;
        }
    }

    /// <summary>Why nothing can be done in it, as a sentence; empty if it can.</summary>
    public string WhyReadOnly => _whyReadOnly.Length > 0 ? _whyReadOnly : WhyNoPlan;

    /// <summary>Its state, when it is certain that it was booked in.</summary>
    public Job State => Job ?? throw new InvalidOperationException("the job is not booked in yet");
}

/// <summary>A job as read, or why it cannot be.</summary>
public abstract record JobReading
{
    private JobReading() { }

    /// <summary>Here it is.</summary>
    public sealed record Ready(OpenJob Job) : JobReading;

    /// <summary>It cannot be read; the sentence says why and what to do.</summary>
    public sealed record Unreadable(string Sentence) : JobReading;
}
