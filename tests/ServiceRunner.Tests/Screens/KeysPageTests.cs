using System.Text;
using ServiceRunner.Screens;
using ServiceRunner.Screens.Baths;
using ServiceRunner.Screens.Findings;
using ServiceRunner.Screens.Help;
using ServiceRunner.Screens.Settings;
using ServiceRunner.Screens.Intake;
using ServiceRunner.Screens.Oiling;
using ServiceRunner.Screens.Parts;
using ServiceRunner.Screens.Stock;
using ServiceRunner.Tests.Shared;

namespace ServiceRunner.Tests.Screens;

/// <summary>docs/keys.md is made from the lists of actions.</summary>
public class KeysPageTests
{
    private static IEnumerable<ScreenModel> Screens(PaperBench bench) =>
    [
        bench.Shell.Board,
        new IntakeModel(bench.Shell),
        bench.Run,
        new BathsModel(bench.Shell),
        new FindingsModel(bench.Shell, bench.Run.Job, bench.Run),
        new OilingModel(bench.Shell, bench.Run),
        new StockModel(bench.Shell),
        new SettingsModel(bench.Shell),
        new PartsModel(bench.Shell, bench.Run.Job),
        new TrayCheckModel(bench.Shell, bench.Run.Job),
    ];

    [Fact]
    public void The_page_of_keys_is_that_of_the_program()
    {
        using PaperBench bench = new PaperBench().WithJob().To("hear-owner");
        StringBuilder page = new("# Keys\n\nMade from the program's own lists of actions. On the screen, `F1` shows those of the screen and why one cannot be used now.\n");
        foreach (ScreenModel screen in Screens(bench).Append(new HelpModel(bench.Shell, bench.Run)))
        {
            page.Append($"\n## {screen.Name.Split(':')[0]}\n\n| key | does |\n|---|---|\n");
            foreach (ScreenAction action in screen.Actions)
                page.Append($"| {string.Join(" ", action.Keys.Select(k => $"`{k}`"))} | {action.Help} |\n");
        }
        page.Append("\nIn Run, `1` to `9` choose the answer of that number; in the tray check they mark what is not there.\n\n## Everywhere\n\n| key | does |\n|---|---|\n");
        foreach (ScreenAction action in bench.Shell.Everywhere) page.Append($"| {string.Join(" ", action.Keys.Select(k => $"`{k}`"))} | {action.Help} |\n");
        page.Append("| `Ctrl+Z` | Sends the program to the background; `fg` brings it back. Clocks go on. |\n| `Ctrl+C` | Ends the program. Clocks go on counting. |\n");
        page.Append("\nThe going-on, back and third keys of a pedal are named in the workshop file. In a question `Enter` or `PageDown` takes the answer, `Esc` or `PageUp` leaves it and keeps what was typed.\n");
        string docs = Path.Combine(Repository.Root, "docs", "keys.md");
        Snapshot.Compare(page.ToString(), docs, Path.Combine(Path.GetTempPath(), "keys.received.txt"));
    }

    [Fact]
    public void No_two_actions_of_a_screen_share_a_key()
    {
        using PaperBench bench = new PaperBench().WithJob();
        foreach (ScreenModel screen in Screens(bench))
        {
            IEnumerable<string> twice = screen.Actions.Concat(bench.Shell.Everywhere).SelectMany(a => a.Keys).GroupBy(k => k).Where(g => g.Count() > 1).Select(g => g.Key);
            Assert.Empty(twice);
        }
    }
}
