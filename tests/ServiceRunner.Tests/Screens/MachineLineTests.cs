using ServiceRunner.Core.Jobs;
using ServiceRunner.Core.Procedures;
using ServiceRunner.Verbs;

namespace ServiceRunner.Tests.Screens;

/// <summary>The service of a wrist movement cleaned in the rotating machine instead of in hand jars.</summary>
public class MachineLineTests
{
    private static readonly string[] MachineJars = ["M1", "M2", "M3", "M4", "M5"];

    private static string Workshop(string preference)
    {
        string demo = House.Embedded("demo/").First(f => f.Name == "workshop.yaml").Text;
        Assert.Contains(", cleaning: jars}", demo, StringComparison.Ordinal);
        return demo.Replace(", cleaning: jars}", preference + "}", StringComparison.Ordinal);
    }

    [Fact]
    public void Walked_to_its_end_it_owes_nothing_and_makes_no_deviation()
    {
        using PaperBench bench = new PaperBench(Workshop(", cleaning: machine")).WithJob();
        bench.ToEnd();
        Offer.Close close = Assert.IsType<Offer.Close>(bench.Run.Offer);
        Assert.True(close.Owed.IsNothing, close.Owed.ToString());
        Assert.Empty(bench.Job.Deviations);
        Assert.DoesNotContain(bench.Job.Steps.Keys, s => s.Step.StartsWith("wash/", StringComparison.Ordinal));
        List<PlannedStep> machine = [.. bench.Run.Job.Plan.Steps.Where(s => s.Step.Id.Value.StartsWith("machine/", StringComparison.Ordinal))];
        Assert.True(machine.Count >= 30, $"{machine.Count}");
        Assert.All(machine, s => Assert.True(bench.Job.Steps[s.Key].End!.Done, s.Step.Id));
        bench.Keys("c");
        Assert.IsType<Phase.Complete>(bench.Job.Phase);
    }

    [Fact]
    public void Its_baskets_go_through_the_machines_own_jars_and_spin_after_each_the_last_once_more_after_pegging()
    {
        using PaperBench bench = new PaperBench(Workshop(", cleaning: machine")).WithJob();
        bench.ToEnd();
        List<JobEvent.SoakBegun> plates = [.. bench.Job.Soaks.Values.OrderBy(s => s.BegunAt.Wall).Select(s => s.Begun).Where(b => b.Parts.Contains("main-plate"))];
        Assert.Equal([.. MachineJars, "M5"], plates.Where(b => b.Kind == SoakKind.Bath).Select(b => b.Jar));
        foreach (int bath in Enumerable.Range(0, plates.Count).Where(i => plates[i].Kind == SoakKind.Bath))
            Assert.Equal(SoakKind.Spin, plates[bath + 1].Kind);
        Assert.All(plates.Where(b => b.Kind is SoakKind.Spin or SoakKind.Dry), b => Assert.NotNull(b.Window.Most));
    }

    [Theory]
    [InlineData("1", "wash/jars-ready")]
    [InlineData("2", "machine/machine-ready")]
    public void Where_the_workshop_prefers_neither_the_repairer_is_asked(string key, string first)
    {
        using PaperBench bench = new PaperBench(Workshop("")).WithJob().To("wash/jars-ready");
        Assert.Equal("cleaning", Assert.IsType<Offer.Fact>(bench.Run.Offer).Question.Fact);
        bench.Keys(key);
        Assert.Equal(first, bench.Run.Shown!.Step.Id.Value);
    }

    // By what waits for what, and not by the order that a walk happens to take.
    [Fact]
    public void The_pot_waits_for_every_step_before_it_that_handles_something_flammable()
    {
        Dictionary<string, Step> steps = House.LibraryOf(null).Read("cleaning-line-machine")!.Procedure!.Steps.ToDictionary(s => s.Id.Value);
        HashSet<string> first = [];
        Stack<string> todo = new(["pot-warm"]);
        while (todo.TryPop(out string? step))
            foreach (string after in steps[step].After.Select(a => a.Value).Where(first.Add)) todo.Push(after);
        IEnumerable<string> flammable = steps.Values.Where(s => s.Cautions.Any(c => c.Value == "flammable")).Select(s => s.Id.Value);
        Assert.Equal(["pot-warm", "warm-all", "close-line"], flammable.Where(s => !first.Contains(s)));
    }

    [Fact]
    public void Pegging_waits_for_the_machine_line()
    {
        using PaperBench bench = new PaperBench(Workshop(", cleaning: machine")).WithJob().To("machine/machine-ready");
        PlannedStep peg = bench.Run.Job.Plan.Steps.First(s => s.Step.Id.Value == "peg-holes");
        Blocker.StageFirst before = Assert.Single(Blocker.Of(bench.Job, peg, bench.Run.Job.Plan).OfType<Blocker.StageFirst>());
        Assert.Equal("cleaning", before.Stage);
        bench.To("peg-holes");
        Assert.Empty(Blocker.Of(bench.Job, peg, bench.Run.Job.Plan));
    }
}
