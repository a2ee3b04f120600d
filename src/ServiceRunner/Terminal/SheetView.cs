using System.Drawing;
using ServiceRunner.Screens;
using Terminal.Gui.App;
using Terminal.Gui.Drivers;
using Terminal.Gui.Input;
using Terminal.Gui.Text;
using Terminal.Gui.ViewBase;
using Terminal.Gui.Views;

namespace ServiceRunner.Terminal;

/// <summary>
/// The one window there is: it shows the shell's sheet and hands it the keys. Only cells that changed are sent, nothing
/// is cleared in between, and all keys are taken before the library's own bindings see them.
/// </summary>
internal sealed class SheetView : Runnable
{
    private static readonly TimeSpan TickEvery = TimeSpan.FromMilliseconds(200);

    private readonly IShell _shell;
    private readonly Palette _palette;
    private readonly EntryField _field;
    private readonly ShownCells _shown = new();
    private Sheet _sheet = new(1, 1);
    private object? _ticking;

    public SheetView(IShell shell, Palette palette, TimeProvider time)
    {
        _shell = shell;
        _palette = palette;
        _field = new EntryField(time);
        Border.Settings &= ~BorderSettings.TerminalTitle;
        Add(_field);
    }

    /// <summary>Called for Ctrl+Z; without it the shell gets the key.</summary>
    public Action? Suspend { get; set; }

    /// <summary>The sheet last drawn.</summary>
    public Sheet Sheet => _sheet;

    /// <summary>What went wrong in the shell. The window closes after it.</summary>
    public Exception? Failure { get; private set; }

    protected override void OnIsRunningChanged(bool running)
    {
        base.OnIsRunningChanged(running);
        if (App is not { } app) return;
        if (running)
        {
            app.Keyboard.KeyDown += OnKey;
            app.Keyboard.KeyUp += OnKeyUp;
            app.ScreenChanged += OnScreenChanged;
            if (app.Driver is { } driver) driver.ClearedContents += OnCleared;
            _ticking = app.AddTimeout(TickEvery, () => Guard(_shell.Tick, null));
            Guard(() => { }, null);
        }
        else
        {
            app.Keyboard.KeyDown -= OnKey;
            app.Keyboard.KeyUp -= OnKeyUp;
            app.ScreenChanged -= OnScreenChanged;
            if (app.Driver is { } driver) driver.ClearedContents -= OnCleared;
            if (_ticking is not null) app.RemoveTimeout(_ticking);
        }
    }

    private void OnKey(object? sender, Key key)
    {
        key.Handled = true;
        if (Strokes.Of(key) is not { } stroke) return;
        if (stroke.Name == "Ctrl+Z" && Suspend is { } suspend) suspend();
        else Guard(() => Take(stroke, key), stroke);
    }

    private void Take(Stroke stroke, Key key)
    {
        // Ctrl+C is never text: it must get through whatever is open.
        if (_shell.Entry is null || stroke.Name == "Ctrl+C")
        {
            _shell.Press(stroke);
            return;
        }
        switch (_field.Take(stroke, key))
        {
            case "Enter": _shell.Accept(_field.Text); break;
            case "Esc": _shell.Leave(_field.Text); break;
        }
    }

    private void OnKeyUp(object? sender, Key key)
    {
        key.Handled = true;
        _field.Released();
    }

    private void OnScreenChanged(object? sender, EventArgs<Rectangle> e)
    {
        _shown.Forget();
        Guard(() => { }, null);
    }

    private void OnCleared(object? sender, EventArgs e) => _shown.Forget();

    /// <summary>The terminal is ours again after it was somebody else's.</summary>
    public void Resumed()
    {
        _shown.Forget();
        if (App is { } app) app.ClearScreenNextIteration = true;
        Guard(_shell.Resumed, null);
    }

    /// <summary>
    /// Lets the shell do something and shows what came of it. An error closes the window instead of being lost: the
    /// library forgets a timer that throws, and nobody would see that the clocks stand still.
    /// </summary>
    private bool Guard(Action action, Stroke? by)
    {
        if (Failure is not null) return false;
        try
        {
            action();
            Follow(by);
            if (!_shell.Done) return true;
        }
        catch (Exception failure)
        {
            Failure = failure;
        }
        StopRequested = true;
        return Failure is null;
    }

    private void Follow(Stroke? by)
    {
        if (App is not { } app) return;
        int columns = Math.Max(1, app.Screen.Width), rows = Math.Max(1, app.Screen.Height);
        _sheet = _shell.Draw(columns, rows);
        Rectangle under = _field.Frame;
        bool clear = app.ClearScreenNextIteration;
        if (_field.Follow(_shell.Entry, by, columns, rows)) _shown.Forget(under.X, under.Y, under.Width);
        app.ClearScreenNextIteration = clear; // the library would clear the whole screen for a line that came or went
        if (_shown.Differs(_sheet)) SetNeedsDraw();
        if (_shell.TakeBell()) app.Driver?.WriteRaw("\a");
    }

    protected override bool OnClearingViewport() => true;

    protected override bool OnDrawingContent(DrawContext? context)
    {
        if (App?.Driver is not { } driver) return true;
        foreach ((int x, int y) in _shown.Show(_sheet)) Draw(driver, x, y);
        return true;
    }

    private void Draw(IDriver driver, int x, int y)
    {
        (string text, Ink ink) = _sheet[x, y];
        if (text.Length == 0) return; // the second half of the wide character before it
        bool wide = !IsPlain(text) && x + 1 < _sheet.Width && _sheet[x + 1, y].Text.Length == 0;
        driver.SetAttribute(_palette[ink]);
        driver.Move(x, y);
        driver.AddStr(IsPlain(text) || text.GetColumns() == (wide ? 2 : 1) ? text : wide ? "· " : "·");
    }

    // Most cells, and the library measures slowly.
    private static bool IsPlain(string text) => text.Length == 1 && text[0] is >= ' ' and < '\x7f';
}
