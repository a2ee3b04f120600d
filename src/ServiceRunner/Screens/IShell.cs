namespace ServiceRunner.Screens;

/// <summary>A key as a screen sees it: a name such as Enter, PageDown, F13, Ctrl+C, Alt+x, or the character itself.</summary>
public readonly record struct Stroke(string Name);

/// <summary>
/// A line of text that is wanted from the repairer. While it stands, keys go into it. An entry with the same
/// <paramref name="Id"/> is the same entry: what was typed stays.
/// </summary>
/// <param name="Id">Changes whenever another question is asked.</param>
/// <param name="Label">Written before the field by the page itself, not by the terminal.</param>
/// <param name="Start">What the field holds at first.</param>
/// <param name="X">Column of the field on the sheet last drawn.</param>
/// <param name="Y">Row of the field on the sheet last drawn.</param>
/// <param name="Width">Columns of the field.</param>
public sealed record Entry(int Id, string Label, string Start, int X, int Y, int Width);

/// <summary>
/// What a terminal shows and feeds: the bench with all its screens, or a sheet of paper in the tests. It knows no
/// terminal; the terminal decides nothing.
/// </summary>
public interface IShell
{
    /// <summary>Draws all of it at the given size (from 1×1 up).</summary>
    Sheet Draw(int width, int height);

    /// <summary>The entry that is open, or null. Asked after each <see cref="Draw"/>.</summary>
    Entry? Entry { get; }

    /// <summary>A key while no entry is open; Ctrl+C also while one is.</summary>
    void Press(Stroke key);

    /// <summary>Enter in the open entry.</summary>
    void Accept(string text);

    /// <summary>Esc in the open entry; what had been typed comes along so that it is not lost.</summary>
    void Leave(string text);

    /// <summary>Called several times a second.</summary>
    void Tick();

    /// <summary>True once when the terminal bell should ring.</summary>
    bool TakeBell();

    /// <summary>The process was suspended and goes on, or the terminal came back.</summary>
    void Resumed();

    /// <summary>True when the program should end.</summary>
    bool Done { get; }
}
