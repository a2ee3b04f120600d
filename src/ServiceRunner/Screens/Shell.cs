using ServiceRunner.Core.Benches;
using ServiceRunner.Core.Jobs;
using ServiceRunner.Core.Quantities;
using ServiceRunner.Files.Data;
using ServiceRunner.Files.Sentences;
using ServiceRunner.Pedal;
using ServiceRunner.Screens.Alarms;
using ServiceRunner.Screens.Baths;
using ServiceRunner.Screens.Board;
using ServiceRunner.Screens.Help;
using ServiceRunner.Screens.Settings;
using ServiceRunner.Session;

namespace ServiceRunner.Screens;

/// <summary>All the screens of a bench: which one is shown, the line of messages, and the question that is open.</summary>
public sealed class Shell : IShell
{
    private readonly TimeProvider _time;
    private readonly Dictionary<string, string> _drafts = [];
    private readonly Stack<ScreenModel> _behind = new();
    private Prompt? _prompt;
    private int _promptId;
    private string _message = "";
    private bool _messageIsRefusal;
    private volatile bool _bell;
    private string _spoken = "";
    private Moment _lastTick;
    private TimeSpan _refreshed;
    private readonly Notices _notices = new();
    private DataFault? _benchFault;
    private Remembered _remembered;
    private string _noticed = "";
    private Entry? _entry;

    public Shell(BenchSession session, TimeProvider time)
    {
        (Session, _time) = (session, time);
        _lastTick = session.Now;
        Alarms = new AlarmWatch(session);
        _remembered = Remembered.Read(session.Folder);
        Quiet = _remembered.Quiet ?? session.Workshop.Voice.Quiet;
        Disk = new DiskWatch(() => DiskSpace.Left(session.Folder.Path));
        Board = new BoardModel(this);
        Screen = Board;
    }

    /// <summary>The bench.</summary>
    public BenchSession Session { get; }

    /// <summary>The clocks' alarms.</summary>
    public AlarmWatch Alarms { get; }

    /// <summary>Watches over the room on the disk.</summary>
    public DiskWatch Disk { get; init; }

    /// <summary>Told an alarm: how urgent, in words, and what it is about.</summary>
    public Action<Urgency, string, string>? AlarmTold { get; set; }

    /// <summary>Told what an alarm was about that wants no answer any more.</summary>
    public Action<string>? AlarmSettled { get; set; }

    /// <summary>Told what came to hand, in words to be spoken.</summary>
    public Action<string>? StepTold { get; set; }

    /// <summary>Told that what was said is wanted once more.</summary>
    public Action? AgainTold { get; set; }

    /// <summary>Told whether it is to be quiet.</summary>
    public Action<bool>? QuietTold { get; set; }

    /// <summary>Told each change of the screen and of its size; nothing of what is on it.</summary>
    public Action<string>? Noticed { get; set; }

    /// <summary>Called at each tick, before anything else: for presses that come from other programs.</summary>
    public Action? Ticking { get; set; }

    /// <summary>True if jobs are shown in large letters. It is remembered.</summary>
    public bool Large
    {
        get => _remembered.Large;
        set => Remember(_remembered with { Large = value });
    }

    /// <summary>What the program was started with, for the screen of settings.</summary>
    public StartedWith StartedWith { get; set; } = new();

    /// <summary>True if quiet or not was chosen by its key.</summary>
    internal bool QuietIsRemembered => _remembered.Quiet is not null;

    private void Remember(Remembered remembered)
    {
        _remembered = remembered;
        if (!Session.ReadsOnly) remembered.Save(Session.Folder);
    }

    /// <summary>True if nothing sounds or speaks; alarms still stand on the screen.</summary>
    public bool Quiet { get; private set; }

    /// <summary>The first screen.</summary>
    public BoardModel Board { get; }

    /// <summary>The screen that is shown.</summary>
    public ScreenModel Screen { get; private set; }

