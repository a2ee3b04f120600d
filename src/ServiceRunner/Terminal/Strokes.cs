using System.Text;
using ServiceRunner.Screens;
using Terminal.Gui.Drivers;
using Terminal.Gui.Input;

namespace ServiceRunner.Terminal;

/// <summary>Gives the library's keys the names that screens know: Enter, PageDown, F13, Ctrl+C, Alt+x, Shift+Tab, or the character itself.</summary>
internal static class Strokes
{
    /// <summary>Null for a modifier pressed alone and for keys without a name.</summary>
    public static Stroke? Of(Key key)
    {
        if (key.IsModifierOnly) return null;
        if (Text(key) is { } text) return new Stroke(text == " " ? "Space" : text);
        KeyCode bare = key.KeyCode & ~(KeyCode.ShiftMask | KeyCode.AltMask | KeyCode.CtrlMask);
        if (Named(bare) is { } name) return new Stroke(Prefix(key, key.IsShift) + name);
        return Character(bare, key) is { } character ? new Stroke(Prefix(key, key.IsShift && key.IsCtrl) + character) : null;
    }

    /// <summary>What the key puts into a line of text; null for one that puts nothing there.</summary>
    public static string? Text(Key key)
    {
        string text = key.IsModifierOnly ? "" : key.AsGrapheme;
        return text.Length == 0 || Rune.IsControl(Rune.GetRuneAt(text, 0)) ? null : text;
    }

    private static string Prefix(Key key, bool shift) => (key.IsCtrl ? "Ctrl+" : "") + (key.IsAlt ? "Alt+" : "") + (shift ? "Shift+" : "");

    private static string? Named(KeyCode code) => code switch
    {
        KeyCode.Enter => "Enter",
        KeyCode.Esc => "Esc",
        KeyCode.Tab => "Tab",
        KeyCode.Backspace => "Backspace",
        KeyCode.Space => "Space",
        KeyCode.Delete => "Delete",
        KeyCode.Insert => "Insert",
        KeyCode.Home => "Home",
        KeyCode.End => "End",
        KeyCode.PageUp => "PageUp",
        KeyCode.PageDown => "PageDown",
        KeyCode.CursorUp => "Up",
        KeyCode.CursorDown => "Down",
        KeyCode.CursorLeft => "Left",
        KeyCode.CursorRight => "Right",
        >= KeyCode.F1 and <= KeyCode.F24 => $"F{code - KeyCode.F1 + 1}",
        _ => null,
    };

    // Ctrl+C is written with a capital as on a keyboard; with Alt the case is what was typed.
    private static string? Character(KeyCode bare, Key key) => bare switch
    {
        >= KeyCode.A and <= KeyCode.Z => key.IsCtrl || key.IsShift ? ((char)bare).ToString() : ((char)(bare + 32)).ToString(),
        > KeyCode.Space and < KeyCode.MaxCodePoint when Rune.TryCreate((uint)bare, out Rune rune) && !Rune.IsControl(rune) => rune.ToString(),
        _ => null,
    };
}
