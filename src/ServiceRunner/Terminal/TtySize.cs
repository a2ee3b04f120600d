using System.Drawing;
using Terminal.Gui.App;
using Terminal.Gui.Drivers;
using Terminal.Gui.ViewBase;

namespace ServiceRunner.Terminal;

/// <summary>
/// Notices that the terminal has another size. The library's own way turns to asking the terminal itself when the system
/// first says 0×0, as on a serial line: from then on it writes twice a second, and where nothing answers it sees no change.
/// </summary>
internal sealed class TtySize : ISizeMonitor
{
    private readonly IOutput _output;
    private Size _last;

    public TtySize(IOutput output, IOutputBuffer buffer)
    {
        _output = output;
        _last = Now();
        output.SetSize(_last.Width, _last.Height);
        buffer.SetSize(_last.Width, _last.Height);
    }

    public event EventHandler<SizeChangedEventArgs>? SizeChanged;

    public bool Poll()
    {
        Size now = Now();
        if (now == _last) return false;
        _last = now;
        _output.SetSize(now.Width, now.Height);
        SizeChanged?.Invoke(this, new SizeChangedEventArgs(now));
        return true;
    }

    // .NET remembers the answer until the system reports a change, so this costs nothing at every turn.
    private static Size Now()
    {
        int columns = Console.WindowWidth, rows = Console.WindowHeight;
        return columns > 0 && rows > 0 ? new Size(columns, rows) : new Size(80, 24);
    }
}
