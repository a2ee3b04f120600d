using ServiceRunner.Core.Jobs;
using ServiceRunner.Core.Procedures;
using ServiceRunner.Lines;
using ServiceRunner.Session;

namespace ServiceRunner.Screens.Parts;

/// <summary>The tray and the screw seats of a job as a picture. One part is marked, and its whole life stands beside it.</summary>
public sealed class PartsModel : JobScreen
{
    private const int Page = 10;

    private readonly PartActs _parts;
    private string _typed = "";
    private int _width = 80;

    /// <param name="shell">The shell.</param>
    /// <param name="job">The job.</param>
    /// <param name="part">The part that is marked first; the first of the tray if empty.</param>
    public PartsModel(Shell shell, OpenJob job, string part = "") : base(shell, job)
    {
        _parts = new PartActs(shell, this);
        Marked = part;
        if (!Places.Any(p => p.Cell.Part == Marked)) Marked = Places.Select(p => p.Cell.Part).FirstOrDefault("");
    }

    /// <summary>The action with which another screen of the job reaches this one.</summary>
    public static ScreenAction Reach(Shell shell, OpenJob job, Func<string> part, int weight = 11) => ScreenAction.Always("F3", "parts",
        "Shows the tray and the screw seats: where each part is, what was done to it, what moves it next.", () => shell.Go(new PartsModel(shell, job, part())), weight);

    /// <summary>The part of a step that one would look for first; empty if it moves none.</summary>
    public static string FirstOf(Step? step) =>
        step is null ? "" : step.Removes.Concat(step.Fits).Concat(step.Tries).Concat(step.Replaces).Concat(step.Clock?.Parts ?? []).Select(p => p.Value).FirstOrDefault("");

    /// <summary>The marked part's id; empty if the job has no parts.</summary>
    public string Marked { get; private set; }

    /// <summary>What is being looked for; empty if nothing.</summary>
    public string Typed => _typed;

    /// <inheritdoc/>
    public override string Name => "Parts";

    /// <inheritdoc/>
    public override string Head => $"{Job.State.Number}, parts: {Job.State.What}";

    // While a name is typed, letters mean nothing else; before, the space answers an alarm as everywhere.
    /// <inheritdoc/>
    public override bool TakesLetters => _typed.Length > 0;

    private IReadOnlyList<TrayRow> Rows => TrayPicture.Of(Job.State, Job.Plan, _width);

    private List<(int Row, TrayCell Cell)> Places => [.. Rows.SelectMany((r, i) => r.Cells.Where(c => c.Part.Length > 0).Select(c => (i, c)))];

    private string NoPart => Marked.Length == 0 ? "This job has no parts." : Over;

    /// <inheritdoc/>
    public override IReadOnlyList<ScreenAction> Actions =>
    [
        new(["Enter"], "what of it", "Says what became of the marked part: moved, fitted by hand, set aside, sent out, lost, found, replaced, cleaned, looked over, a finding on it.",
            () => NoPart, () => _parts.Open(Marked), 1),
        ScreenAction.Always("Right", "next", "Marks the next part. A part of a name, or of a compartment, marks it when it is typed.", () => Move(1), 3),
        ScreenAction.Always("Left", "", "Marks the part before.", () => Move(-1), 100),
        ScreenAction.Always("Down", "", "Marks the part below.", () => Climb(1), 100),
        ScreenAction.Always("Up", "", "Marks the part above.", () => Climb(-1), 100),
        ScreenAction.Always("PageDown", "", "Marks a part ten rows below.", () => Climb(Page), 100),
        ScreenAction.Always("PageUp", "", "Marks a part ten rows above.", () => Climb(-Page), 100),
        new(["Tab"], "next found", "Marks the next part that what was typed is found in.", () => _typed.Length == 0 ? "Type a part of a name first." : "", () => Seek(1), _typed.Length > 0 ? 2 : 100),
        new(["Backspace"], "", "Takes back a letter of what was typed.", () => _typed.Length == 0 ? "Nothing was typed." : "", () => _typed = _typed[..^1], 100),
        .. _typed.Length > 0 ? [] : Letters,
        ScreenAction.Always("Esc", _typed.Length > 0 ? "end the search" : "back", "Returns to the screen before; while something is typed, ends the search.", Leave, 5),
    ];

