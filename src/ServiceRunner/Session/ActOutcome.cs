using ServiceRunner.Core.Benches;
using ServiceRunner.Core.Jobs;
using ServiceRunner.Files.Data;
using ServiceRunner.Files.Sentences;

namespace ServiceRunner.Session;

/// <summary>What came of an action.</summary>
public abstract record ActOutcome
{
    private ActOutcome() { }

    /// <summary>It is on the disk. No events: nothing had to change.</summary>
    public sealed record Done(IReadOnlyList<JobEvent> Events) : ActOutcome;

    /// <summary>Refused.</summary>
    public sealed record Refused(Rejection Why) : ActOutcome;

    /// <summary>Refused at the bench.</summary>
    public sealed record RefusedAtBench(BenchRejection Why) : ActOutcome;

    /// <summary>The job can only be read.</summary>
    public sealed record ReadOnlyJob(string Why) : ActOutcome;

    /// <summary>What was given cannot be taken; the sentence says why.</summary>
    public sealed record Unfit(string Why) : ActOutcome;

    /// <summary>The disk did not take it; nothing of it is kept.</summary>
    public sealed record Failed(DataFault Fault) : ActOutcome;

    /// <summary>True if it is on the disk.</summary>
    public bool IsDone => this is Done;

    /// <summary>The sentence for the repairer; empty if it was done.</summary>
    public string Sentence(Plan plan, string folder) => this switch
    {
        Done => "",
        Refused x => RejectionWords.Sentence(x.Why, plan),
        RefusedAtBench x => RejectionWords.Sentence(x.Why),
        ReadOnlyJob x => x.Why,
        Unfit x => x.Why,
        Failed x => FaultWords.Sentence(x.Fault, folder),
        _ => throw new InvalidOperationException("no sentence for an outcome"),
    };
}
