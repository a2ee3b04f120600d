using ServiceRunner.Lines;
using ServiceRunner.Screens.Parts;
using ServiceRunner.Screens.Run;

namespace ServiceRunner.Screens.Help;

/// <summary>The keys of the screen before it, from the same list that the keys come from.</summary>
public sealed class HelpModel(Shell shell, ScreenModel about) : ScreenModel(shell)
{
    private int _first;

    /// <inheritdoc/>
    public override string Name => $"Keys: {about.Name}";

    /// <inheritdoc/>
    public override IReadOnlyList<ScreenAction> Actions =>
    [
        ScreenAction.Always("Esc", "back", "Returns to the screen before.", () => Shell.GoBack(), 1),
        ScreenAction.Always("PageDown", "more", "Shows the next lines.", () => _first += 5, 2),
        ScreenAction.Always("PageUp", "less", "Shows the lines before.", () => _first = Math.Max(0, _first - 5), 3),
        ScreenAction.Always("Enter", "", "Returns to the screen before.", () => Shell.GoBack(), 100),
    ];

    /// <inheritdoc/>
    public override IEnumerable<Telling> Sentences() => HelpLines.Of(about.Actions.Concat(Shell.Everywhere));

    /// <inheritdoc/>
    public override void Draw(Sheet sheet, int top, int rows)
    {
        List<(string Key, string Text, string WhyNot)> lines = [];
        foreach (ScreenAction action in about.Actions.Concat(Shell.Everywhere))
            lines.Add((string.Join(" ", action.Keys.Select(Frame.KeyName)), action.Help, action.WhyNot()));
        if (about is RunModel) lines.Add(("1…9", "Chooses the answer of that number.", ""));
        if (about is TrayCheckModel) lines.Add(("1…9", "Marks the part of that number as not there, or takes the mark off.", ""));
        lines.Add(("Ctrl+Z", "Sends the program to the background; 'fg' brings it back. Clocks go on.", ""));
        lines.Add(("Ctrl+C", "Ends the program. Clocks go on counting and are there at the next start.", ""));
        List<(string Key, string Text, Ink Ink)> rowsOf = [];
        int keys = Math.Min(20, lines.Max(l => Sheet.Columns(l.Key)) + 2);
        foreach ((string key, string text, string whyNot) in lines)
        {
            IReadOnlyList<string> wrapped = Paragraph.Wrap(whyNot.Length > 0 ? $"{text} Not now: {whyNot}" : text, sheet.Width - keys - 3);
            for (int i = 0; i < wrapped.Count; i++) rowsOf.Add((i == 0 ? key : "", wrapped[i], whyNot.Length > 0 ? Ink.Faint : Ink.Plain));
        }
        _first = Math.Clamp(_first, 0, Math.Max(0, rowsOf.Count - rows));
        for (int i = 0; i < Math.Min(rows, rowsOf.Count - _first); i++)
        {
            sheet.Write(1, top + i, rowsOf[_first + i].Key, Ink.Key);
            sheet.Write(1 + keys, top + i, rowsOf[_first + i].Text, rowsOf[_first + i].Ink);
        }
    }
}
