using System.Runtime.InteropServices;
using System.Text;
using ServiceRunner.Screens;
using ServiceRunner.Terminal;

namespace ServiceRunner.Lines;

/// <summary>Runs the dialogue on standard input and output until the shell is done or the input ends.</summary>
internal static class LineHost
{
    private const int Hangup = 1, Interrupt = 2, QuitSignal = 3, BrokenPipe = 13, Termination = 15;

    // As often as the full-screen view looks at its clocks.
    private static readonly TimeSpan Turn = TimeSpan.FromMilliseconds(100);

    /// <summary>Returns the exit code: 0 when the shell was done or the input ended, 128 and the number of the signal that ended it.</summary>
    public static int Run(Shell shell, string why)
    {
        int ended = 0;
        bool resumed = false;
        List<PosixSignalRegistration> signals =
        [
            .. new[] { (PosixSignal.SIGHUP, Hangup), (PosixSignal.SIGINT, Interrupt), (PosixSignal.SIGQUIT, QuitSignal), (PosixSignal.SIGTERM, Termination) }
                .Select(s => PosixSignalRegistration.Create(s.Item1, context =>
                {
                    context.Cancel = true;
                    Volatile.Write(ref ended, 128 + s.Item2);
                })),
        ];
        if (!OperatingSystem.IsWindows()) signals.Add(PosixSignalRegistration.Create(PosixSignal.SIGCONT, _ => Volatile.Write(ref resumed, true)));
        try
        {
            LineDialogue dialogue = new(shell);
            LineInput input = new();
            bool heard = Write(dialogue.Greeting(why));
            while (heard && !shell.Done && Volatile.Read(ref ended) == 0)
            {
                if (Interlocked.Exchange(ref resumed, false)) shell.Resumed();
                if (!input.TryTake(Turn, out string? line)) heard = ByItself(dialogue.Tick());
                else if (line is null) shell.Leave();
                else heard = Write(dialogue.Take(line));
            }
            return heard && Write(dialogue.Farewell()) ? Volatile.Read(ref ended) : 128 + BrokenPipe;
        }
        finally
        {
            foreach (PosixSignalRegistration signal in signals) signal.Dispose();
        }
    }

    // Somebody may be in the middle of a line on a terminal: this gets a line of its own.
    private static bool ByItself(string line) => line.Length == 0 || Write(Console.IsInputRedirected ? [line] : ["", line]);

    // False when nobody reads any more. The console's own stream would not say so, and its writer would first write to
    // the terminal what a screen needs.
    private static bool Write(IReadOnlyList<string> lines)
    {
        byte[] bytes = Encoding.UTF8.GetBytes(string.Concat(lines.Select(l => l + "\n")));
        if (!OperatingSystem.IsWindows()) return Tty.Write(bytes);
        using Stream output = Console.OpenStandardOutput();
        output.Write(bytes);
        return true;
    }
}
