using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Core.Procedures;

/// <summary>What to do, as read from one YAML file and those it takes in. See docs/procedure-format.md.</summary>
public sealed record Procedure
{
    /// <summary>Its id: lower-case words, digits, hyphens.</summary>
    public required Placed<string> Id { get; init; }

    /// <summary>What the repairer reads in a list.</summary>
    public required string Title { get; init; }

    /// <summary>Raised whenever the file changes in meaning.</summary>
    public required string Revision { get; init; }

    /// <summary>Which movements it is for.</summary>
    public string Covers { get; init; } = "";

    /// <summary>Where its advice comes from.</summary>
    public IReadOnlyList<string> Sources { get; init; } = [];

    /// <summary>Facts of the job that steps may depend on.</summary>
    public IReadOnlyList<JobQuestion> Asks { get; init; } = [];

    /// <summary>Everything that comes off, and what stays.</summary>
    public IReadOnlyList<Part> Parts { get; init; } = [];

    /// <summary>Names for several parts; a group's name may stand wherever parts are named.</summary>
    public IReadOnlyList<PartGroup> Groups { get; init; } = [];

    /// <summary>Groups that a file made to be taken in expects to be given.</summary>
    public IReadOnlyList<Placed<string>> WantsGroups { get; init; } = [];

    /// <summary>
    /// In a repair: the part of this procedure that stands for the one on which the fault was found, when the repair comes
    /// into a job. Null in a procedure that is no repair.
    /// </summary>
    public Placed<string>? Mends { get; init; }

    /// <summary>The sheet of a part to be made, or null.</summary>
    public PartSheet? Sheet { get; init; }

    /// <summary>Places that get a lubricant, or must not.</summary>
    public IReadOnlyList<OilingPoint> OilingPoints { get; init; } = [];

    /// <summary>The frame of the points' places in mm, or null.</summary>
    public MapSize? Map { get; init; }

    /// <summary>The stages in the suggested order, with the steps of taken-in files in their places.</summary>
    public required IReadOnlyList<Stage> Stages { get; init; }

    /// <summary>Every step in the suggested order.</summary>
    public IEnumerable<Step> Steps => Stages.SelectMany(s => s.Steps);
}

/// <summary>A fact of the job, asked once: <c>shellac: Is anything set in shellac?</c></summary>
public sealed record JobQuestion(Placed<string> Fact, string Ask, IReadOnlyList<string> Answers);

/// <summary>A name for several parts.</summary>
public sealed record PartGroup(Placed<string> Name, IReadOnlyList<Placed<string>> Parts);

/// <summary>The frame of the map in mm.</summary>
public sealed record MapSize(decimal Width, decimal Height);

/// <summary>A section of the work. The list suggests an order; <see cref="OpensAfter"/> demands one.</summary>
public sealed record Stage(Placed<string> Id, string Title, IReadOnlyList<Placed<string>> OpensAfter, IReadOnlyList<Step> Steps);
