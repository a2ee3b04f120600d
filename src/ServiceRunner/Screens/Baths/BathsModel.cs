using ServiceRunner.Core.Jobs;
using ServiceRunner.Core.Quantities;
using ServiceRunner.Files.Sentences;
using ServiceRunner.Lines;
using ServiceRunner.Screens.Pick;
using ServiceRunner.Session;

namespace ServiceRunner.Screens.Baths;

/// <summary>Every clock that runs, whichever job it is of, in big figures; the jars and their life.</summary>
public sealed class BathsModel(Shell shell) : ScreenModel(shell)
{
    private readonly KnockGuard _guard = new(TimeSpan.FromMilliseconds(shell.Session.Workshop.Pedal.DeadMilliseconds));

    /// <inheritdoc/>
    public override string Name => "Baths";

    /// <summary>The clocks, the most overdue first.</summary>
    public IReadOnlyList<(OpenJob Job, Soak Soak)> Clocks =>
        [.. Shell.Session.RunningSoaks().OrderBy(c => c.Soak.Window.Aim - c.Soak.Length(Shell.Session.Now).Length)];

    /// <inheritdoc/>
    public override IReadOnlyList<ScreenAction> Actions =>
    [
        new([.. Shell.Session.Workshop.Pedal.GoOn.Select(k => k.Value)], EndName(), "Ends the first clock that reached its aim.",
            () => Ready() is null ? NotReady() : "", () => { if (_guard.Admits(Shell.Steady)) End(Ready()!.Value); }, 1),
        new(["e"], "end one now", "Ends a clock, also before its aim.", () => Clocks.Count == 0 ? "No clock runs." : "", () => OneOf("End which clock?", End), 2),
        new(["+"], "more time", "Gives a clock more time: its aim moves, its most stays.", () => Clocks.Count == 0 ? "No clock runs." : "", () => OneOf("More time for which clock?", c => ClockTime.Ask(Shell, c.Job, c.Soak)), 3),
        new(["j"], "fill a jar", "Writes down that a jar got fresh liquid.", () => Shell.Session.Workshop.Jars.Count == 0 ? "The workshop file names no jars." : "", FillJar, 3),
        ScreenAction.Always("Esc", "back", "Returns to the screen before.", () => Shell.GoBack(), 4),
    ];

    private (OpenJob Job, Soak Soak)? Ready() =>
        Clocks.FirstOrDefault(c => c.Soak.Standing(Shell.Session.Now) >= Standing.AtAim) is { Job: not null } ready ? ready : null;

    private string EndName() => Ready() is { } ready ? $"out it comes: end {JobWords.Clock(ready.Soak.Begun, Shell.Session.Workshop)} of {ready.Job.State.Number}" : "end the ready one";

    private string NotReady() => Clocks.Count == 0 ? "No clock runs." : "No clock has reached its aim; e ends one early.";

    private void End((OpenJob Job, Soak Soak) clock)
    {
        if (EndWith(clock, "") is { Length: > 0 } complaint) Shell.Say(complaint, refusal: true);
    }

    // Within the question for a reason, a complaint keeps the question open with what was typed.
    private string EndWith((OpenJob Job, Soak Soak) clock, string reason)
    {
        ActOutcome outcome = Shell.Session.Act(clock.Job, new JobAction.EndSoak(clock.Soak.Begun.Step, reason));
        if (outcome is ActOutcome.Refused { Why: Rejection.ReasonWanted wanted })
        {
            Shell.Ask(Prompt.Reason(wanted.Kinds, reason => EndWith(clock, reason)));
            return "";
        }
        if (!outcome.IsDone) return outcome.Sentence(clock.Job.Plan, Shell.Session.Folder.Path);
        Shell.Say($"Ended: {JobWords.Clock(clock.Soak.Begun, Shell.Session.Workshop)} of {clock.Job.State.Number} after {Times.Clock(clock.Soak.Length(Shell.Session.Now).Length)}.");
        return "";
    }

    private void OneOf(string which, Action<(OpenJob Job, Soak Soak)> act)
    {
        if (Clocks is [var only]) act(only);
        else Shell.Choose(which, [.. Clocks.Select(c => new Choice($"{JobWords.Clock(c.Soak.Begun, Shell.Session.Workshop)}, {c.Job.State.Number}", Times.Clock(c.Soak.Length(Shell.Session.Now).Length), () => act(c)))]);
    }

    private void FillJar() => Shell.Choose("Which jar was filled?", [.. Shell.Session.Workshop.Jars.Select(j => new Choice(j.Name, BathsPage.JarLife(Shell, j), () =>
        Shell.Tell(Shell.Session.Act(new Core.Benches.BenchAction.FillJar(j.Id)), new Plan([]), $"{j.Name} is fresh.")))]);

    /// <inheritdoc/>
    public override IEnumerable<Telling> Sentences() => BathsLines.Of(this, Shell);

    /// <inheritdoc/>
    public override IEnumerable<Telling> MoreSentences() => BathsLines.Jars(Shell);

    /// <inheritdoc/>
    public override void Draw(Sheet sheet, int top, int rows) => BathsPage.Draw(sheet, top, rows, this, Shell);
}
