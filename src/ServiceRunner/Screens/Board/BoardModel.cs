using ServiceRunner.Core.Benches;
using ServiceRunner.Core.Jobs;
using ServiceRunner.Files.Index;
using ServiceRunner.Lines;
using ServiceRunner.Screens.Intake;
using ServiceRunner.Screens.Pick;
using ServiceRunner.Screens.Run;
using ServiceRunner.Session;

namespace ServiceRunner.Screens.Board;

/// <summary>The jobs of the bench in the repairer's words: what each waits for, and for how long.</summary>
public sealed class BoardModel(Shell shell) : ScreenModel(shell)
{
    private string _search = "";
    private bool _all;
    private IntakeModel? _intake;
    private (IReadOnlyList<SubjectRow>? Of, string Prefix, int Number) _highest;
    private (IReadOnlyList<SubjectRow> Of, string Search, int Owners, IReadOnlyList<SubjectRow> Rows) _shown = ([], "", 0, []);

    /// <inheritdoc/>
    public override string Name => "Bench";

    /// <inheritdoc/>
    public override string Head => $"{Shell.Session.Workshop.Name}: bench";

    /// <summary>The jobs that are shown: those of the bench, or of all years with the latest first.</summary>
    public IReadOnlyList<SubjectRow> Rows
    {
        get
        {
            // Tens of thousands in the archive are not searched through at every look.
            IReadOnlyList<SubjectRow> of = _all ? Shell.Session.AllJobs() : Shell.Session.Board();
            if ((_shown.Of, _shown.Search, _shown.Owners) != (of, _search, Shell.Session.Owners.Changes)) _shown = (of, _search, Shell.Session.Owners.Changes, [.. (_all ? of.Reverse() : of).Where(Matches)]);
            return _shown.Rows;
        }
    }

    /// <summary>True if the jobs of all years are shown.</summary>
    public bool All => _all;

    /// <summary>What is searched for; empty if nothing.</summary>
    public string Search => _search;

    /// <summary>Which one is marked.</summary>
    public int At { get; private set; }

    private string NoPerson => Shell.Session.ReadsOnly ? "This is opened to read only." : Shell.Session.Bench.Repairer.Length == 0 ? "Nobody is signed in: press i first." : "";

    private string NoJobs => Rows.Count == 0 ? _search.Length > 0 ? Nothing : "There is no job yet: n books one in." : "";

    /// <inheritdoc/>
    public override IReadOnlyList<ScreenAction> Actions =>
    [
        new(["Enter", "PageDown"], "to the marked job", "Opens the marked job.", () => NoJobs, () => Open(Rows[Math.Min(At, Rows.Count - 1)].Subject), 1),
        ScreenAction.Always("Down", "", "Marks the next job.", () => At = Math.Max(0, Math.Min(Rows.Count - 1, At + 1)), 100),
        ScreenAction.Always("Up", "", "Marks the job before.", () => At = Math.Max(0, At - 1), 100),
        new(["n"], "new job", "Books a job in.", () => NoPerson, NewJob, 2),
        new(["i"], "sign in", "Says who works at this bench.", () => Shell.Session.ReadsOnly ? "This is opened to read only." : "", SignIn, 3),
        ScreenAction.Always("/", "search", "Shows the jobs that contain a text: number, piece, owner, serial, or the batch of a lubricant.", AskSearch, 4),
        new(["y"], _all ? "the bench only" : "all years", "Shows the jobs of all years, or only those of the bench again: open ones, and those finished in the last thirty days.", () => "", () => (_all, At) = (!_all, 0), 6),
        new(["Esc"], "back to the bench", "Ends the search, then shows the bench only.", () => _search.Length == 0 && !_all ? "The whole bench is shown." : "", () => (_search, _all, At) = ("", _search.Length > 0 && _all, 0), 5),
        ScreenAction.Always("o", "settings", "Shows every setting in force, where it comes from and how to change it.", () => Shell.Go(new Settings.SettingsModel(Shell)), 94),
        ScreenAction.Always("q", "leave", "Ends the program; clocks go on counting.", () => Shell.Leave(), 7),
    ];

