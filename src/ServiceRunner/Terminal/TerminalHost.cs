using System.Text;
using ServiceRunner.Screens;
using Terminal.Gui.App;
using Terminal.Gui.Drivers;

namespace ServiceRunner.Terminal;

/// <summary>Shows a shell on the terminal until it is done, and leaves the terminal as it was, whatever happens.</summary>
public static class TerminalHost
{
    /// <summary>Exit code when there is no terminal to show anything on.</summary>
    public const int NoTerminal = ExitCodes.NoTerminal;

    /// <summary>Exit code after an error that nobody foresaw.</summary>
    public const int UnexpectedError = ExitCodes.Unforeseen;

    /// <summary>Returns the exit code: 0 when the shell was done, 128 and the number of the signal that ended it.</summary>
    public static int Run(IShell shell, TerminalOptions options)
    {
        if (Missing(Console.IsInputRedirected, Console.IsOutputRedirected, Environment.GetEnvironmentVariable("TERM")) is { } sentence)
        {
            Console.Error.WriteLine(sentence);
            return NoTerminal;
        }
        using WayOut wayOut = new(options.Failed);
        Exception? failure = Show(shell, options, wayOut);
        if (failure is not null) options.Failed?.Invoke(failure);
        wayOut.Dispose(); // the terminal first, then the sentence
        failure ??= wayOut.TakeFallen();
        if (failure is null) return wayOut.Code;
        Console.Error.WriteLine(Sentence(failure));
        return UnexpectedError;
    }

    /// <summary>Says what keeps a screen from being shown, or null.</summary>
    internal static string? Missing(bool inputRedirected, bool outputRedirected, string? term)
    {
        if (inputRedirected) return "servicerunner: there is no terminal to read keys from (standard input is redirected); --lines reads lines from it";
        if (outputRedirected) return "servicerunner: there is no terminal to show the screen on (standard output is redirected)";
        return term == "dumb" ? "servicerunner: this terminal cannot move its cursor (TERM=dumb)" : null;
    }

    private static Exception? Show(IShell shell, TerminalOptions options, WayOut wayOut)
    {
        IApplication? app = null;
        SheetView? view = null;
        try
        {
            LibraryDefaults.Pin();
            app = Application.Create(new MonotonicTime(options.Time));
            TtyInput.Use(app, wayOut.TerminalGone);
            LibraryDefaults.Begin(app);
            PedalKeys.Teach(app);
            UseColoursItHas(app);
            view = new SheetView(shell, Inks(options), options.Time);
            RunLoop(app, view, wayOut);
            return view.Failure;
        }
        catch (Exception unexpected)
        {
            return view?.Failure ?? unexpected;
        }
        finally
        {
            Close(app, view);
        }
    }

    private static void RunLoop(IApplication app, SheetView view, WayOut wayOut)
    {
        using Suspension suspension = new(app, wayOut.Settings, view.Resumed);
        if (Suspension.Possible) view.Suspend = suspension.Ask;
        app.Iteration += (_, _) =>
        {
            if (wayOut.Code != 0) view.StopRequested = true;
            else suspension.Turn();
            CursorIsWhereItShouldBe(app);
        };
        app.Run(view, _ => false);
    }

    // A dead terminal must not keep the process from ending.
    private static void Close(IApplication? app, SheetView? view)
    {
        try
        {
            view?.Dispose();
            app?.Dispose();
        }
        catch (Exception)
        {
            // There is nothing left to close it with; the line settings are put back by the caller.
        }
    }

    private static Palette Inks(TerminalOptions options) =>
        options.Monochrome || !string.IsNullOrEmpty(Environment.GetEnvironmentVariable("NO_COLOR")) ? Palette.Monochrome : Palette.Colour;

    // Sent to a terminal that does not know them, colours of 24 bits come out as something else.
    private static void UseColoursItHas(IApplication app)
    {
        bool all = Environment.GetEnvironmentVariable("COLORTERM") is "truecolor" or "24bit";
        if (app.Driver is { } driver) driver.Force16Colors = !all;
    }

    // The library (2.5.0) never takes back its note that the cursor has to be set, and sends it again at every turn.
    internal static void CursorIsWhereItShouldBe(IApplication app)
    {
        if (app.Driver is not { } driver) return;
        Cursor wanted = app.TopRunnableView?.MostFocused?.Cursor ?? new Cursor(), shown = driver.GetCursor();
        if (wanted.IsVisible == shown.IsVisible && (!wanted.IsVisible || wanted.Position == shown.Position)) driver.SetCursorNeedsUpdate(false);
    }

    /// <summary>One sentence about an error, on one line.</summary>
    internal static string Sentence(Exception? failure)
    {
        string what = failure is null ? "unknown" : $"{failure.Message} ({failure.GetType().Name})";
        StringBuilder line = new();
        foreach (char c in what) line.Append(char.IsControl(c) ? ' ' : c);
        return $"servicerunner: the screen was closed by an unexpected error: {line}";
    }
}
