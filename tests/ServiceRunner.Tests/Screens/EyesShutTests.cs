using ServiceRunner.Core.Jobs;
using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Tests.Screens;

/// <summary>The whole cleaning stage with one pedal and closed eyes: only what is said and what sounds may be known.</summary>
public class EyesShutTests
{
    [Fact]
    public void Cleaning_by_the_pedal_alone_leaves_every_soak_inside_its_window()
    {
        const string prefix = "wash/";
        using PaperBench bench = new PaperBench().WithJob();
        List<string> said = [], told = [];
        bench.Shell.StepTold = said.Add;
        bench.Shell.AlarmTold = (urgency, words, _) => told.Add($"{urgency} {words}");
        bench.To(prefix + "jars-ready");
        int before = bench.Job.Log.Count;
        // One who hears: works when something new was said, then presses; waits while told to wait.
        int heard = -1;
        for (int seconds = 0; bench.Run.Shown?.Stage.Id.Value == "cleaning" || !bench.Job.RunningSoaks.IsEmpty; seconds++)
        {
            Assert.True(seconds < 4 * 3600, $"waited four hours; said last: {said[^1]}; told last: {told.LastOrDefault()}; the screen says: {bench.Shell.Message}");
            bench.Wait(TimeSpan.FromSeconds(1));
            if (said.Count + told.Count == heard || said[^1].StartsWith("Wait for", StringComparison.Ordinal)) continue;
            heard = said.Count + told.Count;
            bench.Wait(TimeSpan.FromSeconds(1)).Keys("PageDown");
            if (bench.Shell.Message.StartsWith("That came within", StringComparison.Ordinal)) heard = -1;
            Assert.True(bench.Job.Log.Count - before < 400, said[^1]);
        }
        Soak[] soaks = [.. bench.Job.Soaks.Values.Where(s => s.Begun.Step.Step.StartsWith(prefix, StringComparison.Ordinal))];
        Assert.True(soaks.Length >= 10);
        Assert.All(soaks, s => Assert.True(s.Window.Of(s.Ended!.Length) is Standing.Within or Standing.AtAim, $"{s.Begun.Step} {s.Ended.Length} {s.Window}"));
        Assert.Empty(bench.Job.Deviations);
        Assert.Contains(said, s => s.Contains("Caution: Flammable", StringComparison.Ordinal));
    }
}
