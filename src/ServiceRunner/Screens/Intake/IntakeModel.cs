using ServiceRunner.Core.Jobs;
using ServiceRunner.Core.Quantities;
using ServiceRunner.Files.Procedures;
using ServiceRunner.Files.Sentences;
using ServiceRunner.Lines;
using ServiceRunner.Screens.Pick;
using ServiceRunner.Session;

namespace ServiceRunner.Screens.Intake;

/// <summary>
/// The form at the counter: one line a thing, all optional but what it is. A new one is kept as long as the program
/// runs, until it is booked in; in a job that is there, each change is written down at once.
/// </summary>
public sealed partial class IntakeModel(Shell shell, OpenJob? job = null) : ScreenModel(shell)
{
    private IntakeDraft _draft = new();

    /// <inheritdoc/>
    public override string Name => "Intake";

    /// <inheritdoc/>
    public override string Head => job is null ? "Intake: a new job" : $"{job.State.Number}, intake: {job.State.What}";

    private BenchSession Session => Shell.Session;

    /// <summary>What stands in the lines.</summary>
    public IntakeDraft Draft => job is null ? _draft : IntakeDraft.Of(job.State, Owner);

    private Files.Data.Owner? Owner => Session.Owners.Find(job!.State.Owner);

    /// <summary>True while it is not booked in.</summary>
    public bool IsNew => job is null;

    /// <summary>Which line is marked.</summary>
    public int At { get; private set; }

    private DateOnly Today => Session.Now.Day;

    /// <summary>The number that it would be booked in under, or has.</summary>
    public string Number => Draft.Number.Length > 0 ? Draft.Number : Shell.Board.NextNumber();

    private string Closed => Session.ReadsOnly ? "This is opened to read only."
        : Session.Bench.Repairer.Length == 0 ? "Nobody is signed in: F2, then i, says who works here."
        : job is null ? ""
        : job.WhyReadOnly.Length > 0 ? job.WhyReadOnly
        : job.State.Phase.IsFinal ? RejectionWords.Sentence(new Rejection.NotNow(job.State.Phase), job.Plan) : "";

    private string AsBooked => job is null ? Closed : "That stays as it was booked in.";

    // How to reach somebody lies beside the log: it can be put right also when the job is over.
    private string OwnerClosed => job is not null && Owner is not null ? Session.ReadsOnly ? Closed : "" : Closed;

    /// <summary>The lines.</summary>
    public IReadOnlyList<IntakeField> Fields
    {
        get
        {
            IntakeDraft d = Draft;
            return
            [
                Line("What it is", d.What, "As one would know it again: wrist watch, gilt dial, scratched at 4.", (x, t) => x with { What = t }) with { WhyNot = AsBooked },
                new IntakeField("Procedure", d.Procedure.Title, "By which procedure it is worked on; full services come first.", AsBooked, () => ChooseProcedure(() => { })),
                new IntakeField("Owner", job is { State.Owner.Length: > 0 } && Owner is null ? "(erased)" : d.Owner.Name, "A name; it is kept beside the log and can be erased. A part of one that is known already will do.", Closed, AskOwner),
                Reach("Telephone", d.Owner.Telephone, "", (x, t) => x with { Telephone = t }),
                Reach("Mail", d.Owner.Mail, "", (x, t) => x with { Mail = t }),
                Reach("Address", d.Owner.Address, "", (x, t) => x with { Address = t }),
                .. d.Owner.Contact.Length > 0 ? [Reach("Contact", d.Owner.Contact, "Any other way to reach them.", (x, t) => x with { Contact = t })] : Array.Empty<IntakeField>(),
                Line("Serial", d.Serial, "As engraved.", (x, t) => x with { Serial = t }),
                Line("Came with", d.Accessories, "Strap, box, key, papers.", (x, t) => x with { Accessories = t }),
                Line("On arrival", d.Condition, "In short: glass cracked, crown missing, does not go.", (x, t) => x with { Condition = t }),
                new IntakeField("Promised", d.Promised is { } day ? $"{Days.Long(day)}{(Promise.Standing(day, Today) is PromiseStanding.Ahead ? "" : $" ({IntakeWords.Promised(day, Today)})")}" : "", $"The day. {DayText.Ahead}", Closed, AskPromised)
                    { Urgent = job?.State.Phase.IsFinal != true && Promise.Standing(d.Promised, Today) is PromiseStanding.Near or PromiseStanding.Past },
                new IntakeField("Cost limit", Limit, $"What the owner agreed to at most{(Session.Workshop.Currency.Length > 0 ? $", in {Session.Workshop.Currency}" : "")}; as 380 or 380.50.", Closed, AskLimit),
                new IntakeField("Number", Number, "The workshop's own number.", AsBooked, AskNumber),
            ];
        }
    }