    /// <summary>Says where else to look.</summary>
    public string Nothing => $"Nothing {(_all ? "in all years" : "here")} contains '{_search}'; {(_all ? "Esc shows all" : "y looks through all years")}.";

    private bool Matches(SubjectRow row) => _search.Length == 0 || Contains(row.Number) || Contains(row.Title) || Contains(OwnerOf(row)) || Contains(row.Serial) || row.Lots.Any(Contains);

    private bool Contains(string text) => text.Contains(_search, StringComparison.OrdinalIgnoreCase);

    /// <summary>The owner's name, from beside the log.</summary>
    public string OwnerOf(SubjectRow row) => Shell.Session.Owners.NameOf(row.Owner);

    /// <summary>Opens a job.</summary>
    public void Open(string id)
    {
        switch (Shell.Session.Read(id))
        {
            case JobReading.Ready ready: Shell.Go(new RunModel(Shell, ready.Job)); break;
            case JobReading.Unreadable unreadable: Shell.Say(unreadable.Sentence, refusal: true); break;
        }
    }

    private void AskSearch() => Shell.Ask(new Prompt("Search", "A part of a number, a piece, an owner's name, a serial or a lubricant's batch.", _search, text =>
    {
        (_search, At) = (text.Trim(), 0);
        return "";
    }));

    private void SignIn() => Shell.Choose("Who works here now?", [.. Shell.Session.Workshop.People.Select(p => new Choice(p.Name, p.Initials.Value, () =>
        Shell.Tell(Shell.Session.Act(new BenchAction.SignIn(p.Initials), p.Initials), new Plan([]), $"{p.Name} works here now."))), .. SignOut]);

    private IEnumerable<Choice> SignOut => Shell.Session.Bench.Repairer is { Length: > 0 } who
        ? [new Choice("Nobody any more", $"signs {who} out", () => Shell.Tell(Shell.Session.Act(new BenchAction.SignOut(who)), new Plan([]), $"{who} is signed out."))]
        : [];

    private void NewJob()
    {
        _intake ??= new IntakeModel(Shell);
        Shell.Go(_intake);
        _intake.Begin();
    }

    /// <summary>Leaves the intake and opens the job that it became.</summary>
    public void Booked(string id)
    {
        (_search, _all) = ("", false);
        Shell.Go(this);
        Open(id);
    }

    /// <summary>The next number after the highest of this workshop and year: <c>26-014</c>.</summary>
    public string NextNumber()
    {
        string prefix = $"{Shell.Session.Workshop.NumberPrefix}{Shell.Session.Now.Wall:yy}-";
        IReadOnlyList<SubjectRow> all = Shell.Session.AllJobs();
        // An intake shows it at every look.
        if (_highest.Of != all || _highest.Prefix != prefix)
            _highest = (all, prefix, all.Select(r => r.Number.StartsWith(prefix, StringComparison.Ordinal) && int.TryParse(r.Number[prefix.Length..], out int n) ? n : 0).DefaultIfEmpty().Max());
        return $"{prefix}{_highest.Number + 1:000}";
    }

    /// <inheritdoc/>
    public override IEnumerable<Telling> Sentences() => BoardLines.Of(this, Shell);

    /// <inheritdoc/>
    public override IEnumerable<Telling> MoreSentences() => BoardLines.Rest(this, Shell);

    /// <inheritdoc/>
    public override bool TakeNumber(int number)
    {
        if (number < 1 || number > Rows.Count) return false;
        At = number - 1;
        Open(Rows[At].Subject);
        return true;
    }

    /// <inheritdoc/>
    public override void Draw(Sheet sheet, int top, int rows) => BoardPage.Draw(sheet, top, rows, this, Shell);
}