    /// <summary>Tray checks that are under way, by their job.</summary>
    public Dictionary<string, Parts.TrayMarks> TrayMarks { get; } = [];

    /// <summary>A clock that nobody can set, for what happens under a finger.</summary>
    public TimeSpan Steady => _time.GetElapsedTime(0);

    public Entry? Entry => _prompt is null ? null : _entry;

    public bool Done { get; private set; }

    /// <summary>Shows a sentence until the next key.</summary>
    public void Say(string sentence, bool refusal = false) => (_message, _messageIsRefusal) = (sentence, refusal);

    /// <summary>Shows a sentence where messages stand until it was there long enough to be read.</summary>
    public void Notice(string sentence) => _notices.Add(sentence);

    /// <summary>Shows another screen; going back returns to this one.</summary>
    public void Go(ScreenModel screen)
    {
        if (screen == Screen) return;
        if (screen == Board) _behind.Clear();
        else if (Screen is not Pick.PickModel) _behind.Push(Screen);
        Screen = screen;
    }

    /// <summary>Returns to the screen before this one; the board is behind them all.</summary>
    public void GoBack() => Screen = _behind.TryPop(out ScreenModel? before) ? before : Board;

    /// <summary>Ends the program; whatever runs goes on counting.</summary>
    public void Leave() => Done = true;

    /// <summary>Asks for typing. What was typed into the same question before and left stays.</summary>
    public void Ask(Prompt prompt)
    {
        _promptId++;
        _prompt = prompt with { Start = _drafts.GetValueOrDefault(prompt.Label) ?? prompt.Start };
        Say("");
    }

    /// <summary>Asks for one of several things, on a screen of its own.</summary>
    public void Choose(string title, IReadOnlyList<Pick.Choice> choices) => Go(new Pick.PickModel(this, title, choices));

    /// <summary>Says what came of an action; true if it was done.</summary>
    public bool Tell(ActOutcome outcome, Plan plan, string done)
    {
        Say(outcome.IsDone ? done : outcome.Sentence(plan, Session.Folder.Path), refusal: !outcome.IsDone);
        return outcome.IsDone;
    }

    public void Press(Stroke key)
    {
        Say("");
        _notices.Pressed(Steady);
        if (key.Name == "Ctrl+C")
        {
            Leave();
            return;
        }
        Act(key);
        Screen.Touched();
    }

    private void Act(Stroke key)
    {
        bool letter = Screen.TakesLetters && (key.Name == "Space" || key.Name.Length <= 2 && !key.Name.StartsWith('F'));
        if ((letter ? Screen.Actions : AllActions).FirstOrDefault(a => a.Keys.Contains(key.Name)) is not { } action)
        {
            if (!Screen.Press(key)) Say($"{key.Name} does nothing here; F1 shows the keys.", refusal: true);
        }
        else if (action.WhyNot() is { Length: > 0 } why)
        {
            Say(why, refusal: true);
        }
        else
        {
            action.Do();
        }
    }

    /// <summary>What can be done now: on this screen, and everywhere.</summary>
    public IReadOnlyList<ScreenAction> AllActions => [.. Screen.Actions, .. Everywhere];

    /// <summary>What can be done on every screen.</summary>
    public IReadOnlyList<ScreenAction> Everywhere =>
    [
        new([.. Session.Workshop.Pedal.Third.Select(k => k.Value), "Space"], OpenAlarms.Count > 0 ? "answer the alarm" : "say again", "Answers the most urgent alarm; if there is none, says again what was said last.",
            () => "", AnswerOrSayAgain, OpenAlarms.Count > 0 ? 0 : 80),
        ScreenAction.Always("F8", Quiet ? "sound again" : "quiet", "Turns sound and speech off and on; alarms stay on the screen.", ToggleQuiet, 93),
        ScreenAction.Always("F6", Large ? "small letters" : "large letters", "Shows the act and the clocks of a job in letters several rows high, or small again.", ToggleLarge, Screen is Run.RunModel ? 19 : 100),
        ScreenAction.Always("F1", "help", "Shows the keys of this screen.", () => Go(new HelpModel(this, Screen)), 90),
        ScreenAction.Always("F2", "bench", "Shows the bench with its jobs.", () => Go(Board), 91),
        ScreenAction.Always("F9", "stock", "Shows the lubricants of the shelf with their bottles and dates.", () => Go(new Stock.StockModel(this)), 94),
        ScreenAction.Always("F4", "baths", "Shows every clock that runs, in big figures.", () => Go(new BathsModel(this)), 92),
    ];

