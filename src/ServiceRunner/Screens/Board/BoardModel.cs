using ServiceRunner.Core.Benches;
using ServiceRunner.Core.Jobs;
using ServiceRunner.Files.Index;
using ServiceRunner.Files.Procedures;
using ServiceRunner.Lines;
using ServiceRunner.Screens.Pick;
using ServiceRunner.Screens.Run;
using ServiceRunner.Session;

namespace ServiceRunner.Screens.Board;

/// <summary>The jobs of the bench in the repairer's words: what each waits for, and for how long.</summary>
public sealed class BoardModel(Shell shell) : ScreenModel(shell)
{
    private string _search = "";

    /// <inheritdoc/>
    public override string Name => "Bench";

    /// <inheritdoc/>
    public override string Head => $"{Shell.Session.Workshop.Name}: bench";

    /// <summary>The jobs that are shown.</summary>
    public IReadOnlyList<SubjectRow> Rows => [.. Shell.Session.Board().Where(Matches)];

    /// <summary>What is searched for; empty if nothing.</summary>
    public string Search => _search;

    /// <summary>Which one is marked.</summary>
    public int At { get; private set; }

    private string NoPerson => Shell.Session.ReadsOnly ? "This is opened to read only." : Shell.Session.Bench.Repairer.Length == 0 ? "Nobody is signed in: press i first." : "";

    private string NoJobs => Rows.Count == 0 ? _search.Length > 0 ? $"Nothing contains '{_search}'; Esc shows all." : "There is no job yet: n books one in." : "";

    /// <inheritdoc/>
    public override IReadOnlyList<ScreenAction> Actions =>
    [
        new(["Enter", "PageDown"], "to the marked job", "Opens the marked job.", () => NoJobs, () => Open(Rows[Math.Min(At, Rows.Count - 1)].Subject), 1),
        ScreenAction.Always("Down", "", "Marks the next job.", () => At = Math.Max(0, Math.Min(Rows.Count - 1, At + 1)), 100),
        ScreenAction.Always("Up", "", "Marks the job before.", () => At = Math.Max(0, At - 1), 100),
        new(["n"], "new job", "Books a job in.", () => NoPerson, NewJob, 2),
        new(["i"], "sign in", "Says who works at this bench.", () => Shell.Session.ReadsOnly ? "This is opened to read only." : "", SignIn, 3),
        ScreenAction.Always("/", "search", "Shows the jobs that contain a text: number, piece or owner.", AskSearch, 4),
        new(["Esc"], "all jobs", "Shows all jobs again.", () => _search.Length == 0 ? "All jobs are shown." : "", () => _search = "", 5),
        ScreenAction.Always("q", "leave", "Ends the program; clocks go on counting.", () => Shell.Leave(), 6),
    ];

    private bool Matches(SubjectRow row) => _search.Length == 0
        || row.Number.Contains(_search, StringComparison.OrdinalIgnoreCase)
        || row.Title.Contains(_search, StringComparison.OrdinalIgnoreCase)
        || OwnerOf(row).Contains(_search, StringComparison.OrdinalIgnoreCase);

    /// <summary>The owner's name, from beside the log.</summary>
    public string OwnerOf(SubjectRow row) => row.Owner.Length == 0 ? "" : Shell.Session.Owners.Find(row.Owner)?.Name ?? "(erased)";

    /// <summary>Opens a job.</summary>
    public void Open(string id)
    {
        switch (Shell.Session.Read(id))
        {
            case JobReading.Ready ready: Shell.Go(new RunModel(Shell, ready.Job)); break;
            case JobReading.Unreadable unreadable: Shell.Say(unreadable.Sentence, refusal: true); break;
        }
    }

    private void AskSearch() => Shell.Ask(new Prompt("Search", "A part of a number, a piece or an owner's name.", _search, text =>
    {
        (_search, At) = (text.Trim(), 0);
        return "";
    }));

    private void SignIn() => Shell.Choose("Who works here now?", [.. Shell.Session.Workshop.People.Select(p => new Choice(p.Name, p.Initials.Value, () =>
        Shell.Tell(Shell.Session.Act(new BenchAction.SignIn(p.Initials), p.Initials), new Plan([]), $"{p.Name} works here now."))), .. SignOut]);

    private IEnumerable<Choice> SignOut => Shell.Session.Bench.Repairer is { Length: > 0 } who
        ? [new Choice("Nobody any more", $"signs {who} out", () => Shell.Tell(Shell.Session.Act(new BenchAction.SignOut(who)), new Plan([]), $"{who} is signed out."))]
        : [];

    private void NewJob() => Shell.Choose("By which procedure?", [.. Shell.Session.Library.List().Where(e => !e.ToBeTakenIn).Select(e => new Choice(e.Title, e.Fault is { } fault ? $"{fault.File}:{fault.Place}: {fault.Message}" : e.Covers, () => Chosen(e)))]);

    private void Chosen(LibraryEntry entry)
    {
        if (Shell.Session.Library.Read(entry.Id) is not { Procedure: not null, HasErrors: false } read)
        {
            Shell.Say($"'{entry.File}' has faults: run 'servicerunner check' on it first.", refusal: true);
            return;
        }
        Shell.Ask(Prompt.Words("What is it?", "As one would know it again: wrist watch, gilt dial, scratched at 4.", what =>
            Shell.AskNext(new Prompt("Whose is it?", "A name; it is kept beside the log and can be erased. May be left empty.", "", owner =>
                Shell.AskNext(new Prompt("Your number for it?", "The workshop's own number.", NextNumber(), number => Book(read, what, owner.Trim(), number.Trim())))))));
    }

    private string Book(ReadProcedure read, string what, string owner, string number)
    {
        if (number.Length == 0) return "Nothing was typed.";
        if (Shell.Session.Find(number).Count > 0) return $"There is a job {number} already.";
        string ownerId = "";
        if (owner.Length > 0)
        {
            ownerId = Files.Machine.Identity.New();
            if (Shell.Session.Owners.Save(ownerId, new Files.Data.Owner(owner, "")) is { } fault) return Files.Sentences.FaultWords.Sentence(fault, Shell.Session.Folder.Path);
        }
        (string id, ActOutcome outcome) = Shell.Session.Book(number, what, ownerId, read);
        if (!outcome.IsDone) return outcome.Sentence(new Plan([]), Shell.Session.Folder.Path);
        _search = "";
        Open(id);
        Shell.Say($"{number} is booked in.");
        return "";
    }

    /// <summary>The next number after the highest of this workshop and year: <c>26-014</c>.</summary>
    public string NextNumber()
    {
        string prefix = $"{Shell.Session.Workshop.NumberPrefix}{Shell.Session.Now.Wall:yy}-";
        int highest = Shell.Session.AllJobs().Select(r => r.Number.StartsWith(prefix, StringComparison.Ordinal) && int.TryParse(r.Number[prefix.Length..], out int n) ? n : 0).DefaultIfEmpty().Max();
        return $"{prefix}{highest + 1:000}";
    }

    /// <inheritdoc/>
    public override IEnumerable<Telling> Lines() => BoardLines.Of(this, Shell);

    /// <inheritdoc/>
    public override IEnumerable<Telling> MoreLines() => BoardLines.Rest(this, Shell);

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
