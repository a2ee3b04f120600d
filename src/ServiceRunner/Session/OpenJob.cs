using ServiceRunner.Core.Jobs;

namespace ServiceRunner.Session;

/// <summary>A job at hand: its plan, and its state, which changes with each action.</summary>
public sealed class OpenJob(string id, Job? job, Plan plan, string whyReadOnly = "")
{
    /// <summary>Opaque id.</summary>
    public string Id { get; } = id;

    /// <summary>Its state; null while it is being booked in.</summary>
    public Job? Job { get; internal set; } = job;

    /// <summary>Its procedures; another one when something is brought into the job.</summary>
    public Plan Plan { get; internal set; } = plan;

    /// <summary>Why nothing can be done in it, as a sentence; empty if it can.</summary>
    public string WhyReadOnly { get; } = whyReadOnly;

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