    public void Accept(string text)
    {
        if (_prompt is not { } prompt) return;
        string complaint = prompt.Accept(text);
        Screen.Touched();
        if (_prompt != prompt) return;
        if (complaint.Length > 0)
        {
            Say(complaint, refusal: true);
            _promptId++;
            _prompt = prompt with { Start = text };
            return;
        }
        _drafts.Remove(prompt.Label);
        _prompt = null;
    }

    /// <summary>Takes another question in the place of the one that is being answered.</summary>
    public string AskNext(Prompt prompt)
    {
        if (_prompt is { } answered) _drafts.Remove(answered.Label);
        Ask(prompt);
        return "";
    }

    public void Leave(string text)
    {
        if (_prompt is { } prompt && text.Trim().Length > 0) _drafts[prompt.Label] = text;
        Say(text.Trim().Length > 0 ? "What you typed is kept; the same question brings it back." : "");
        _prompt = null;
    }

    public void Tick()
    {
        Ticking?.Invoke();
        Moment now = Session.Now;
        if (!Session.ReadsOnly && Disk.Look(Steady) is { } left) _notices.Add(NoteWords.DiskLow(left, Session.Folder.Path));
        if (Session.ReadsOnly && Steady - _refreshed > TimeSpan.FromSeconds(1))
        {
            Session.Refresh();
            _refreshed = Steady;
        }
        if (Session.BenchFault is { } fault && fault != _benchFault) _notices.Add(FaultWords.BenchAsBefore(_benchFault = fault));
        if (!Session.ReadsOnly && _lastTick.DriftUntil(now).Duration() >= BenchDecider.ClockTolerance)
        {
            Session.Act(new BenchAction.NoticeClock(_lastTick));
            Say($"This machine's clock was set by {Times.Clock(_lastTick.DriftUntil(now))}; running clocks are not touched by that. It is written down.", refusal: true);
        }
        _lastTick = now;
        Listen(now);
        Screen.Tick();
        Speak(now);
    }

    private void Listen(Moment now)
    {
        foreach (OpenAlarm alarm in Alarms.Due(now, Steady))
            if (!Quiet) AlarmTold?.Invoke(alarm.Urgency, Alarms.Words(alarm, now), alarm.About);
        foreach (string about in Alarms.Settled(now)) AlarmSettled?.Invoke(about);
    }

    private void Speak(Moment now)
    {
        if (StepTold is null || Quiet || RunShown is not { LooksBack: false } run) return;
        Offer offer = run.Offer;
        if (SpokenOffer.Key(offer) is var key && key == _spoken) return;
        _spoken = key;
        if (SpokenOffer.Text(offer, run.Job.State, Session.Workshop, now) is { Length: > 0 } text) StepTold(text);
    }

    // The job that is shown, on its own screen or by its oiling points.
    private Run.RunModel? RunShown => Screen as Run.RunModel ?? (Screen as Oiling.OilingModel)?.Run;

    private IReadOnlyList<OpenAlarm> OpenAlarms => Alarms.Open(Session.Now);

    /// <summary>Answers the most urgent alarm and writes that down; false if there is none.</summary>
    public bool AnswerAlarm()
    {
        if (OpenAlarms is not [var first, ..]) return false;
        Tell(Session.Act(first.Job, new JobAction.AnswerAlarm(first.Soak.Begun.Step)), first.Job.Plan, $"Answered: {JobWords.Clock(first.Soak.Begun, Session.Workshop)}, {first.Job.State.Number}.");
        return true;
    }

