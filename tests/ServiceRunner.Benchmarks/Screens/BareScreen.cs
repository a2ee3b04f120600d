using System.Globalization;
using ServiceRunner.Terminal;
using Terminal.Gui.App;
using Terminal.Gui.Drivers;
using Terminal.Gui.Input;
using Terminal.Gui.ViewBase;
using Terminal.Gui.Views;

namespace ServiceRunner.Benchmarks.Screens;

/// <summary>The least that the terminal library can do: one window, one label, which counts the keys.</summary>
internal static class BareScreen
{
    public const string Name = "bare-screen";

    /// <summary>Stands on the screen when it is there.</summary>
    public const string Mark = "ready";

    public static int Run()
    {
        Application.MaximumIterationsPerSecond = 50; // as the program: at the library's own 25 a key would take longer
        using IApplication app = Application.Create();
        app.Init(DriverRegistry.Names.ANSI);
        // Left alone, the library sends the cursor again at every turn, and no key could be told from that.
        app.Iteration += (_, _) => TerminalHost.CursorIsWhereItShouldBe(app);
        using Counter counter = new();
        app.Run(counter);
        return 0;
    }

    private sealed class Counter : Runnable
    {
        private readonly Label _label = new() { X = 1, Y = 1, Width = 20, Height = 1, Text = $"{Mark} 0" };
        private int _keys;

        public Counter() => Add(_label);

        protected override bool OnKeyDown(Key key)
        {
            if (key == Key.Q) RequestStop();
            else _label.Text = string.Create(CultureInfo.InvariantCulture, $"{Mark} {++_keys}");
            return true;
        }
    }
}
