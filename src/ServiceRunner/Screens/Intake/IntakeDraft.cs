using ServiceRunner.Core.Jobs;
using ServiceRunner.Core.Quantities;
using ServiceRunner.Files.Data;

namespace ServiceRunner.Screens.Intake;

/// <summary>What stands in the lines of an intake.</summary>
public sealed record IntakeDraft
{
    public string What { get; init; } = "";

    /// <summary>The procedure's id and title; empty until one is chosen.</summary>
    public (string Id, string Title) Procedure { get; init; } = ("", "");

    /// <summary>The owner's id; empty for somebody who is not saved yet, or for nobody.</summary>
    public string OwnerId { get; init; } = "";

    public Owner Owner { get; init; } = new("");
    public string Serial { get; init; } = "";
    public string Accessories { get; init; } = "";
    public string Condition { get; init; } = "";
    public DateOnly? Promised { get; init; }
    public TypedNumber? Limit { get; init; }

    /// <summary>The number as somebody typed it; empty: the next one.</summary>
    public string Number { get; init; } = "";

    /// <summary>True if nothing was put in yet.</summary>
    public bool IsEmpty => this == new IntakeDraft();

    /// <summary>The part that is written down in the job.</summary>
    public JobAction.NoteIntake Noted => new(Serial, Accessories, Promised, Limit, Condition);

    /// <summary>What a job that is booked in has.</summary>
    public static IntakeDraft Of(Job job, Owner? owner) => new()
    {
        What = job.What,
        Procedure = ("", string.Join("; ", job.Procedures.Select(p => p.Title))),
        OwnerId = owner is null ? "" : job.Owner,
        Owner = owner ?? new Owner(""),
        Serial = job.Intake.Serial,
        Accessories = job.Intake.Accessories,
        Condition = job.Intake.Condition,
        Promised = job.Intake.Promised,
        Limit = job.Intake.CostLimit,
        Number = job.Number,
    };
}
