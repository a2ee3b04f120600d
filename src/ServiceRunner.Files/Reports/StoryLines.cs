using ServiceRunner.Core.Jobs;
using ServiceRunner.Core.Procedures;
using ServiceRunner.Core.Quantities;
using ServiceRunner.Files.Sentences;

namespace ServiceRunner.Files.Reports;

/// <summary>A finding, as it is weighed now. The place is in words.</summary>
public sealed record FindingLine(string Place, string What, Weight Weight, Sureness Sure, string By, DateTimeOffset At)
{
    /// <summary>What became of it, a sentence each: where it stands, what was decided and why, the price, the owner's answer, the repair.</summary>
    public IReadOnlyList<string> Fate { get; init; } = [];

    /// <summary>Pictures kept with it.</summary>
    public IReadOnlyList<PictureLine> Pictures { get; init; } = [];
}

/// <summary>A kept picture: its file's name, its SHA-256, and what it shows; the last is empty if nothing was said.</summary>
public sealed record PictureLine(string Name, string Hash, string Caption);

/// <summary>What the owner was told, or answered.</summary>
/// <param name="On">On which day; with the time for what was told.</param>
/// <param name="What">Which of both, and how it came.</param>
/// <param name="Lines">What of which finding.</param>
/// <param name="By">Who wrote it down.</param>
public sealed record OwnerLine(string On, string What, IReadOnlyList<string> Lines, string By);

/// <summary>A deviation. The kind is in words; the step is what it says, empty if it concerns none.</summary>
public sealed record DeviationLine(string Kind, string Step, string Detail, string Reason, string By, DateTimeOffset At);

/// <summary>A stage with those of its steps that were touched.</summary>
public sealed record StageStory(string Title, IReadOnlyList<StepLine> Steps)
{
    /// <summary>The repair that it is a stage of, with its part: <c>Repair: Replace a wheel (Fourth wheel)</c>; empty for the service.</summary>
    public string Repair { get; init; } = "";
}

/// <summary>One doing of a step.</summary>
/// <param name="Do">What it says.</param>
/// <param name="Occurrence">Which time, from 1.</param>
/// <param name="End">How it was settled, or null.</param>
/// <param name="Answers">What was answered, in the order of the log.</param>
/// <param name="Earlier">Earlier doings of the same step.</param>
public sealed record StepLine(string Do, int Occurrence, StepEnd? End, IReadOnlyList<AnswerLine> Answers, IReadOnlyList<StepLine> Earlier);

/// <summary>A clock: its name, what was planned, how long it ran (null: still counting) and whether that is certain.</summary>
public sealed record SoakLine(string Name, Window Planned, TimeSpan? Ran, bool Certain, IReadOnlyList<string> Parts, string By, DateTimeOffset At)
{
    /// <summary>The name of the basket that its parts went in with; empty if they are few, and named.</summary>
    public string Basket { get; init; } = "";

    /// <summary>Parts that its procedure puts in and that were left out.</summary>
    public IReadOnlyList<string> Without { get; init; } = [];

    /// <summary>What was in it, in a few words; empty for a wait.</summary>
    public string Inside => $"{(Basket.Length > 0 ? $"{Basket}, {Times.Count(Parts.Count, "part")}" : string.Join(", ", Parts))}{(Without.Count > 0 ? $", without {Times.List(Without)}" : "")}";


    /// <summary>Where the length stands in what was planned; null while it counts.</summary>
    public Standing? Standing => Ran is { } ran ? Planned.Of(ran) : null;
}

/// <summary>What became of an oiling point.</summary>
public enum PointState
{
    /// <summary>It got a lubricant.</summary>
    Served,

    /// <summary>It got none.</summary>
    NotServed,

    /// <summary>No step of this job serves it, by what was answered about the movement.</summary>
    NotAsked,

    /// <summary>It must stay dry.</summary>
    StaysDry,
}

/// <summary>An oiling point and what became of it.</summary>
/// <param name="Number">Its number on the map and in the list, from 1.</param>
/// <param name="Id">Its id.</param>
/// <param name="Name">What it is called.</param>
/// <param name="Role">What it wants, in words.</param>
/// <param name="State">What became of it.</param>
/// <param name="Lubricant">What the lubricant is called; empty if it got none.</param>
/// <param name="Batch">The bottle; empty if not stated.</param>
/// <param name="By">By whom; empty if it got none.</param>
/// <param name="At">When, or null.</param>
public sealed record PointLine(int Number, string Id, string Name, string Role, PointState State, string Lubricant, string Batch, string By, DateTimeOffset? At);

/// <summary>A step that took rates, after its stage (as received, at the end), and the rates in the order taken.</summary>
public sealed record RateLines(string Step, IReadOnlyList<JobEvent.RateTaken> Rates);

/// <summary>A marked moment; the step is what it says, empty if there was none.</summary>
public sealed record MarkLine(string Step, string By, DateTimeOffset At);

/// <summary>A map with the numbers of its points.</summary>
public sealed record MapStory(PointMap Map, IReadOnlyDictionary<string, PointLine> Points);
