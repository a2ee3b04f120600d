using ServiceRunner.Core.Procedures;
using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Files.Procedures;

/// <summary>One procedure file as it is written: groups are still names, and what it takes in is still outside.</summary>
internal sealed record ProcedureFile
{
    /// <summary>How diagnostics name it.</summary>
    public required string File { get; init; }

    public Placed<string> Id { get; set; }

    public string Title { get; set; } = "";

    public string Revision { get; set; } = "";

    public string Covers { get; set; } = "";

    public IReadOnlyList<string> Sources { get; set; } = [];

    public List<JobQuestion> Asks { get; } = [];

    public List<Part> Parts { get; } = [];

    public List<PartGroup> Groups { get; } = [];

    public IReadOnlyList<Placed<string>> WantsGroups { get; set; } = [];

    public Placed<string>? Mends { get; set; }

    public PartSheet? Sheet { get; set; }

    public List<OilingPoint> Points { get; } = [];

    public MapSize? Map { get; set; }

    public List<FileStage> Stages { get; } = [];
}

/// <summary>A stage as written.</summary>
internal sealed record FileStage(Placed<string> Id, string Title, IReadOnlyList<Placed<string>> OpensAfter, IReadOnlyList<FileItem> Items);

/// <summary>What stands in a stage's list.</summary>
internal abstract record FileItem
{
    /// <summary>A step.</summary>
    public sealed record Written(Step Step) : FileItem;

    /// <summary>Another file taken in.</summary>
    public sealed record TakenIn(
        Placed<string> Procedure,
        Placed<string> Alias,
        IReadOnlyList<PartGroup> With,
        IReadOnlyList<Placed<string>> After,
        IReadOnlyList<Condition> OnlyIf) : FileItem;
}
