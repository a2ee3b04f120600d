using System.Runtime.InteropServices;
using System.Text;

namespace ServiceRunner.Terminal;

/// <summary>
/// Asks the screen to close when a signal comes or the terminal goes away, and sees to it that the terminal is whole
/// again even when the screen does not answer: a shell that gets back a raw terminal shows nothing that is typed.
/// </summary>
internal sealed class WayOut : IDisposable
{
    /// <summary>How long the screen may take to close by itself.</summary>
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(2);

    /// <summary>Ends pastes in brackets, mouse reports, the fuller keyboard, colours and the second screen; shows the cursor.</summary>
    public const string Restore = "\e[?2004l\e[?1003l\e[?1006l\e[?1015l\e[<u\e[0m\e[?1049l\e[?25h" + PlainKeypad;

    // .NET turns the keypad's other mode on and does not turn it off: arrow keys would then puzzle a simple shell.
    private const string PlainKeypad = "\e[?1l\e>";

    private readonly byte[]? _settings = OperatingSystem.IsWindows() ? null : Tty.Settings();
    private readonly List<PosixSignalRegistration> _signals = [];
    private readonly ManualResetEventSlim _closed = new();
    private int _code;
    private Exception? _fallen;

    private readonly Action<Exception>? _failed;

    public WayOut(Action<Exception>? failed = null)
    {
        _failed = failed;
        On(PosixSignal.SIGHUP, 1);
        On(PosixSignal.SIGINT, 2);
        On(PosixSignal.SIGQUIT, 3);
        On(PosixSignal.SIGTERM, 15);
        Console.CancelKeyPress += NotYet;
        AppDomain.CurrentDomain.UnhandledException += Fall;
    }

    /// <summary>The exit code that was asked for, 0 while nobody asked.</summary>
    public int Code => Volatile.Read(ref _code);

    /// <summary>The line settings that the terminal had before the screen opened.</summary>
    public byte[]? Settings => _settings;

    /// <summary>The terminal was closed. It says so to a program that ignores the signal for it, too.</summary>
    public void TerminalGone() => Ask(128 + 1);

    private void On(PosixSignal signal, int number) => _signals.Add(PosixSignalRegistration.Create(signal, context =>
    {
        context.Cancel = true; // the screen closes first, the process ends after it
        Ask(128 + number);
    }));

    // The runtime has a handler of its own for two of the signals, which would end the process at once.
    private static void NotYet(object? sender, ConsoleCancelEventArgs e) => e.Cancel = true;

    private void Ask(int code)
    {
        if (Interlocked.CompareExchange(ref _code, code, 0) != 0) return;
        new Thread(() =>
        {
            if (!_closed.Wait(Patience)) End(code);
        }) { IsBackground = true, Name = "way out" }.Start();
    }

    // An error on another thread ends the process as soon as this returns; the screen must be closed before.
    private void Fall(object? sender, UnhandledExceptionEventArgs e)
    {
        if (e.ExceptionObject is Exception fallen) _failed?.Invoke(fallen);
        Volatile.Write(ref _fallen, e.ExceptionObject as Exception);
        Ask(TerminalHost.UnexpectedError);
        _closed.Wait(Patience);
        End(TerminalHost.UnexpectedError);
    }

    private void End(int code)
    {
        if (!_closed.IsSet) PutBack();
        if (TakeFallen() is { } failure) Console.Error.WriteLine(TerminalHost.Sentence(failure));
        Environment.Exit(code);
    }

    /// <summary>The error of another thread that ended all, for whoever is first to say it.</summary>
    public Exception? TakeFallen() => Interlocked.Exchange(ref _fallen, null);

    private void PutBack()
    {
        if (OperatingSystem.IsWindows()) return;
        Tty.Set(_settings);
        Tty.WriteWithoutWaiting(Encoding.ASCII.GetBytes(Restore));
    }

    public void Dispose()
    {
        if (_closed.IsSet) return;
        if (!OperatingSystem.IsWindows())
        {
            Tty.Set(_settings);
            Tty.WriteWithoutWaiting(Encoding.ASCII.GetBytes(PlainKeypad));
        }
        _closed.Set();
        AppDomain.CurrentDomain.UnhandledException -= Fall;
        Console.CancelKeyPress -= NotYet;
        foreach (PosixSignalRegistration signal in _signals) signal.Dispose();
    }
}
