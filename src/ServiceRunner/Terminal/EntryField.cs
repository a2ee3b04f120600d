using System.Globalization;
using System.Text;
using ServiceRunner.Screens;
using Terminal.Gui.Drivers;
using Terminal.Gui.Input;
using Terminal.Gui.Views;

namespace ServiceRunner.Terminal;

/// <summary>The line that the repairer writes into. It lies over the sheet where the page left room for it.</summary>
internal sealed class EntryField : TextField
{
    private const int LongestPaste = 4000;

    private readonly HeldKey _held;
    private int? _id;
    private Key? _unsure;

    public EntryField(TimeProvider time)
    {
        _held = new HeldKey(time);
        Visible = false;
        Height = 1;
        Width = 1;
        SetScheme(Palette.Line);
        Cursor = new Cursor { Style = CursorStyle.Default }; // any other shape would stay behind in the terminal
    }

    /// <summary>Shows the entry that is open, or nothing. Returns true when something under the line came to light.</summary>
    public bool Follow(Entry? entry, Stroke? openedBy, int columns, int rows)
    {
        if (entry is null)
        {
            bool wasShown = Visible;
            _id = null;
            _unsure = null;
            Visible = false;
            return wasShown;
        }
        bool moved = Place(entry, columns, rows);
        if (_id == entry.Id) return moved;
        _id = entry.Id;
        _unsure = null;
        _held.Opened(openedBy);
        Text = entry.Start;
        Visible = true;
        SetFocus();
        MoveEnd(); // without this all of it is marked, and the first key would wipe it out
        return moved;
    }

    private bool Place(Entry entry, int columns, int rows)
    {
        int x = Math.Clamp(entry.X, 0, columns - 1), y = Math.Clamp(entry.Y, 0, rows - 1);
        int width = Math.Clamp(entry.Width, 1, columns - x);
        if (Frame.X == x && Frame.Y == y && Frame.Width == width) return false;
        X = x;
        Y = y;
        Width = width;
        return true;
    }

    /// <summary>Takes a key. Returns what it asks for: Enter, Esc, or null when it was for the line.</summary>
    public string? Take(Stroke stroke, Key key)
    {
        switch (_held.Judge(stroke, Strokes.Text(key) is not null, key.EventType == KeyEventType.Repeat))
        {
            case HeldKey.Verdict.Held:
                _unsure = null;
                return null;
            case HeldKey.Verdict.Unsure:
                _unsure = key;
                App?.AddTimeout(HeldKey.RepeatGap, () =>
                {
                    if (ReferenceEquals(_unsure, key)) Settle();
                    return false;
                });
                return null;
            default:
                Settle();
                return Do(stroke, key);
        }
    }

    /// <summary>The key that opened the entry has come up: the next one is typed.</summary>
    public void Released() => _held.Released();

    private string? Do(Stroke stroke, Key key)
    {
        switch (stroke.Name)
        {
            case "Enter" or "PageDown": // a pedal says yes with PageDown
                return "Enter";
            case "Esc" or "PageUp":
                return "Esc";
            case "Ctrl+H" or "Ctrl+Backspace": // what some terminals send for Backspace alone
                Feed(Key.Backspace);
                return null;
            default:
                if (Strokes.Text(key) is not null || Edits(key)) Feed(key);
                return null;
        }
    }

    // Only these: the library gives more keys a meaning in a line (menus, the clipboard), which would surprise here.
    private static bool Edits(Key key) => !key.IsAlt && (key.KeyCode & ~(KeyCode.ShiftMask | KeyCode.CtrlMask))
        is KeyCode.CursorLeft or KeyCode.CursorRight or KeyCode.Home or KeyCode.End or KeyCode.Backspace or KeyCode.Delete;

    private void Feed(Key key) => NewKeyDownEvent(new Key(key) { Handled = false });

    /// <summary>What could have been a repeat was not followed by another: it was typed.</summary>
    private void Settle()
    {
        if (_unsure is not { } key) return;
        _unsure = null;
        Feed(key);
    }

    // Lines become one line, for nothing that was pasted is to be lost; what could move a cursor becomes a blank.
    protected override string OnSanitizingPaste(string raw)
    {
        StringBuilder text = new();
        foreach (Rune rune in raw.EnumerateRunes())
        {
            if (text.Length >= LongestPaste) break;
            bool shown = Rune.GetUnicodeCategory(rune) is not (UnicodeCategory.Control or UnicodeCategory.Format
                or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator or UnicodeCategory.PrivateUse);
            if (shown) text.Append(rune);
            else if (text.Length > 0 && text[^1] != ' ') text.Append(' ');
        }
        return text.ToString().TrimEnd();
    }
}
