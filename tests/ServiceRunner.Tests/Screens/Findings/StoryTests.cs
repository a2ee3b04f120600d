using ServiceRunner.Core.Jobs;
using ServiceRunner.Files.Reports;
using ServiceRunner.Files.Sentences;
using ServiceRunner.Screens.Findings;
using ServiceRunner.Screens.Parts;
using ServiceRunner.Session;
using ServiceRunner.Tests.Shared;

namespace ServiceRunner.Tests.Screens.Findings;

/// <summary>
/// A service in which faults turn up half way: under the train bridge a bent fourth-wheel pivot and a chipped escape
/// jewel, a click spring that does not belong, and a setting lever that is felt worn.
/// </summary>
public class StoryTests
{
    private static FindingsModel Findings(PaperBench bench) => Assert.IsType<FindingsModel>(bench.Shell.Screen);

    // Answers the question at hand as given, whichever step asks it.
    private static void See(PaperBench bench, string spot, string seen)
    {
        bench.ToAsk($"examine:{spot}");
        Ask ask = Assert.IsType<Offer.Answer>(bench.Run.Offer).Ask;
        bench.Keys($"{ask.Choices.ToList().IndexOf(seen) + 1}");
        Assert.Equal(seen, bench.Job.Findings[^1].Event.What);
    }

    private static PaperBench Mark(PaperBench bench, string what)
    {
        int at = Findings(bench).Entries.ToList().FindIndex(f => f.Noted.Event.Spot == what);
        while (Findings(bench).At != at) bench.Keys(Findings(bench).At < at ? "Down" : "Up");
        return bench;
    }

    // The new wheel is not there yet: whenever the repair comes to hand, its time is waited out.
    private static void InTheService(PaperBench bench, Func<bool> there, string what)
    {
        for (int i = 0; i < 500; i++)
        {
            bench.Until(() => there() || bench.Run.Shown is { Key.Instance: not "1" }, what);
            if (there()) return;
            bench.Wait(TimeSpan.FromSeconds(20));
        }
        throw new InvalidOperationException(what);
    }

