using ServiceRunner.Core.Jobs;
using ServiceRunner.Core.Procedures;
using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Core.Tests.Jobs;

/// <summary>The sheet of a staff, with figures worked by hand.</summary>
public class MakingSheetTests
{
    private static readonly Procedure Staff = new()
    {
        Id = Sample.P("staff"), Title = "Replace a staff", Revision = "1",
        Parts = [new Part { Id = Sample.P("staff"), Name = "Balance staff" }],
        Sheet = new PartSheet("Staff to be made", Sample.P("staff"),
        [
            new PartSheetLine("Whole length", Sample.P("endstones"), Sample.P("end shake")),
            new PartSheetLine("Upper pivot", Sample.P("upper hole"), Sample.P("side shake")),
            new PartSheetLine("Roller seat", Sample.P("old roller seat"), null),
        ]),
        Stages =
        [
            new Stage(Sample.P("inspection"), "Inspection", [],
            [
                new Step { Id = Sample.P("sizes"), Do = "Measure", Measure = [Of("endstones"), Of("end shake"), Of("upper hole"), Of("side shake"), Of("old roller seat")] },
            ]),
        ],
    };

    private static readonly Plan Plan = new([new Joined("1", Staff), new Joined("2", Staff)]);

    private static MeasureFacet Of(string what) => new(Sample.P(what), "mm", null, null, ["felt right"]);

    private static JobEvent.Measured Measured(string what, string typed, string instance = "1", string unit = "mm")
    {
        Assert.Equal(TypedNumber.Fault.None, TypedNumber.Read(typed, out TypedNumber number));
        return new JobEvent.Measured(new StepRef(instance, "sizes", 1), what, number, unit, null, null);
    }

    // Each event is an action of its own, numbered from 2.
    private static Job After(params JobEvent[] events)
    {
        IReadOnlyList<JobEvent> opened =
        [
            new JobEvent.Opened("26-001", "A watch", ""),
            .. new[] { "1", "2" }.Select(i => new JobEvent.ProcedureJoined(i, "staff", "Replace a staff", "1", [], "")),
        ];
        Job job = Fold.Next("job", null, new LogEntry(1, "a1", "AA", Sample.Morning, opened));
        foreach (JobEvent happened in events)
            job = Fold.Next("job", job, new LogEntry(job.Log.Count + 1, $"a{job.Log.Count + 1}", "AA", Sample.Morning, [happened]));
        return job;
    }

    private static MakingSheet Sheet(params JobEvent[] events) => MakingSheet.Of(After(events), Plan, "1")!;

    private static string[] Sizes(MakingSheet sheet) => [.. sheet.Lines.Select(l => $"{l.Name}: {l.Size} {l.Unit} {l.Lacks}")];

    [Fact]
    public void Every_size_is_what_was_measured_less_the_shake_that_is_wanted()
    {
        MakingSheet sheet = Sheet(Measured("endstones", "2.850"), Measured("end shake", "0,025"), Measured("upper hole", "0.110"), Measured("side shake", "0.01"), Measured("old roller seat", "0.47"));
        // 2.850 - 0.025 = 2.825; 0.110 - 0.010 = 0.100
        Assert.Equal([2.825m, 0.100m, 0.47m], sheet.Lines.Select(l => l.Size));
        Assert.Equal(["2.850", "0.110", "0.47"], sheet.Lines.Select(l => l.From.Measured!.Value.AsTyped));
        Assert.Equal("0,025", sheet.Lines[0].Less!.Measured!.Value.AsTyped);
        Assert.All(sheet.Lines, l => Assert.Equal("mm", l.Unit));
        Assert.True(sheet.IsWhole);
        Assert.Equal(("Staff to be made", "Balance staff", "Replace a staff"), (sheet.Title, sheet.Part, sheet.Procedure.Title));
    }

    [Fact]
    public void What_is_missing_is_missing_and_never_taken_for_nothing()
    {
        MakingSheet sheet = Sheet(Measured("endstones", "2.850"), Measured("side shake", "0.01"));
        Assert.Equal(["Whole length:  mm Figures", "Upper pivot:   Figures", "Roller seat:   Figures"], Sizes(sheet));
        Assert.Equal([["end shake"], ["upper hole"], ["old roller seat"]], sheet.Lines.Select(l => l.Missing));
        Assert.False(sheet.IsWhole);
        Assert.Null(sheet.Old);
    }

    [Fact]
    public void The_latest_figure_counts_and_one_taken_back_does_not()
    {
        Job job = After(Measured("old roller seat", "0.47"), Measured("old roller seat", "0.48"), Measured("old roller seat", "0.74"));
        job = Fold.Next("job", job, new LogEntry(5, "a5", "AA", Sample.Morning, [new JobEvent.TakenBack(4)]));
        Assert.Equal(0.48m, MakingSheet.Of(job, Plan, "1")!.Lines[2].Size);
    }

    [Fact]
    public void Another_staff_of_the_same_job_has_figures_and_a_part_of_its_own()
    {
        Job job = After(Measured("old roller seat", "0.47"), Measured("old roller seat", "0.60", "2"), new JobEvent.PartRenewed(null, "2/staff", Origin.MadeNew, ""));
        Assert.Equal([0.47m, 0.60m], new[] { "1", "2" }.Select(i => MakingSheet.Of(job, Plan, i)!.Lines[2].Size!.Value));
        Assert.Null(MakingSheet.Of(job, Plan, "1")!.Old);
        Assert.Equal(new PartPlace.Replaced(""), MakingSheet.Of(job, Plan, "2")!.Old);
    }

    [Fact]
    public void A_felt_answer_is_no_figure() =>
        Assert.Equal(SheetLack.Figures, Sheet(new JobEvent.Felt(new StepRef("1", "sizes", 1), "old roller seat", "felt right")).Lines[2].Lacks);

    [Fact]
    public void Two_units_and_a_shake_larger_than_its_hole_give_no_size()
    {
        MakingSheet sheet = Sheet(Measured("endstones", "2.850"), Measured("end shake", "25", unit: "µm"), Measured("upper hole", "0.110"), Measured("side shake", "0.110"));
        Assert.Equal([SheetLack.OneUnit, SheetLack.Sense, SheetLack.Figures], sheet.Lines.Select(l => l.Lacks));
        Assert.All(sheet.Lines, l => Assert.Null(l.Size));
    }

    [Fact]
    public void The_old_part_lies_in_the_tray_is_kept_when_a_new_one_takes_its_place_and_stays_kept_when_that_is_fitted()
    {
        JobEvent.PartMoved tray = new("staff", new PartPlace.InTray("A4")), fitted = new("staff", new PartPlace.OnMovement());
        JobEvent.PartRenewed renewed = new(null, "staff", Origin.MadeNew, "");
        Assert.Equal(new PartPlace.InTray("A4"), Sheet(tray).Old);
        Assert.Equal(new PartPlace.Replaced(""), Sheet(tray, renewed).Old);
        Assert.Equal(new PartPlace.Replaced(""), Sheet(tray, renewed, fitted).Old);
    }

    [Fact]
    public void A_procedure_without_a_sheet_has_none() =>
        Assert.Null(MakingSheet.Of(After(), new Plan([new Joined("1", Staff with { Sheet = null })]), "1"));
}
