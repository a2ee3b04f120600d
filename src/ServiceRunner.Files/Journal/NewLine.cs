using ServiceRunner.Core.Quantities;
using ServiceRunner.Files.Index;

namespace ServiceRunner.Files.Journal;

/// <summary>An action to be appended.</summary>
/// <param name="Subject">A job's id, or the bench's.</param>
/// <param name="ActionId">Its caller's id of the action; the log does not look for it a second time.</param>
/// <param name="By">The repairer's initials.</param>
/// <param name="Events">One JSON array in UTF-8, without raw tabs or newlines.</param>
public sealed record NewLine(string Subject, string ActionId, string By, Moment At, ReadOnlyMemory<byte> Events)
{
    /// <summary>
    /// The subject as lists show it after this action; null leaves it as it was. It is asked for on the index's thread,
    /// after the acknowledgement, so it may only look at what never changes.
    /// </summary>
    public Func<SubjectRow>? Row { get; init; }

    /// <summary>The subject's sequence that the decision rests on, 0 for a new subject; null is not checked.</summary>
    public long? After { get; init; }

    internal ReadOnlyMemory<byte> ImportedBody { get; private init; }
    internal string? ImportedBy { get; private init; }

    /// <summary>A line of another bench: its body is kept byte for byte, so that the subject's chain goes on verifying.</summary>
    /// <param name="body">As it came, <see cref="LogLine.Body"/>.</param>
    /// <param name="importedBy">Who takes it over.</param>
    public static NewLine Imported(ReadOnlyMemory<byte> body, string importedBy, Func<SubjectRow>? row) =>
        new("", "", "", new Moment(default, "", default), default) { ImportedBody = body, ImportedBy = importedBy, Row = row };
}
