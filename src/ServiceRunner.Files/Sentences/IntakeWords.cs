using ServiceRunner.Core.Jobs;
using ServiceRunner.Files.Data;

namespace ServiceRunner.Files.Sentences;

/// <summary>What was noted as a piece came in, in words; what was not given is not mentioned.</summary>
public static class IntakeWords
{
    /// <summary>What was noted, by name, in the order of a receipt.</summary>
    public static IEnumerable<(string Name, string Text)> Lines(Intake intake)
    {
        if (intake.Serial.Length > 0) yield return ("Serial", intake.Serial);
        if (intake.Accessories.Length > 0) yield return ("Came with", intake.Accessories);
        if (intake.Condition.Length > 0) yield return ("On arrival", intake.Condition);
        if (intake.Promised is { } day) yield return ("Promised", Days.Long(day));
        if (intake.CostLimit is not null) yield return ("Cost limit", Limit(intake));
    }

    /// <summary>A limit with its currency: <c>380,50 EUR</c>; empty if none was agreed.</summary>
    public static string Limit(Intake intake) => intake.CostLimit is { } limit ? $"{limit} {intake.Currency}".TrimEnd() : "";

    /// <summary>A promised day for the bench: <c>promised 20 Mar</c>, and in words that it is near or past.</summary>
    public static string Promised(DateOnly day, DateOnly today) => Promise.Standing(day, today) switch
    {
        PromiseStanding.Past => $"promised {Days.Short(day, today)}, {Times.Count(today.DayNumber - day.DayNumber, "day")} past",
        PromiseStanding.Near => (day.DayNumber - today.DayNumber) switch { 0 => "promised for today", 1 => "promised for tomorrow", var n => $"promised in {Times.Count(n, "day")}" },
        _ => $"promised {Days.Short(day, today)}",
    };

    /// <summary>The same in two words, where there is no room: <c>by 20 Mar</c>, <c>due today</c>, <c>late 3 d</c>.</summary>
    public static string PromisedBriefly(DateOnly day, DateOnly today) => Promise.Standing(day, today) switch
    {
        PromiseStanding.Past => $"late {today.DayNumber - day.DayNumber} d",
        PromiseStanding.Near => (day.DayNumber - today.DayNumber) switch { 0 => "due today", var n => $"due in {n} d" },
        _ => $"by {Days.Short(day, today)}",
    };

    /// <summary>An owner in a list: how to reach them, in one line.</summary>
    public static string Contact(Owner owner) => string.Join(", ", owner.Lines);

    /// <summary>What another answer does to the steps, as one sentence.</summary>
    public static string Sentence(FactChange change) => (change.Joining, change.Leaving) switch
    {
        (0, 0) => "No step comes in or drops out.",
        (var joining, 0) => $"{Comes(joining)} into the job.",
        (0, var leaving) => $"{Drops(leaving)}{Settled(change)}.",
        (var joining, var leaving) => $"{Comes(joining)} into the job, {Drops(leaving)}{Settled(change)}.",
    };

    private static string Comes(int steps) => $"{Times.Count(steps, "step")} {(steps == 1 ? "comes" : "come")}";

    private static string Drops(int steps) => $"{Times.Count(steps, "step")} {(steps == 1 ? "drops" : "drop")} out";

    private static string Settled(FactChange change) => change.LeavingSettled == 0 ? "" : $" ({change.LeavingSettled} of them settled already; the log keeps {(change.LeavingSettled == 1 ? "it" : "them")})";
}
