using ServiceRunner.Core.Benches;
using ServiceRunner.Core.Jobs;
using ServiceRunner.Screens.Oiling;
using ServiceRunner.Screens.Pick;
using ServiceRunner.Tests.Shared;

namespace ServiceRunner.Tests.Screens.Oiling;

/// <summary>The map with its points, and going on there as in Run.</summary>
public class OilingTests
{
    private static PaperBench AtOiling(string step = "oil-train-side")
    {
        PaperBench bench = new();
        foreach (string lubricant in new[] { "light-oil", "heavy-oil", "stone-grease", "winding-grease", "spring-grease" })
            bench.Session.Act(new BenchAction.TakeBatch(lubricant, $"{char.ToUpperInvariant(lubricant[0])}-1", new DateOnly(2026, 1, 5), null));
        return bench.WithJob().To(step).Keys("F7");
    }

    [Theory]
    [InlineData(80, 24)]
    [InlineData(120, 40)]
    [InlineData(60, 18)]
    [InlineData(200, 60)]
    public void The_map_the_next_point_and_the_list(int width, int height)
    {
        using PaperBench bench = AtOiling();
        Snapshot.Verify(bench.Picture(width, height), $"{width}x{height}");
    }

    [Fact]
    public void Going_on_serves_one_point_as_in_Run_and_takes_it_back()
    {
        using PaperBench bench = AtOiling();
        OilingModel oiling = Assert.IsType<OilingModel>(bench.Shell.Screen);
        string first = Assert.IsType<Ask.Oil>(oiling.Question).Point.Id;
        int before = oiling.Run.Job.State.Log.Count;
        bench.Held("PageDown", 10, TimeSpan.FromMilliseconds(100));
        Assert.Equal(before + 1, oiling.Run.Job.State.Log.Count);
        Assert.True(oiling.Run.Job.State.Points.ContainsKey(first));
        Assert.NotEqual(first, ((Ask.Oil)oiling.Question!).Point.Id.Value);
        Assert.Equal(PointStand.Served, oiling.Points.First(p => p.Line.Id == first).Stand);
        bench.Keys("u");
        Assert.Equal(PointStand.Next, oiling.Points.First(p => p.Line.Id == first).Stand);
        bench.Keys("l");
        Assert.Equal(PointStand.LeftOpen, oiling.Points.First(p => p.Line.Id == first).Stand);
        Snapshot.Verify(bench.Picture());
    }

    [Fact]
    public void Where_no_point_is_at_hand_going_on_says_so_and_does_nothing()
    {
        using PaperBench bench = AtOiling("hear-owner");
        OilingModel oiling = (OilingModel)bench.Shell.Screen;
        int before = oiling.Run.Job.State.Log.Count;
        bench.Keys("Enter");
        Assert.StartsWith("No oiling point is at hand, but '", bench.Shell.Message, StringComparison.Ordinal);
        Assert.Equal(before, oiling.Run.Job.State.Log.Count);
        bench.Keys("Esc");
        Assert.NotNull(bench.Run.Shown);
    }

    [Fact]
    public void Points_that_must_stay_dry_are_answered_here_too()
    {
        using PaperBench bench = AtOiling("dry-look");
        Snapshot.Verify(bench.Picture(), "asked");
        bench.Keys("Enter");
        OilingModel oiling = (OilingModel)bench.Shell.Screen;
        Assert.IsType<Ask.StaysDry>(oiling.Question);
        bench.Keys("2");
        Assert.Contains(oiling.Run.Job.State.Findings, f => f.Event.What == "one is not");
        Assert.All(oiling.Points.Where(p => p.Stand == PointStand.Dry), p => Assert.StartsWith("one of them was not dry; IV today", p.Detail, StringComparison.Ordinal));
    }

    [Fact]
    public void A_movement_without_a_map_shows_the_list_alone()
    {
        using PaperBench bench = new PaperBench().WithJob();
        const string plain = "procedure: plain\nformat: 1\ntitle: Plain\nrevision: 1\noiling-points:\n  - {point: upper, name: Upper pivot, role: fast-pivot, amount: half the sink}\n  - {point: teeth, name: Teeth, role: never, why: They hold dirt}\nstages:\n  - stage: reassembly\n    steps:\n      - {step: oil, do: Oil, oil: upper}\n      - {step: look, do: Look, stays-dry: teeth}\n";
        (string id, _) = bench.Session.Book("P-1", "Wall clock", "", Files.Procedures.ProcedureReader.Read("plain.yaml", plain, Files.Procedures.ProcedureLibrary.Empty));
        bench.Keys("F2").Shell.Board.Open(id);
        bench.Keys("Enter", "F7");
        Snapshot.Verify(bench.Picture());
        bench.Keys("t");
        Assert.Equal("This movement has no map.", bench.Shell.Message);
    }

