using System.Diagnostics;
using System.Runtime.InteropServices;
using System.Runtime.Versioning;
using Terminal.Gui.App;
using Terminal.Gui.Drivers;

namespace ServiceRunner.Terminal;

/// <summary>
/// Ctrl+Z and what follows it. The library's own way back leaves mouse reports on and the line settings to a guess, so
/// the terminal is left and taken again here. A program that was stopped by force comes back the same way.
/// </summary>
internal sealed class Suspension : IDisposable
{
    private const string MouseOff = "\e[?1003l\e[?1015l\e[?1006l";

    private static readonly TimeSpan Moment = TimeSpan.FromMilliseconds(300);

    private readonly IApplication _app;
    private readonly byte[]? _settings;
    private readonly byte[]? _raw;
    private readonly Action _resumed;
    private readonly ManualResetEventSlim _continued = new();
    private readonly PosixSignalRegistration? _onContinue;
    private PosixSignalRegistration? _onStop;
    private volatile bool _asked;

    public Suspension(IApplication app, byte[]? settings, Action resumed)
    {
        _app = app;
        _settings = settings;
        _resumed = resumed;
        app.Driver?.WriteRaw(MouseOff); // the library turns reports on that nobody here reads
        if (!Possible) return;
        _raw = Tty.Settings();
        _onContinue = PosixSignalRegistration.Create(PosixSignal.SIGCONT, _ => _continued.Set());
        ListenForStop();
    }

    /// <summary>False where a program cannot be stopped and continued.</summary>
    [UnsupportedOSPlatformGuard("windows")]
    public static bool Possible => !OperatingSystem.IsWindows();

    /// <summary>Stops at the next turn of the loop.</summary>
    public void Ask() => _asked = true;

    /// <summary>To be called on the screen's own thread at every turn of its loop.</summary>
    public void Turn()
    {
        if (Possible && _asked) Stop();
        if (_continued.IsSet) Return();
    }

    [UnsupportedOSPlatform("windows")]
    private void ListenForStop() => _onStop = PosixSignalRegistration.Create(PosixSignal.SIGTSTP, context =>
    {
        context.Cancel = true;
        _asked = true;
    });

    [UnsupportedOSPlatform("windows")]
    private void Stop()
    {
        _asked = false;
        _app.Driver?.WriteRaw(WayOut.Restore);
        Tty.Set(_settings);
        _onStop?.Dispose(); // with a handler the signal would not stop us
        _continued.Reset();
        long stopped = Stopwatch.GetTimestamp();
        Tty.StopForeground();
        // Nothing runs between the stop and the continuation. If neither comes, nobody is there who could continue us
        // (the kernel does not stop such a program), and the screen just comes back. The time that went by while we were
        // stopped counts: then the wait may end before the runtime has put its own settings back, which it does first.
        if (!_continued.Wait(Moment) && Stopwatch.GetElapsedTime(stopped) > 1.1 * Moment) _continued.Wait(Moment);
        ListenForStop();
        _continued.Set();
    }

    private void Return()
    {
        _continued.Reset();
        Tty.Set(_raw); // in the background this stops us again, before anything is written
        _app.Driver?.WriteRaw("\e[?1049h\e[?25l\e[?2004h" + MouseOff);
        if (_app.Driver?.KittyKeyboardCapabilities is { IsSupported: true })
            _app.Driver.WriteRaw(EscSeqUtils.CSI_EnableKittyKeyboardFlags(EscSeqUtils.KittyKeyboardRequestedFlags));
        _resumed();
    }

    public void Dispose()
    {
        _onStop?.Dispose();
        _onContinue?.Dispose();
    }
}
