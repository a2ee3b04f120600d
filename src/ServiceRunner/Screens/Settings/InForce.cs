using System.Globalization;
using ServiceRunner.Core.Workshops;
using ServiceRunner.Files.Data;
using ServiceRunner.Files.Procedures;
using ServiceRunner.Files.Sentences;
using ServiceRunner.Files.Workshops;
using ServiceRunner.Verbs;
using VoiceSettings = ServiceRunner.Core.Workshops.Voice;

namespace ServiceRunner.Screens.Settings;

/// <summary>A setting in force.</summary>
/// <param name="Name">What it is called.</param>
/// <param name="Value">What it is now.</param>
/// <param name="From">Where that comes from.</param>
/// <param name="Change">How to change it, as a sentence.</param>
internal sealed record Setting(string Name, string Value, string From, string Change);

/// <summary>Every setting in force, gathered from where each is decided.</summary>
internal sealed class InForce
{
    private const string BuiltIn = "built in";

    private readonly Shell _shell;
    private readonly WorkshopLines _lines;
    private readonly IReadOnlyList<LibraryEntry> _procedures;

    public InForce(Shell shell)
    {
        _shell = shell;
        _lines = WorkshopLines.Read(WorkshopFile);
        _procedures = shell.Session.Library.List();
    }

    private Workshop Workshop => _shell.Session.Workshop;

    private StartedWith Start => _shell.StartedWith;

    private string WorkshopFile => Path.Combine(_shell.Session.Folder.Path, House.WorkshopFile);

    /// <summary>All of them, in the order of the page.</summary>
    public IReadOnlyList<Setting> All() => [.. Places(), .. WorkshopItself(), .. Keys(), .. Heard(), .. Shown(), .. Work()];

    private IEnumerable<Setting> Places()
    {
        yield return new("Data folder", _shell.Session.Folder.Path, Start.FolderFrom, "--data FOLDER names another.");
        yield return new("Opened", _shell.Session.ReadsOnly ? "to read only" : "to work in", _shell.Session.ReadsOnly ? "option --read" : BuiltIn, "--read opens it to read only.");
        yield return new("Workshop file", WorkshopFile, "in the data folder", "Edit it by hand; it is read at the start. 'servicerunner check' says what is wrong with it.");
        string own = Path.Combine(_shell.Session.Folder.Path, "procedures");
        yield return new("Procedures of your own", Count("own"), own, "Put .yaml files there; one with the id of a shipped one comes before it.");
        yield return new("Procedures shipped", Count("shipped"), BuiltIn, "They come with the program.");
        yield return new("Diagnostic log", Start.DiagnosticLog() is { Length: > 0 } log ? log : "not written", Start.Diagnose ? "option --diagnose" : BuiltIn, "--diagnose writes more.");
        string left = Start.DiskLeft() is { } bytes ? string.Create(CultureInfo.InvariantCulture, $"{bytes >> 20} MiB are left") : "nobody knows how much is left";
        yield return new("Disk", string.Create(CultureInfo.InvariantCulture, $"told when less than {DiskSpace.Little >> 20} MiB are left; {left}"), BuiltIn, "It cannot be changed.");
    }

    private IEnumerable<Setting> WorkshopItself()
    {
        yield return Of("Workshop", Workshop.Name, "name");
        yield return Of("Job numbers begin with", Or(Workshop.NumberPrefix, "the year"), "numbers-begin");
        yield return Of("People", Times.List(Workshop.People.Select(p => $"{p.Initials.Value} {p.Name}{(p.Reviews ? " (reviews)" : "")}")), "people");
        yield return new("Signed in", Or(Times.List(_shell.Session.Bench.SignedIn), "nobody"), "this bench's log", "i on the Bench.");
        if (Workshop.Room is { } room)
            yield return Of("Room", string.Join(", ", new[] { Figure(room.CubicMetres, "m³"), Figure(room.AirChangesPerHour, "air changes an hour"), Figure(room.Celsius, "°C") }.Where(f => f.Length > 0)), "room");
    }

