using System.Text;
using ServiceRunner.Core.Quantities;
using ServiceRunner.Files.Sentences;
using ServiceRunner.Screens;
using ServiceRunner.Screens.Alarms;
using ServiceRunner.Screens.Pick;
using ServiceRunner.Screens.Run;

namespace ServiceRunner.Lines;

/// <summary>
/// The bench as a dialogue: a line in, sentences out. It drives the same shell and screens as the full-screen view, and
/// after each entry says what changed: message, alarm, then what is at hand. It is never silent after an entry.
/// </summary>
internal sealed class LineDialogue(Shell shell)
{
    private const string Explained = "The next line is the answer; a full stop alone leaves the question";

    private readonly AlarmWatch _alarms = new(shell.Session);
    private readonly HashSet<string> _overdue = [];
    // Every entry ends with the Enter key, so an empty line right behind one is the same press, held or knocked.
    private readonly KnockGuard _guard = new(TimeSpan.FromMilliseconds(shell.Session.Workshop.Pedal.DeadMilliseconds));
    private ScreenModel? _screen;
    private IReadOnlyList<Telling> _told = [];
    private string _atHand = "", _message = "", _prompt = "", _refused = "";
    private bool _promptExplained;

    /// <summary>The first lines.</summary>
    /// <param name="why">Why line by line was chosen, as a sentence; empty if somebody asked for it.</param>
    public IReadOnlyList<string> Greeting(string why) =>
        Plain([why, "ServiceRunner, line by line", "An empty line goes on, help lists what can be done, quit leaves", _message = shell.Message, .. shell.TakeNotices(), .. Alarms(), .. Rest()]);

    /// <summary>The last line.</summary>
    public IReadOnlyList<string> Farewell() =>
        Plain([shell.Session.RunningSoaks().Count() is > 0 and var clocks ? $"The bench is left. {Times.Count(clocks, "clock")} {(clocks == 1 ? "goes" : "go")} on counting" : "The bench is left"]);

    /// <summary>Takes an entry; what came of it.</summary>
    public IReadOnlyList<string> Take(string entry)
    {
        bool pressed = _guard.Admits(shell.Steady);
        // By whole characters: half of one, or a key that no line can hold, is no text.
        entry = string.Concat(entry.EnumerateRunes().Where(r => !Rune.IsControl(r) || r.Value == '\t'));
        string before = shell.Open?.Label ?? "";
        List<string> said = [.. Answer(entry, pressed)];
        if (shell.Done) return Plain(said);
        bool asked = said.Count > 0;
        shell.Tick();
        said = [_message = shell.Message, .. shell.TakeNotices(), .. Alarms(), .. said, .. Rest(told: before)];
        said.RemoveAll(s => s.Length == 0);
        if (said.Count == 0 && !asked) said = [.. AtHand()];
        return Plain(said);
    }

    /// <summary>What changed by itself, on one line; empty if nothing.</summary>
    public string Tick()
    {
        shell.Tick();
        bool other = shell.Open is { } prompt ? prompt.Label != _prompt : _prompt.Length > 0 || shell.Screen != _screen || shell.Screen.Topic != _atHand;
        string message = shell.Message == _message ? "" : shell.Message;
        _message = shell.Message;
        List<string> alarms = [.. Alarms()];
        return string.Join(' ', Plain([message, .. shell.TakeNotices(), .. alarms, .. !other ? [] : alarms.Count > 0 ? Going() : Rest()]));
    }

    // An alarm is short: with it only what an empty line does now. The rest is told after the next entry.
    private string[] Going()
    {
        if (shell.Open is not null || shell.Screen != _screen) return [.. Rest()];
        _atHand = shell.Screen.Topic;
        return [shell.Screen.Sentences().Select(t => t.Text).LastOrDefault(t => t.StartsWith("Enter", StringComparison.Ordinal)) ?? ""];
    }

    // The question that is open, unless it is the one that was told; or what is at hand.
    private IEnumerable<string> Rest(string told = "")
    {
        if (shell.Open is { } prompt)
        {
            bool again = prompt.Label == told;
            _prompt = prompt.Label;
            return again ? [] : Question(prompt);
        }
        (_prompt, _refused) = ("", "");
        return Changed();
    }

    private IEnumerable<string> Alarms()
    {
        Moment now = shell.Session.Now;
        foreach (string settled in _alarms.Settled(now)) _overdue.Remove(settled);
        // The watch tells a most that is passed again and again; a line stays where it was written.
        foreach (OpenAlarm alarm in _alarms.Due(now, shell.Steady))
            if (alarm.Urgency != Core.Jobs.Urgency.High || _overdue.Add(alarm.About)) yield return ClockLines.Alarm(alarm, shell);
    }

    // What stood there before is not said again.
    private IEnumerable<string> Changed()
    {
        IReadOnlyList<Telling> now = [.. shell.Screen.Sentences()];
        bool other = shell.Screen != _screen;
        HashSet<string> known = other ? [] : [.. _told.Select(t => t.Key)];
        (_screen, _told, _atHand) = (shell.Screen, now, shell.Screen.Topic);
        return [.. other ? Head() : [], .. now.Where(t => !known.Contains(t.Key)).Select(t => t.Text)];
    }

    private string[] Head() => shell.Screen is PickModel ? [] : [shell.Screen.Head];

    private IEnumerable<string> AtHand() => shell.Open is { } prompt ? Question(prompt) : [.. Head(), .. shell.Screen.Sentences().Select(t => t.Text)];

    private IEnumerable<string> Question(Prompt prompt)
    {
        yield return prompt.Label;
        if (prompt.Hint.Length > 0) yield return prompt.Hint;
        if (Start(prompt) is { Length: > 0 } start) yield return $"Enter takes '{start}'";
        if (!_promptExplained) yield return Explained;
        _promptExplained = true;
    }

    // What was refused is kept for the next time, but an empty line does not hand it in again.
    private string Start(Prompt prompt) => prompt.Start == _refused ? "" : prompt.Start;

    private IEnumerable<string> Answer(string entry, bool pressed)
    {
        string word = entry.Trim();
        shell.Say("");
        if (word.Length == 0 && !pressed)
        {
            shell.Say(KnockGuard.Ignored(shell.Session.Workshop.Pedal.DeadMilliseconds));
            return [];
        }
        if (shell.Open is not { } prompt) return new LineEntry(shell).Do(word, AtHand);
        if (word == "?")
        {
            _promptExplained = false;
            return [.. Question(prompt)];
        }
        if (word == ".") shell.Leave(prompt.Start);
        else Accept(prompt, entry.Length == 0 ? Start(prompt) : entry);
        return [];
    }

    private void Accept(Prompt prompt, string text)
    {
        shell.Accept(text);
        if (shell.Open is { } open && open.Label == prompt.Label && shell.Message.Length > 0) _refused = text;
    }

    private static IReadOnlyList<string> Plain(IEnumerable<string> sentences) => [.. sentences.Select(LineText.Sentence).Where(s => s.Length > 0)];
}
