using System.Text;
using Microsoft.Extensions.Time.Testing;
using ServiceRunner.Screens;
using ServiceRunner.Terminal;
using Terminal.Gui.App;
using Terminal.Gui.Drawing;
using Terminal.Gui.Drivers;
using Terminal.Gui.Input;
using Terminal.Gui.Testing;
using Attribute = Terminal.Gui.Drawing.Attribute;

namespace ServiceRunner.Tests.Terminal;

/// <summary>
/// A terminal that is not there: any shell in it, keys in, what stands on the screen out. Nothing runs by itself and
/// nothing waits; time goes on by <see cref="Advance"/>.
/// </summary>
internal sealed class SheetScreen : IDisposable
{
    private readonly Wire _wire = new();
    private readonly IApplication _app;
    private readonly SheetView _view;
    private readonly SessionToken _session;

    /// <param name="shell">What is shown. One that keeps time gets <paramref name="time"/> too.</param>
    /// <param name="time">The clock of the screen; a new one if none is given.</param>
    public SheetScreen(IShell shell, int width = 80, int height = 24, FakeTimeProvider? time = null, bool monochrome = false)
    {
        Time = time ?? new FakeTimeProvider(new DateTimeOffset(2030, 1, 1, 9, 0, 0, TimeSpan.Zero));
        Palette = monochrome ? Palette.Monochrome : Palette.Colour;
        _app = Application.Create(new MonotonicTime(Time));
        TtyInput.Use(_app, new AnsiComponentFactory(null, _wire));
        _app.Init(DriverRegistry.Names.ANSI);
        _app.Driver!.SetScreenSize(width, height);
        PedalKeys.Teach(_app);
        _view = new SheetView(shell, Palette, Time);
        _session = _app.Begin(_view)!;
        Pump();
    }

    public FakeTimeProvider Time { get; }

    public Palette Palette { get; }

    /// <summary>True when the shell asked for the end, or failed.</summary>
    public bool Closed => _view.StopRequested;

    public Exception? Failure => _view.Failure;

    /// <summary>Presses keys by the names that screens know: Enter, PageDown, F13, Ctrl+C, Up, a, é.</summary>
    public SheetScreen Press(params string[] keys)
    {
        foreach (string key in keys)
        {
            _app.InjectKey(KeyOf(key));
            Pump();
        }
        return this;
    }

    /// <summary>Types a text, character by character.</summary>
    public SheetScreen Type(string text)
    {
        foreach (Rune rune in text.EnumerateRunes())
        {
            _app.InjectKey(new Key(rune.Value));
            Pump();
        }
        return this;
    }

    /// <summary>Sends characters exactly as a terminal would.</summary>
    public SheetScreen Raw(string characters)
    {
        InputProcessorImpl<char> input = Input;
        foreach (char c in characters) input.InputQueue.Enqueue(c);
        return Pump();
    }

    /// <summary>Pastes a text as terminals do, between brackets.</summary>
    public SheetScreen Paste(string text) => Raw($"\e[200~{text}\e[201~");

    public SheetScreen Resize(int width, int height)
    {
        _app.Driver!.SetScreenSize(width, height);
        return Pump();
    }

    /// <summary>Lets time go by, in steps small enough that timers come in their order.</summary>
    public SheetScreen Advance(TimeSpan time)
    {
        TimeSpan step = TimeSpan.FromMilliseconds(50);
        for (TimeSpan done = TimeSpan.Zero; done < time; done += step)
        {
            Time.Advance(step < time - done ? step : time - done);
            Pump();
        }
        return this;
    }

    /// <summary>As after Ctrl+Z and fg.</summary>
    public SheetScreen Resume()
    {
        _view.Resumed();
        return Pump();
    }

    private SheetScreen Pump()
    {
        Turn();
        Turn(); // shows what the timers of the first one did
        Sent = _wire.Take();
        return this;
    }

    // What the library does at every turn of its loop, in its order.
    private void Turn()
    {
        TerminalHost.CursorIsWhereItShouldBe(_app);
        Input.ProcessQueue();
        _app.LayoutAndDraw();
        _app.Navigation?.UpdateCursor();
        _app.TimedEvents!.RunTimers();
    }

    private InputProcessorImpl<char> Input => (InputProcessorImpl<char>)_app.Driver!.GetInputProcessor();

    /// <summary>What the last step wrote to the terminal.</summary>
    public string Sent { get; private set; } = "";

    /// <summary>All rows, without the blanks at their ends.</summary>
    public string Text => string.Join('\n', Rows).TrimEnd('\n');

    public string[] Rows => [.. _app.Driver!.ToString()!.ReplaceLineEndings("\n").TrimEnd('\n').Split('\n').Select(r => r.TrimEnd())];

    /// <summary>Where each ink other than plain lies: row, and columns from and to.</summary>
    public string Legend
    {
        get
        {
            Sheet sheet = _view.Sheet;
            StringBuilder legend = new();
            foreach (Ink ink in Enum.GetValues<Ink>().Where(i => i != Ink.Plain))
            {
                string places = string.Join(' ', Enumerable.Range(0, sheet.Height).SelectMany(y => Runs(sheet, y, ink)));
                if (places.Length > 0) legend.Append(ink).Append(": ").Append(places).Append('\n');
            }
            return legend.ToString().TrimEnd('\n');
        }
    }

    /// <summary>Text and inks, for a snapshot.</summary>
    public string Picture => $"{Text}\n---\n{Legend}\n";

    private static IEnumerable<string> Runs(Sheet sheet, int y, Ink ink)
    {
        for (int x = 0; x < sheet.Width; x++)
        {
            if (sheet[x, y].Ink != ink) continue;
            int from = x;
            while (x + 1 < sheet.Width && sheet[x + 1, y].Ink == ink) x++;
            yield return from == x ? $"{y}:{from}" : $"{y}:{from}-{x}";
        }
    }

    /// <summary>How a cell was really sent.</summary>
    public Attribute At(int x, int y) => _app.Driver!.Contents![y, x].Attribute ?? default;

    /// <summary>Where the cursor is, or null while it is hidden.</summary>
    public System.Drawing.Point? CursorAt => _app.Driver!.GetCursor() is { IsVisible: true } cursor ? cursor.Position : null;

    private static Key KeyOf(string name)
    {
        string library = name switch
        {
            "Up" or "Down" or "Left" or "Right" => "Cursor" + name,
            _ => name,
        };
        return name.Length == 1 ? new Key(name[0]) : Key.TryParse(library, out Key key) ? key : throw new ArgumentException($"no key is called {name}");
    }

    public void Dispose()
    {
        _app.End(_session);
        _view.Dispose();
        _app.Dispose();
    }
}
