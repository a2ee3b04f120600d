using ServiceRunner.Lines;

namespace ServiceRunner.Screens.Pick;

/// <summary>One of several things to choose from.</summary>
/// <param name="Text">What it is.</param>
/// <param name="Detail">More about it, fainter.</param>
/// <param name="Take">Takes it; the list is left before.</param>
public sealed record Choice(string Text, string Detail, Action Take);

/// <summary>A list to choose from: by number, by the arrows, or by typing a part of the text.</summary>
public sealed class PickModel(Shell shell, string title, IReadOnlyList<Choice> choices) : ScreenModel(shell)
{
    private string _typed = "";

    /// <inheritdoc/>
    public override string Name => title;

    /// <summary>The choices that contain what was typed.</summary>
    public IReadOnlyList<Choice> Matching => [.. choices.Where(c => $"{c.Text} {c.Detail}".Contains(_typed, StringComparison.OrdinalIgnoreCase))];

    /// <summary>Which one Enter takes.</summary>
    public int At { get; private set; }

    /// <inheritdoc/>
    public override IReadOnlyList<ScreenAction> Actions =>
    [
        new(["Enter"], "take it", "Takes the marked line.", () => Matching.Count == 0 ? $"Nothing contains '{_typed}'." : "", () => Take(At), 1),
        ScreenAction.Always("Down", "next", "Marks the next line.", () => At = Math.Min(Matching.Count - 1, At + 1), 2),
        ScreenAction.Always("Up", "previous", "Marks the line before.", () => At = Math.Max(0, At - 1), 3),
        ScreenAction.Always("PageDown", "", "Marks a line a page further.", () => At = Math.Max(0, Math.Min(Matching.Count - 1, At + 10)), 100),
        ScreenAction.Always("PageUp", "", "Marks a line a page back.", () => At = Math.Max(0, At - 10), 100),
        ScreenAction.Always("Backspace", "", "Takes back a letter of the search.", () => Search(_typed.Length > 0 ? _typed[..^1] : ""), 100),
        ScreenAction.Always("Esc", "back", "Leaves the list.", () => Shell.GoBack(), 4),
    ];

    /// <inheritdoc/>
    public override bool TakesLetters => true;

    private void Take(int at)
    {
        Choice choice = Matching[at];
        Shell.GoBack();
        choice.Take();
    }

    /// <summary>Shows only what contains this.</summary>
    public void Search(string typed) => (_typed, At) = (typed, 0);

    /// <summary>What is searched for; empty if nothing.</summary>
    public string Typed => _typed;

    /// <summary>Marks the first line of the next nine; after the last nine the first again.</summary>
    public void NextNine() => At = At / PickLines.Page * PickLines.Page + PickLines.Page is var next && next < Matching.Count ? next : 0;

    /// <inheritdoc/>
    public override bool Press(Stroke key)
    {
        if (_typed.Length == 0 && key.Name is [>= '1' and <= '9'] && key.Name[0] - '1' < Math.Min(9, choices.Count))
        {
            Take(key.Name[0] - '1');
            return true;
        }
        string letter = key.Name == "Space" ? " " : key.Name;
        if (letter.Length > 2) return false;
        Search(_typed + letter);
        return true;
    }

    /// <inheritdoc/>
    public override IEnumerable<Telling> Sentences() => PickLines.Of(this);

    /// <inheritdoc/>
    public override bool TakeNumber(int number)
    {
        if (number < 1 || number > Matching.Count) return false;
        Take(number - 1);
        return true;
    }

    /// <inheritdoc/>
    public override void Draw(Sheet sheet, int top, int rows)
    {
        IReadOnlyList<Choice> matching = Matching;
        sheet.Write(1, top, _typed.Length > 0 ? $"Containing '{_typed}':" : choices.Count > 9 ? "Type a part of it to search." : "Choose by its number, or mark it and press Enter.", Ink.Faint);
        int room = Math.Max(1, rows - 2), first = Math.Max(0, Math.Min(At - room / 2, matching.Count - room));
        for (int i = first; i < Math.Min(matching.Count, first + room); i++)
        {
            int y = top + 2 + i - first;
            string number = _typed.Length == 0 && i < 9 ? $"{i + 1}" : " ";
            sheet.Write(1, y, i == At ? "›" : " ", Ink.Key);
            sheet.Write(3, y, number, Ink.Key);
            int x = sheet.Write(5, y, Paragraph.Clip(matching[i].Text, sheet.Width - 6), i == At ? Ink.Strong : Ink.Plain);
            sheet.Write(x + 2, y, Paragraph.Clip(matching[i].Detail, Math.Max(0, sheet.Width - x - 3)), Ink.Faint);
        }
    }
}