    private IReadOnlyList<ScreenAction> Letters =>
    [
        new(["+"], "add a part", "Adds a part that no procedure names.", () => Over, _parts.Add, 2),
        new(["u"], "take back", "Takes the last act back; the log keeps that it was done.", () => NothingToTakeBack, TakeBack, 4),
    ];

    private void Leave()
    {
        if (_typed.Length > 0) _typed = "";
        else Shell.GoBack();
    }

    private void Move(int by)
    {
        _typed = "";
        List<(int Row, TrayCell Cell)> places = Places;
        if (places.Count > 0) Marked = places[Math.Clamp(places.FindIndex(p => p.Cell.Part == Marked) + by, 0, places.Count - 1)].Cell.Part;
    }

    // To the nearest cell of a row above or below that has one.
    private void Climb(int by)
    {
        _typed = "";
        List<(int Row, TrayCell Cell)> places = Places;
        if (places.Find(p => p.Cell.Part == Marked) is not { Cell: { } here, Row: var row }) return;
        IEnumerable<IGrouping<int, (int Row, TrayCell Cell)>> rows = places.Where(p => by > 0 ? p.Row > row : p.Row < row).GroupBy(p => p.Row);
        List<IGrouping<int, (int Row, TrayCell Cell)>> ahead = [.. by > 0 ? rows : rows.Reverse()];
        if (ahead.Count > 0) Marked = ahead[Math.Min(Math.Abs(by), ahead.Count) - 1].MinBy(p => Math.Abs(p.Cell.X - here.X)).Cell.Part;
    }

    /// <summary>The parts that what was typed is found in.</summary>
    public IReadOnlyList<string> Found => [.. Places.Select(p => p.Cell.Part).Where(Matches)];

    private bool Matches(string part) => Job.Plan.NameOf(part).Contains(_typed, StringComparison.OrdinalIgnoreCase)
        || Compartment.Named(State, Job.Plan, part).StartsWith(_typed, StringComparison.OrdinalIgnoreCase);

    // From the marked part on, and around the end.
    private void Seek(int from)
    {
        List<string> all = [.. Places.Select(p => p.Cell.Part)];
        int at = Math.Max(0, all.IndexOf(Marked));
        if (Enumerable.Range(from, Math.Max(0, all.Count)).Select(i => all[(at + i) % all.Count]).FirstOrDefault(Matches) is { } found) Marked = found;
    }

    /// <inheritdoc/>
    public override bool Press(Stroke key)
    {
        string letter = key.Name == "Space" ? " " : key.Name;
        if (letter.Length > 2 || key.Name is ['F', >= '1' and <= '9']) return false;
        _typed += letter;
        if (Found.Count > 0)
        {
            Seek(0);
            return true;
        }
        string nothing = _typed;
        _typed = _typed[..^letter.Length];
        Shell.Say($"No part's name contains '{nothing}'.", refusal: true);
        return true;
    }

    /// <inheritdoc/>
    public override IEnumerable<Telling> Sentences() => PartsPage.Sentences(this, Shell);

    /// <inheritdoc/>
    public override IEnumerable<Telling> MoreSentences() => ScrewSeats.Of(State, Job.Plan, Marked).Select(s => (Telling)$"{s.Before}{s.Text}");

    /// <inheritdoc/>
    public override void Draw(Sheet sheet, int top, int rows)
    {
        _width = PartsPage.TrayWidth(sheet.Width);
        PartsPage.Draw(sheet, top, rows, this, Shell, Rows);
    }
}