    private IEnumerable<Setting> Keys()
    {
        yield return Of("Going on", Names(Workshop.Pedal.GoOn), "go-on", "pedal");
        yield return Of("Looking back", Names(Workshop.Pedal.Back), "back", "pedal");
        yield return Of("Say again, answer", Names([.. Workshop.Pedal.Third, new("Space", default)]), "third", "pedal");
        yield return Of("Dead time of the pedal", string.Create(CultureInfo.InvariantCulture, $"{Workshop.Pedal.DeadMilliseconds} ms"), "dead-time", "pedal");
    }

    private IEnumerable<Setting> Heard()
    {
        VoiceSettings voice = Workshop.Voice;
        yield return new("Quiet", YesNo(_shell.Quiet), _shell.QuietIsRemembered ? "F8, remembered" : From("quiet", "voice"), "F8.");
        yield return Of("Tones", YesNo(voice.Sound), "sound", "voice");
        yield return Of("Sound program", !voice.Sound ? "not looked for" : Or(Start.Player(), "none: the terminal's bell rings"), "player", "voice");
        yield return Of("Tone at the least", YesNo(voice.LeastSounds), "least-sounds", "voice");
        yield return Of("Speech", YesNo(voice.Speech), "speech", "voice");
        yield return Of("Speech program", !voice.Speech ? "not looked for" : Or(Start.Talker(), "none: nothing is spoken"), "program", "voice");
        yield return Of("Rate of speech", voice.WordsAMinute is { } words ? string.Create(CultureInfo.InvariantCulture, $"{words} words a minute") : "as the speech program does", "words-a-minute", "voice");
        yield return Of("Steps spoken", voice.Steps ? "as they come" : "when asked for", "steps", "voice");
    }

    private IEnumerable<Setting> Shown()
    {
        yield return new("Large letters", YesNo(_shell.Large), _shell.Large ? "F6, remembered" : BuiltIn, "F6.");
        yield return Start switch
        {
            { Monochrome: true } => new("Colour", "none", "option --monochrome", "Start without it."),
            { NoColour: true } => new("Colour", "none", "environment variable NO_COLOR", "Unset it."),
            { AllColours: true } => new("Colour", "yes, 24 bits", "environment variable COLORTERM", "--monochrome does without."),
            _ => new("Colour", "yes, 16 colours", BuiltIn, "--monochrome does without; COLORTERM=truecolor says that the terminal has more."),
        };
    }

    private IEnumerable<Setting> Work()
    {
        yield return Of("A reason is asked for", Or(Times.List(Workshop.ReasonsFor.Select(r => JobWords.DeviationKind(r))), "nothing"), "reasons-for");
        yield return Of("A second person looks", Workshop.Witness switch { WitnessWish.Wanted => "always", WitnessWish.Never => "never", _ => Workshop.WorksAlone ? "nobody else works here" : "where there is one" }, "witness");
        yield return Of("Answered beforehand", Or(Times.List(Workshop.Prefers.Select(p => $"{AskWords.Spoken(p.Key, false)}: {p.Value}")), "nothing"), "prefers");
    }

    private Setting Of(string name, string value, string key, string within = "") =>
        new(name, value, From(key, within), within.Length > 0 ? $"'{key}' of '{within}' in the workshop file." : $"'{key}' in the workshop file.");

    private string From(string key, string within) =>
        _lines.Line(key, within) is { } line ? string.Create(CultureInfo.InvariantCulture, $"workshop file, line {line}") : BuiltIn;

    private string Count(string label)
    {
        List<LibraryEntry> these = [.. _procedures.Where(p => p.From == label)];
        int faulty = these.Count(p => p.Fault is not null);
        return string.Create(CultureInfo.InvariantCulture, $"{these.Count}{(faulty > 0 ? $", {faulty} of them with faults" : "")}");
    }

    private static string Names(IEnumerable<Core.Quantities.Placed<string>> keys) => string.Join(", ", keys.Select(k => k.Value));

    private static string Figure(decimal? value, string unit) => value is { } v ? string.Create(CultureInfo.InvariantCulture, $"{v} {unit}") : "";

    private static string YesNo(bool yes) => yes ? "yes" : "no";

    private static string Or(string text, string none) => text.Length > 0 ? text : none;
}