    /// <summary>Does what a pedal says from another program; what came of it, as a sentence.</summary>
    public string Follow(PedalWord word)
    {
        if (_prompt is { } prompt && (word is PedalWord.GoOn or PedalWord.Back)) return $"A question is open and wants typing: {prompt.Label}";
        switch (word)
        {
            case PedalWord.GoOn: Press(new Stroke(Session.Workshop.Pedal.GoOn[0])); break;
            case PedalWord.Back: Press(new Stroke(Session.Workshop.Pedal.Back[0])); break;
            case PedalWord.SayAgain: SayAgain(); break;
            case PedalWord.Answer when !AnswerAlarm(): return "No alarm wants an answer.";
            case PedalWord.Mark when RunShown is { } run: run.Mark(); break;
            case PedalWord.Mark: return "No job is open, so there is nothing to mark.";
        }
        if (Message.Length > 0) return Message;
        return RunShown is { Offer: var offer } open ? SpokenOffer.Text(offer, open.Job.State, Session.Workshop, Session.Now) : $"{Screen.Name}.";
    }

    /// <summary>Has what was said last said once more.</summary>
    public void SayAgain() => AgainTold?.Invoke();

    private void AnswerOrSayAgain()
    {
        if (!AnswerAlarm()) SayAgain();
    }

    /// <summary>Turns sound and speech off, or on again.</summary>
    public void BeQuiet(bool quiet)
    {
        Quiet = quiet;
        QuietTold?.Invoke(quiet);
        Say(quiet ? "Quiet: nothing sounds or speaks. Alarms stand on the screen." : "Sound and speech are on.");
    }

    private void ToggleQuiet()
    {
        BeQuiet(!Quiet);
        Remember(_remembered with { Quiet = Quiet });
    }

    private void ToggleLarge()
    {
        Large = !Large;
        if (Screen is not Run.RunModel) Say(Large ? "Jobs are shown in large letters." : "Jobs are shown in small letters.");
    }

    /// <summary>The bell rings at the next look.</summary>
    public void Ring() => _bell = true;

    public bool TakeBell()
    {
        bool bell = _bell;
        _bell = false;
        return bell;
    }

    public void Resumed() => _lastTick = Session.Now;

    public Sheet Draw(int width, int height)
    {
        Sheet sheet = new(width, height);
        if (Noticed is not null && $"{Screen.GetType().Name} {width}x{height}" is var shown && shown != _noticed) Noticed($"shows {_noticed = shown}");
        if (width < 40 || height < 10)
        {
            SmallPage.Draw(sheet, this);
            _entry = _prompt is null ? null : new Entry(_promptId, _prompt.Label, _prompt.Start, 0, Math.Max(0, height - 1), width);
            return sheet;
        }
        Frame.Head(sheet, this);
        IReadOnlyList<OpenAlarm> alarms = OpenAlarms;
        int top = alarms.Count > 0 ? 2 : 1;
        Screen.Draw(sheet, top, height - 3 - top);
        if (alarms.Count > 0) Frame.Alarm(sheet, Alarms.Words(alarms[0], Session.Now), alarms.Count);
        _entry = _prompt is null ? null : Frame.Question(sheet, _prompt, _promptId);
        if (_prompt is null || _message.Length > 0) Frame.Message(sheet, Shown(), _messageIsRefusal || _message.Length == 0, _prompt is not null);
        if (_prompt is null) Frame.Foot(sheet, AllActions);
        return sheet;
    }

    // What a key brought stands before what can wait.
    internal string Shown() => _message.Length > 0 ? _message : _notices.Show(Steady);

    /// <summary>What no key asked for, to be told line by line.</summary>
    public IReadOnlyList<string> TakeNotices() => _notices.Take();

    /// <summary>What came of the last key, as a sentence.</summary>
    public string Message => _message;

    /// <summary>The open question, or null.</summary>
    public Prompt? Open => _prompt;
}
