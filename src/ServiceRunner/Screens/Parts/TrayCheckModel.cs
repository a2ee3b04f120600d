using System.Globalization;
using ServiceRunner.Core.Jobs;
using ServiceRunner.Files.Sentences;
using ServiceRunner.Lines;
using ServiceRunner.Session;

namespace ServiceRunner.Screens.Parts;

/// <summary>
/// The tray against the ledger at the end of a wait, row by row. Going on says that what is listed lies there; a number
/// marks what does not. Only the end writes anything down.
/// </summary>
public sealed class TrayCheckModel(Shell shell, OpenJob job) : JobScreen(shell, job)
{
    private readonly KnockGuard _guard = new(TimeSpan.FromMilliseconds(shell.Session.Workshop.Pedal.DeadMilliseconds));

    private TrayMarks Marks => Shell.TrayMarks.TryGetValue(Job.Id, out TrayMarks? marks) ? marks : Shell.TrayMarks[Job.Id] = new TrayMarks();

    private IReadOnlyList<TrayPortion> Portions => TrayChecks.Portions(State);

    private TrayPortion? Here => Portions is var all && Marks.At < all.Count ? all[Marks.At] : null;

    // What was marked and moved since by another screen is no question of the tray any more.
    private IReadOnlyList<string> Missing => [.. PartsLedger.InTray(State).Where(Marks.Missing.Contains)];

    /// <inheritdoc/>
    public override string Name => "Tray check";

    /// <inheritdoc/>
    public override string Head => $"{State.Number}, tray check: {State.What}";

    /// <inheritdoc/>
    public override IReadOnlyList<ScreenAction> Actions =>
    [
        new([.. Shell.Session.Workshop.Pedal.GoOn.Select(k => k.Value)], Going, "Says that what is listed and not marked lies there; behind the last row, writes it down and ends the wait.", () => "", GoOn, 0),
        new([.. Shell.Session.Workshop.Pedal.Back.Select(k => k.Value)], "row before", "Shows the row before; what is marked stays marked.", () => Marks.At == 0 ? "This is the first row." : "", () => Marks.At = Math.Min(Marks.At, Portions.Count) - 1, 2),
        ScreenAction.Always("Esc", "leave it for now", "Leaves the check; the job goes on waiting, and the marks are kept while the program runs.", Leave, 3),
    ];

    private string Going => Here is not { } here ? "write it down and end the wait"
        : here.Parts.Count(Marks.Missing.Contains) is > 0 and var missing ? missing == here.Parts.Count ? "none of these is there" : $"the others are there" : "all there";

    private void Leave()
    {
        Shell.GoBack();
        Shell.Say("It goes on waiting; nothing is written down. What is marked is kept while the program runs.");
    }

    private void GoOn()
    {
        if (!_guard.Admits(Shell.Steady)) Shell.Say(KnockGuard.Ignored(Shell.Session.Workshop.Pedal.DeadMilliseconds));
        else if (Here is not null) Marks.At++;
        else End();
    }

    private void End()
    {
        IReadOnlyList<string> missing = Missing;
        if (!Shell.Tell(Session.Act(Job, new JobAction.Restart(missing)), Job.Plan, missing.Count == 0 ? "On the bench again; the whole tray was there."
            : $"On the bench again. Written down as lost, and as {(missing.Count == 1 ? "a finding" : "findings")}: {Times.List(missing.Select(Job.Plan.NameOf))}.")) return;
        Shell.TrayMarks.Remove(Job.Id);
        Shell.GoBack();
    }

    /// <inheritdoc/>
    public override bool Press(Stroke key)
    {
        if (key.Name is not [>= '1' and <= '9'] || Here is not { } here || key.Name[0] - '1' >= here.Parts.Count) return false;
        string part = here.Parts[key.Name[0] - '1'];
        if (!Marks.Missing.Remove(part)) Marks.Missing.Add(part);
        return true;
    }

    /// <summary>What going on writes down behind the last row, as a sentence.</summary>
    public string Sentence
    {
        get
        {
            IReadOnlyList<string> missing = Missing;
            int there = PartsLedger.InTray(State).Count - missing.Count;
            string seen = $"{Times.Count(there, "part")} {(there == 1 ? "lies" : "lie")} in the tray";
            return missing.Count == 0 ? $"Going on writes down that all {seen}, and ends the wait."
                : $"Going on writes down that {seen}, that {Times.List(missing.Select(Job.Plan.NameOf))} {(missing.Count == 1 ? "is lost, which is a finding" : "are lost, each of which is a finding")}, and ends the wait.";
        }
    }

    /// <inheritdoc/>
    public override IEnumerable<Telling> Sentences()
    {
        if (Here is not { } here)
        {
            yield return Sentence;
            yield break;
        }
        yield return $"{here.Title}. The number of what does not lie there marks it; Enter says that the rest does.";
        for (int i = 0; i < here.Parts.Count; i++)
            yield return string.Create(CultureInfo.InvariantCulture, $"{i + 1} {Place(here.Parts[i])} {Job.Plan.NameOf(here.Parts[i])}{(Marks.Missing.Contains(here.Parts[i]) ? ", not there" : "")}");
    }

    private string Place(string part) => State.PlaceOf(part) is PartPlace.InTray { Compartment.Length: > 0 } tray ? JobWords.Compartment(tray.Compartment) : "";

    /// <inheritdoc/>
    public override void Draw(Sheet sheet, int top, int rows)
    {
        int count = Portions.Count;
        if (Here is not { } here)
        {
            sheet.Write(1, top, $"Every row was looked at ({count} of {count}).", Ink.Faint);
            int y = top + 2;
            foreach (string line in Paragraph.Wrap(Sentence, sheet.Width - 4)) sheet.Write(2, y++, line, Ink.Title);
            return;
        }
        sheet.Write(1, top, string.Create(CultureInfo.InvariantCulture, $"{Marks.At + 1} of {count}: which of these does not lie where it should? Its number marks it."), Ink.Faint);
        sheet.Write(2, top + 1, here.Title, Ink.Title);
        // Closer together where rows are short: each of the nine must be seen.
        int step = rows - 3 >= here.Parts.Count * 2 ? 2 : 1;
        for (int i = 0; i < here.Parts.Count; i++) Part(sheet, top + 3 + i * step, i, here.Parts[i]);
    }

    private void Part(Sheet sheet, int y, int i, string part)
    {
        bool missing = Marks.Missing.Contains(part);
        sheet.Write(2, y, string.Create(CultureInfo.InvariantCulture, $"{i + 1}"), Ink.Key);
        int x = sheet.Write(4, y, Place(part).PadRight(5), missing ? Ink.Caution : Ink.Plain);
        x = sheet.Write(x + 1, y, Paragraph.Clip($"{Job.Plan.NameOf(part)}{(Job.Plan.Part(part) is { Count: > 1 } many ? $" ({many.Count} of them)" : "")}", sheet.Width - x - 16), missing ? Ink.Caution : Ink.Strong);
        if (missing) sheet.Write(x + 2, y, "✗ not there", Ink.Caution);
    }
}
