using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Core.Jobs;

/// <summary>One action as the job log keeps it: who, when, and all that it made happen.</summary>
/// <param name="Number">Its number in the job, from 1 without gaps.</param>
/// <param name="ActionId">The caller's id: the same id again does nothing.</param>
/// <param name="By">The repairer's initials.</param>
/// <param name="At">When it was written down.</param>
/// <param name="Events">What happened, in order; at least one.</param>
public sealed record LogEntry(int Number, string ActionId, string By, Moment At, IReadOnlyList<JobEvent> Events);