    [Fact]
    public void A_role_with_a_choice_of_bottles_is_asked_for_once_in_a_session()
    {
        using PaperBench bench = AtOiling();
        Ask.Oil at = (Ask.Oil)((OilingModel)bench.Shell.Screen).Question!;
        string lubricant = bench.Session.Workshop.Lubricants.First(l => l.Roles.Any(r => r.Value == at.Point.Role.Value)).Id;
        bench.Session.Act(new BenchAction.NoteBottle(lubricant, "NEW-2", new DateOnly(2026, 3, 1), null));
        bench.Keys("Enter");
        Assert.IsType<PickModel>(bench.Shell.Screen);
        Snapshot.Verify(bench.Picture());
        bench.Keys("2");
        Assert.EndsWith("NEW-2.", bench.Shell.Message, StringComparison.Ordinal);
        OilingModel oiling = (OilingModel)bench.Shell.Screen;
        int before = oiling.Run.Job.State.Log.Count;
        bench.Keys("Enter");
        Assert.Equal(before + 1, oiling.Run.Job.State.Log.Count);
        Assert.Equal("NEW-2", oiling.Run.Job.State.Points[at.Point.Id].Event.Batch);
        // Another session asks anew.
        bench.Keys("u").Restart().Shell.Board.Open(bench.Session.Find("Q26-001")[0].Subject);
        bench.Keys("Enter");
        Assert.IsType<PickModel>(bench.Shell.Screen);
    }

    [Fact]
    public void A_bottle_that_nobody_stated_is_told_once_and_then_served_without()
    {
        using PaperBench bench = new PaperBench().WithJob().To("oil-train-side");
        Ask.Oil at = (Ask.Oil)((Offer.Answer)bench.Run.Offer).Ask;
        string name = bench.Session.Circumstances(bench.Run.Job).LubricantFor(at.Point.Role)!.Name;
        string role = Files.Sentences.JobWords.Role(at.Point.Role);
        bench.Restart();
        bench.Shell.Board.Open(bench.Session.Find("Q26-001")[0].Subject);
        int before = bench.Job.Log.Count;
        bench.Keys("Enter");
        Assert.Equal($"No bottle is stated for {name} ({role}): b names it. Going on serves without, and this is not said again.", bench.Shell.Message);
        Assert.Equal(before, bench.Job.Log.Count);
        bench.Keys("Enter");
        Assert.Equal(before + 1, bench.Job.Log.Count);
        bench.Keys("b").Type("X-9").Type("2 Mar").Type("");
        Assert.Equal($"In use: {name}, X-9.", bench.Shell.Message);
        Assert.Equal(new DateOnly(2026, 3, 2), bench.Session.Bench.Batches.Values.First(b => b.Batch == "X-9").OpenedOn);
    }

    [Fact]
    public void What_speaks_against_a_bottle_stands_before_the_act_and_in_its_record()
    {
        using PaperBench bench = AtOiling();
        Ask.Oil at = (Ask.Oil)((OilingModel)bench.Shell.Screen).Question!;
        string lubricant = bench.Session.Circumstances(((OilingModel)bench.Shell.Screen).Run.Job).LubricantFor(at.Point.Role)!.Id;
        bench.Session.Act(new BenchAction.TakeBatch(lubricant, "OLD-1", new DateOnly(2023, 1, 5), new DateOnly(2026, 2, 1)));
        bench.Session.Act(new BenchAction.FinishBottle(lubricant, lubricant == "heavy-oil" ? "H-1" : "L-1"));
        Snapshot.Verify(bench.Picture(), "oiling");
        bench.Keys("Esc");
        Snapshot.Verify(bench.Picture(), "run");
        bench.Keys("Enter");
        Assert.Equal("lubricant-past-date", bench.Job.Deviations[^1].Event.Kind);
        Assert.Contains("bottle past its date", bench.Shell.Message, StringComparison.Ordinal);
    }
}
