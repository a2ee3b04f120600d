using ServiceRunner.Core.Jobs;
using ServiceRunner.Core.Procedures;
using ServiceRunner.Core.Workshops;
using ServiceRunner.Files.Reports;
using ServiceRunner.Files.Sentences;

namespace ServiceRunner.Screens.Oiling;

/// <summary>How a point stands in its job.</summary>
public enum PointStand
{
    /// <summary>It got its lubricant.</summary>
    Served,

    /// <summary>Going on serves it.</summary>
    Next,

    /// <summary>Its turn comes.</summary>
    ToCome,

    /// <summary>It was left without.</summary>
    LeftOpen,

    /// <summary>It must stay dry.</summary>
    Dry,

    /// <summary>No step of this job serves it.</summary>
    NotInJob,
}

/// <summary>An oiling point as the screen shows it; the number is the report's.</summary>
public sealed record PointView(PointLine Line, OilingPoint? Point, PointStand Stand, string Detail)
{
    /// <summary>The mark of a standing: told apart by its shape, never by colour.</summary>
    public static string Mark(PointStand stand) => stand switch
    {
        PointStand.Served => "●", PointStand.Next => "►", PointStand.ToCome => "○", PointStand.LeftOpen => "◇", PointStand.Dry => "×", _ => "·",
    };

    /// <summary>What a mark means.</summary>
    public static string Words(PointStand stand) => stand switch
    {
        PointStand.Served => "served", PointStand.Next => "next", PointStand.ToCome => "to come", PointStand.LeftOpen => "left open", PointStand.Dry => "stays dry", _ => "not in this job",
    };

    /// <summary>The ink of a standing.</summary>
    public static Ink Ink(PointStand stand) => stand switch
    {
        PointStand.Served => Screens.Ink.Good, PointStand.Next => Screens.Ink.Title, PointStand.LeftOpen => Screens.Ink.Caution, PointStand.ToCome => Screens.Ink.Plain, _ => Screens.Ink.Faint,
    };

    /// <summary>Every point of a job in the order of the report.</summary>
    /// <param name="job">The job.</param>
    /// <param name="plan">Its procedures.</param>
    /// <param name="workshop">The workshop, for the names of lubricants.</param>
    /// <param name="next">The point that going on serves; empty if none.</param>
    /// <param name="now">The moment.</param>
    public static IReadOnlyList<PointView> Of(Job job, Plan plan, Workshop workshop, string next, DateTimeOffset now)
    {
        HashSet<string> answered = [.. job.Steps.Values.SelectMany(s => s.Answered)];
        return [.. PointLines.Of(job, plan, workshop).Select(line =>
        {
            OilingPoint? point = plan.Point(line.Id);
            // A point that a step does again is next, whatever it got before.
            PointStand stand = line.Id == next ? PointStand.Next : line.State switch
            {
                PointState.Served => PointStand.Served,
                PointState.StaysDry => PointStand.Dry,
                PointState.NotAsked => PointStand.NotInJob,
                _ => answered.Contains($"oil:{line.Id}") ? PointStand.LeftOpen : PointStand.ToCome,
            };
            return new PointView(line, point, stand, Told(line, point, stand, job, now));
        })];
    }

    private static string Told(PointLine line, OilingPoint? point, PointStand stand, Job job, DateTimeOffset now) => stand switch
    {
        PointStand.Served => $"{line.Lubricant}, {(line.Batch.Length > 0 ? line.Batch : "bottle not stated")}; {line.By} {Times.When(line.At!.Value, now)}",
        PointStand.Dry when job.Dry.GetValueOrDefault(line.Id) is { } seen => $"{(seen.Event.AllDry ? "seen dry" : "one of them was not dry")}; {seen.By} {Times.When(seen.At.Wall, now)}",
        PointStand.Dry => "must stay dry",
        PointStand.NotInJob => "not in this job",
        PointStand.LeftOpen => $"left open; {Wants(line, point)}",
        _ => Wants(line, point),
    };

    private static string Wants(PointLine line, OilingPoint? point) => $"{line.Role}{(point?.Amount is { Length: > 0 } amount ? $", {amount}" : "")}";
}