    [Fact]
    public void From_the_fault_to_the_report()
    {
        using PaperBench bench = new PaperBench().WithJob();
        See(bench, "fourth-pivots", "bent");
        See(bench, "escape-upper-jewel", "cracked");
        See(bench, "click-spring", "not original");
        bench.Keys("F5");
        Snapshot.Verify(bench.Picture(120, 40), "three-found.120x40");
        Snapshot.Verify(bench.Picture(), "three-found.80x24");

        // The wheel and the jewel are to be mended; the owner agrees to the one at once and wants to think about the other.
        Mark(bench, "fourth-pivots").Keys("c").Type("95").Type("1 h").Keys("Enter").Pick("Mend it here").Pick("Replace a wheel");
        Assert.Contains("It costs, so it waits for the owner's word.", bench.Shell.Message, StringComparison.Ordinal);
        Mark(bench, "escape-upper-jewel").Keys("c").Type("60,50").Type("").Keys("Enter").Pick("Mend it here").Pick("Replace a hole jewel");
        Mark(bench, "click-spring").Keys("Enter").Pick("It stays").Type("sound, and strong enough");
        bench.Keys("e");
        Assert.Contains("The estimate is written down: 155.50 EUR.", bench.Shell.Message, StringComparison.Ordinal);
        bench.Keys("a").Pick("Yes, to a part").Pick("Yes").Pick("Not said yet").Pick("by telephone").Type("2026-03-02").Type("the wheel, yes; the jewel I must think about");
        Snapshot.Verify(bench.Picture(), "agreed-to-one");
        Waits waits = Findings(bench).Waits;
        Assert.NotEmpty(waits.Waiting);
        Assert.NotEqual(0, waits.Free);

        // The cleaning of everything else goes on, without the wheel and the bridge.
        bench.Keys("Esc");
        InTheService(bench, () => bench.Run.Shown?.Step.Id.Value == "wash/wash", "the wash");
        bench.Keys("Enter");
        IReadOnlyList<string> basket = Assert.Single(bench.Job.RunningSoaks).Begun.Parts;
        Assert.DoesNotContain("fourth-wheel", basket);
        Assert.DoesNotContain("train-bridge", basket);
        Assert.Contains("third-wheel", basket);

        // The keyless work: felt worn, a third repair.
        bench.Keys("f").Pick("Setting lever").Pick("worn").Pick("It belongs").Pick("Seen").Keys("F5");
        Mark(bench, "setting-lever").Keys("Enter").Pick("Mend it here").Pick("Replace a part of the winding");
        bench.Keys("Esc");
        InTheService(bench, () => bench.Job.RunningSoaks.IsEmpty && bench.Run.Shown is { Key.Instance: "1", Stage.Id.Value: not "cleaning" }, "the end of the cleaning");

        // Three weeks for the wheel. What lies in the tray is looked at before the work goes on.
        bench.Keys("h").Pick("A part").Type("a fourth wheel, ordered").Type("+3 weeks").Type("power off, covered");
        bench.Wait(TimeSpan.FromDays(21)).Restart();
        bench.Shell.Board.Open(bench.Session.Board()[0].Subject);
        Assert.IsType<ActOutcome.Refused>(bench.Session.Act(bench.Run.Job, new JobAction.Restart()));
        bench.Keys("h");
        for (int i = 0; i < 40 && bench.Shell.Screen is TrayCheckModel; i++) bench.Keys("PageDown");
        Assert.IsType<Phase.Running>(bench.Job.Phase);
        bench.Keys("F5", "a").Pick("Yes, to all").Pick("in writing").Type("2026-03-23").Type("then the jewel too");

        // The repairs, each to its end; then what was left out is washed by itself.
        foreach (string spot in new[] { "fourth-pivots", "escape-upper-jewel", "setting-lever" })
        {
            Mark(bench, spot).Keys("g");
            string instance = bench.Run.Shown!.Key.Instance;
            bench.Until(() => Repair.AllOf(bench.Job, bench.Run.Job.Plan).Single(r => r.Instance == instance).IsFinished, $"the end of the repair of {spot}");
            bench.Keys("F5");
        }
        Assert.All(Findings(bench).Entries, f => Assert.True(f.IsSettled, $"{f.Noted.Event.Spot} {f.Standing}"));
        bench.Keys("Esc");
        foreach (string part in new[] { "train-bridge", "setting-lever", "fourth-wheel" })
            if (PartsLedger.LeftOutOf(bench.Job, bench.Run.Job.Plan, part).Count > 0) Assert.True(bench.Run.Act(new JobAction.WashAgain(part), ""));
        bench.ToEnd();
        Owed owed = Assert.IsType<Offer.Close>(bench.Run.Offer).Owed;
        Assert.True(owed.IsNothing, OfferWords.OwedWords(owed, bench.Run.Job.Plan));
        bench.Keys("c");
        Assert.IsType<Phase.Complete>(bench.Job.Phase);
        Assert.DoesNotContain(bench.Job.Deviations, d => d.Event.Kind is Deviation.PartNotReady or Deviation.RepairOpen or Deviation.WithoutConsent or Deviation.OverFinding or Deviation.OutOfOrder);
        string report = new TextReport(new JobStory(bench.Job, bench.Run.Job.Plan, bench.Session.Workshop, "", "")).ToString();
        Snapshot.Verify(string.Join("\n\n", new[] { "Findings", "Estimates and the owner's answers" }.Select(s => Section(report, s))), "told-in-the-report");
        // Each repair stands under a heading of its own, behind the service.
        string[] repairs = ["Repair: Replace a wheel with its pinion (Fourth wheel with long pivot)", "Repair: Replace a hole jewel or an endstone (Train bridge)", "Repair: Replace a part of the winding or keyless work (Setting lever)"];
        Assert.Equal(repairs, report.Split('\n').Where(l => l.StartsWith("Repair: ", StringComparison.Ordinal)));
    }

    private static string Section(string report, string title)
    {
        int at = report.IndexOf($"\n{title}\n", StringComparison.Ordinal);
        return report[(at + 1)..report.IndexOf("\n\n", at + 1, StringComparison.Ordinal)];
    }
}
