using System.Globalization;
using ServiceRunner.Core.Jobs;
using ServiceRunner.Files.Sentences;
using ServiceRunner.Pedal;
using ServiceRunner.Screens;
using ServiceRunner.Screens.Pick;
using ServiceRunner.Screens.Run;

namespace ServiceRunner.Lines;

/// <summary>
/// What a line means while no question is open: going on, a number, a word of the dialogue, a key or an action by its
/// name. What it does is the screen's own; what it only tells it returns.
/// </summary>
internal sealed class LineEntry(Shell shell)
{
    private ScreenModel Screen => shell.Screen;

    public IEnumerable<string> Do(string entry, Func<IEnumerable<string>> atHand)
    {
        (string word, string rest) = entry.Split((char[])[' ', '\t'], 2, StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries) is [var first, .. var more]
            ? (first.ToLowerInvariant(), more is [var other] ? other : "") : ("", "");
        switch (word)
        {
            case "": shell.Press(new Stroke("Enter")); return [];
            case "?" or "help" when rest.Length == 0: return Texts(HelpLines.Now(shell.AllActions));
            case "?" or "help": return Asked(rest, a => $"{HelpLines.Keys(a)}: {a.Help}");
            case "why": return rest.Length == 0 ? ["Why and the name of an action, as: why take back"] : Asked(rest, a => a.WhyNot() is { Length: > 0 } why ? why : $"It can be done now. {a.Help}");
            case "where" when rest.Length == 0: return atHand();
            case "clocks" when rest.Length == 0: return Or(ClockLines.Of(shell), "No clock runs");
            case "more" when rest.Length == 0: return More();
            case "quit" when rest.Length == 0: shell.Leave(); return [];
            case "answer" when rest.Length == 0:
                string answered = shell.Follow(PedalWord.Answer);
                return shell.Message.Length > 0 ? [] : [answered];
        }
        if (int.TryParse(entry, NumberStyles.None, CultureInfo.InvariantCulture, out int number)) Choose(number);
        else if (Screen is PickModel list) InList(list, entry);
        else Act(entry);
        return [];
    }

    private static IEnumerable<string> Texts(IEnumerable<Telling> tellings) => tellings.Select(t => t.Text);

    private static IEnumerable<string> Or(IEnumerable<Telling> tellings, string nothing) => Texts(tellings).DefaultIfEmpty(nothing);

    private IEnumerable<string> More()
    {
        if (Screen is not PickModel list) return Or(Screen.MoreSentences(), "There is no more to tell here");
        list.NextNine();
        return [];
    }

    private void Choose(int number)
    {
        if (Screen.TakeNumber(number)) Screen.Touched();
        else shell.Say($"There is no {number} to choose here.", refusal: true);
    }

    // A list takes words as a part of what is looked for; only what leaves it or moves in it is an action.
    private void InList(PickModel list, string entry)
    {
        if (entry == ".") shell.Press(new Stroke("Esc"));
        else if (list.Actions.FirstOrDefault(a => Is(a, entry)) is { } action) Press(action);
        else list.Search(entry.TrimStart('/').Trim());
    }

    private void Act(string entry)
    {
        if (Word(entry) is { } key)
        {
            shell.Press(new Stroke(key));
            return;
        }
        if (Choice(entry) is { } number)
        {
            Choose(number);
            return;
        }
        IReadOnlyList<ScreenAction> found = Find(entry);
        if (found is [var action]) Press(action);
        else if (found.Count == 0 && Screen.TakesLetters) Letters(entry);
        else shell.Say(Sentence(entry, found), refusal: true);
    }

    // The pedals by their names: on the screens that have them.
    private string? Word(string entry) => entry.ToLowerInvariant() switch
    {
        "back" when !shell.AllActions.Any(a => a.Name == "back") && shell.AllActions.Any(a => a.Keys.Contains(shell.Session.Workshop.Pedal.Back[0].Value)) => shell.Session.Workshop.Pedal.Back[0].Value,
        "back" => "Esc",
        _ => null,
    };

    // An answer may be typed as it reads.
    private int? Choice(string entry)
    {
        IReadOnlyList<string> choices = Screen is not RunModel { LooksBack: false } run ? [] : run.Offer switch { Offer.Fact x => x.Question.Answers, Offer.Answer x => x.Ask.Choices, _ => [] };
        int at = choices.ToList().FindIndex(c => c.Equals(entry, StringComparison.OrdinalIgnoreCase));
        return at < 0 ? null : at + 1;
    }

    private void Letters(string entry)
    {
        foreach (char letter in entry) shell.Press(new Stroke(letter == ' ' ? "Space" : $"{letter}"));
    }

    private void Press(ScreenAction action)
    {
        // In words it was not knocked; a key's name is the key.
        if (Screen is RunModel run && action.Keys.Contains("Enter") && action.WhyNot().Length == 0)
        {
            run.GoOnForSure();
            run.Touched();
        }
        else
        {
            shell.Press(new Stroke(action.Keys[0]));
        }
    }

    private IEnumerable<string> Asked(string name, Func<ScreenAction, string> tell)
    {
        IReadOnlyList<ScreenAction> found = Find(name);
        return [found is [var action] ? tell(action) : Sentence(name, found)];
    }

    private static string Sentence(string entry, IReadOnlyList<ScreenAction> found) => found.Count == 0
        ? $"'{entry}' is nothing that can be done here; help lists what can"
        : $"'{entry}' can be several: {Times.List(found.Select(a => $"{HelpLines.Name(a)} ({HelpLines.Keys(a)})"))}";

    private static bool Is(ScreenAction action, string entry) =>
        action.Name.Equals(entry, StringComparison.OrdinalIgnoreCase) || entry.Length > 1 && action.Keys.Any(k => k.Equals(entry, StringComparison.OrdinalIgnoreCase));

    /// <summary>Actions of that key or name; if there is none, those whose name begins so or has such a word.</summary>
    private IReadOnlyList<ScreenAction> Find(string entry)
    {
        IReadOnlyList<ScreenAction> all = shell.AllActions;
        if (entry.Equals("go on", StringComparison.OrdinalIgnoreCase)) return [.. all.Where(a => a.Keys.Contains("Enter"))];
        IReadOnlyList<ScreenAction> found = [.. all.Where(a => a.Keys.Contains(entry))];
        if (found.Count == 0) found = [.. all.Where(a => Is(a, entry) || a.Keys.Any(k => k.Equals(entry, StringComparison.OrdinalIgnoreCase)))];
        if (entry.Length < 2) return found; // a letter is a key, or nothing
        if (found.Count == 0) found = [.. all.Where(a => a.Name.StartsWith(entry, StringComparison.OrdinalIgnoreCase))];
        if (found.Count == 0) found = [.. all.Where(a => $" {a.Name}".Contains($" {entry}", StringComparison.OrdinalIgnoreCase))];
        return found;
    }
}