    private string Limit => job is not null ? IntakeWords.Limit(job.State.Intake) : _draft.Limit is { } limit ? $"{limit} {Session.Workshop.Currency}".TrimEnd() : "";

    /// <inheritdoc/>
    public override IReadOnlyList<ScreenAction> Actions =>
    [
        new(["Enter", "PageDown"], "change it", "Asks for the marked line; an empty answer empties it.", () => Fields[Marked].WhyNot, () => Fields[Marked].Edit(), 1),
        ScreenAction.Always("Down", "next", "Marks the next line.", () => At = Math.Min(Fields.Count - 1, Marked + 1), 6),
        ScreenAction.Always("Up", "previous", "Marks the line before.", () => At = Math.Max(0, Marked - 1), 7),
        new(["b"], "book it in", "Books the job in with what stands here; the procedure is asked for if none was chosen.",
            () => job is not null ? "It is booked in; each change is written down at once." : Closed.Length > 0 ? Closed : _draft.What.Length == 0 ? "Say what it is first: the first line." : "", BookIn, 2),
        new(["t"], "receipt and label", "Writes receipt and label for a printer, and says where.",
            () => job is null ? "It is not booked in yet: b does that." : Session.ReadsOnly ? Slips.Print(Session, job.State).Sentence : "", PrintSlips, 3),
        new(["x"], "empty it", "Empties a new intake, to begin another one.", () => job is not null ? "It is booked in." : _draft.IsEmpty ? "It is empty." : "", () => (_draft, At) = (new IntakeDraft(), 0), 8),
        ScreenAction.Always("Esc", "back", "Returns to the screen before; what stands here is kept.", () => Shell.GoBack(), 5),
    ];

    /// <summary>The marked line; what an owner has besides may have gone.</summary>
    public int Marked => Math.Clamp(At, 0, Fields.Count - 1);

    /// <summary>Asks for what it is, as whoever books in would begin.</summary>
    public void Begin()
    {
        if (_draft.IsEmpty) Fields[0].Edit();
        else Shell.Say("This intake was begun and is not booked in yet; x empties it.");
    }

    private IntakeField Line(string name, string text, string hint, Func<IntakeDraft, string, IntakeDraft> set) =>
        new(name, text, hint, Closed, () => Ask(name, hint, text, typed => Change(set(Draft, typed), name)));

    private IntakeField Reach(string name, string text, string hint, Func<Files.Data.Owner, string, Files.Data.Owner> set) =>
        new(name, text, hint, OwnerClosed, () => Ask(name, hint, text, typed => Change(Draft with { Owner = set(Draft.Owner, typed) }, name)));

    // The label names the job: what was typed and left in one intake must not come back in another.
    private void Ask(string name, string hint, string start, Func<string, string> accept) =>
        Shell.Ask(new Prompt($"{name}, {Number}", hint, start, text =>
        {
            string complaint = accept(text.Trim());
            if (complaint.Length == 0) At = Math.Min(Fields.Count - 1, Marked + 1);
            return complaint;
        }));

    // A new intake only remembers. In a job each change is written down, the owner's beside the log.
    private string Change(IntakeDraft next, string name)
    {
        if (job is null)
        {
            _draft = next;
            return "";
        }
        if (next.Owner != Draft.Owner || next.OwnerId != Draft.OwnerId) return ChangeOwner(next, name);
        ActOutcome outcome = Session.Act(job, next.Noted);
        if (!outcome.IsDone) return outcome.Sentence(job.Plan, Session.Folder.Path);
        Shell.Say(outcome is ActOutcome.Done { Events.Count: > 0 } ? $"Written down: {name.ToLowerInvariant()}." : "Nothing was changed.");
        return "";
    }

