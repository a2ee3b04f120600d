using System.Text.Json;
using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Files.Journal;

/// <summary>
/// One verified line of the journal: one action with all its events. The body travels with its job and verifies
/// alone; the envelope says where the line stands in its bench's journal.
/// </summary>
public sealed class LogLine
{
    /// <summary>The line's number in its bench's journal, from 1.</summary>
    public required long Sequence { get; init; }
    public required string Bench { get; init; }

    /// <summary>What the action was about: a job's id, or the bench's own for what is not about one job.</summary>
    public required string Subject { get; init; }

    /// <summary>The line's number among its subject's, from 1.</summary>
    public required long SubjectSequence { get; init; }
    public required string ActionId { get; init; }

    /// <summary>The repairer's initials.</summary>
    public required string By { get; init; }
    public required Moment At { get; init; }

    /// <summary>The events: one JSON array in UTF-8, as stored.</summary>
    public required ReadOnlyMemory<byte> Events { get; init; }

    /// <summary>The body's bytes, as stored: what <see cref="BodyHash"/> is taken over.</summary>
    public required ReadOnlyMemory<byte> Body { get; init; }
    public required ReadOnlyMemory<byte> Envelope { get; init; }

    /// <summary>The whole line, with its newline.</summary>
    public required ReadOnlyMemory<byte> Bytes { get; init; }
    public required Digest BodyHash { get; init; }
    public required Digest PreviousBody { get; init; }
    public required Digest Hash { get; init; }
    public required Digest PreviousLine { get; init; }

    /// <summary>Who took the line over from another bench; null for the bench's own.</summary>
    public required string? ImportedBy { get; init; }

    /// <summary>How many lines after this one belong to the same append: all of them are acknowledged, or none.</summary>
    public required long More { get; init; }

    /// <summary>The newer of the body's and the envelope's version.</summary>
    public required int Version { get; init; }

    /// <summary>Written by a later version of the program: what it means is not fully known, so its job is only read.</summary>
    public bool FromTheFuture => Version > LineCodec.Version;

    public JsonDocument ParseEvents() => JsonDocument.Parse(Events);
}