    private void AskPromised() => Ask("Promised", DayText.Ahead, Draft.Promised is { } day ? day.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture) : "", text =>
        DayText.Read(text, Today, ahead: true, out DateOnly? read) is { Length: > 0 } no ? no
        : read is not { } promised ? Change(Draft with { Promised = null }, "promised")
        : promised < Today && promised != Draft.Promised ? $"{Days.Long(promised)} is past."
        : Change(Draft with { Promised = promised }, "promised"));

    private void AskLimit() => Ask("Cost limit", "As 380 or 380.50; empty for none.", Draft.Limit?.ToString() ?? "", text =>
    {
        string currency = Session.Workshop.Currency;
        if (currency.Length > 0 && text.EndsWith(currency, StringComparison.OrdinalIgnoreCase)) text = text[..^currency.Length].TrimEnd();
        if (text.Length == 0) return Change(Draft with { Limit = null }, "cost limit");
        return TypedNumber.Read(text, out TypedNumber limit) switch
        {
            TypedNumber.Fault.None when limit.Value < 0 => RejectionWords.Sentence(new Rejection.BelowNought(), new Plan([])),
            TypedNumber.Fault.None => Change(Draft with { Limit = limit }, "cost limit"),
            TypedNumber.Fault.Ambiguous => $"'{text}' can be read in two ways: type it with a point, as 1.234, or without one.",
            _ => $"'{text}' is not a number. Type the figure alone, as 380 or 380.50.",
        };
    });

    private void AskNumber() => Ask("Number", "The workshop's own number; empty for the next one.", Number, text =>
        text.Length > 0 && Session.Find(text).Count > 0 ? $"There is a job {text} already." : Change(_draft with { Number = text }, "number"));

    private void ChooseProcedure(Action then) => Shell.Choose("By which procedure?",
    [
        .. Session.Library.List().Where(e => !e.ToBeTakenIn).OrderBy(e => e.IsRepair).Select(e =>
            new Choice(e.Title, e.Fault is { } fault ? $"{fault.File}:{fault.Place}: {fault.Message}" : e.Covers, () => Chosen(e, then))),
    ]);

    private void Chosen(LibraryEntry entry, Action then)
    {
        if (Session.Library.Read(entry.Id) is not { Procedure: not null, HasErrors: false })
        {
            Shell.Say($"'{entry.File}' has faults: run 'servicerunner check' on it first.", refusal: true);
            return;
        }
        _draft = _draft with { Procedure = (entry.Id, entry.Title) };
        At = Math.Min(Fields.Count - 1, Marked + 1);
        then();
    }

    private void BookIn()
    {
        if (_draft.Procedure.Id.Length == 0)
        {
            ChooseProcedure(BookIn);
            return;
        }
        string number = Number;
        if (Session.Find(number).Count > 0) Shell.Say($"There is a job {number} already.", refusal: true);
        else if (Session.Library.Read(_draft.Procedure.Id) is not { Procedure: not null, HasErrors: false } read) Shell.Say($"The procedure '{_draft.Procedure.Title}' cannot be read any more: choose one again.", refusal: true);
        else if (SaveOwner() is { Length: > 0 } fault) Shell.Say(fault, refusal: true);
        else Book(number, read);
    }

    private void Book(string number, ReadProcedure read)
    {
        (string id, ActOutcome outcome) = Session.Book(number, _draft.What, _draft.OwnerId, read, _draft.Noted);
        if (!outcome.IsDone)
        {
            Shell.Say(outcome.Sentence(new Plan([]), Session.Folder.Path), refusal: true);
            return;
        }
        (_draft, At) = (new IntakeDraft(), 0);
        Shell.Board.Booked(id);
        Shell.Say($"{number} is booked in. t writes its receipt and label.");
    }

    private void PrintSlips()
    {
        (bool done, string sentence) = Slips.Print(Session, job!.State);
        Shell.Say(sentence, refusal: !done);
    }

    /// <inheritdoc/>
    public override IEnumerable<Telling> Sentences() => IntakeLines.Of(this);

    /// <inheritdoc/>
    public override bool TakeNumber(int number)
    {
        if (number < 1 || number > Fields.Count) return false;
        At = number - 1;
        if (Fields[At].WhyNot is { Length: > 0 } why) Shell.Say(why, refusal: true);
        else Fields[At].Edit();
        return true;
    }

    /// <inheritdoc/>
    public override void Draw(Sheet sheet, int top, int rows) => IntakePage.Draw(sheet, top, rows, this);
}
