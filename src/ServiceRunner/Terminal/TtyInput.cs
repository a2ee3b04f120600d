using System.Runtime.CompilerServices;
using System.Text;
using Terminal.Gui.App;
using Terminal.Gui.Drivers;

namespace ServiceRunner.Terminal;

/// <summary>
/// Reads the keyboard in place of the library's own reader, which decodes each piece of 256 bytes by itself (an accent on
/// the border of two pieces is lost from a long paste) and spins for ever when the terminal has gone away.
/// </summary>
internal sealed class TtyInput(Action gone) : AnsiInput
{
    // Waiting in the kernel: a key is taken at once, and an idle program is woken ten times a second instead of fifty.
    private const int WaitMilliseconds = 100;

    private readonly Decoder _decoder = Encoding.UTF8.GetDecoder();
    private readonly byte[] _bytes = new byte[4096];
    private bool _gone;

    private bool Ours => IsAttachedToTerminal && !OperatingSystem.IsWindows();

    public override bool Peek()
    {
        if (!Ours) return base.Peek();
        if (_gone) return false;
        Tty.Input input = Tty.Wait(WaitMilliseconds);
        if (input == Tty.Input.Gone) Leave();
        return input == Tty.Input.Ready;
    }

    public override IEnumerable<char> Read()
    {
        if (!Ours) return base.Read();
        int count = Tty.Read(_bytes);
        if (count == 0)
        {
            Leave();
            return [];
        }
        char[] characters = new char[_decoder.GetCharCount(_bytes, 0, count, flush: false)];
        _decoder.GetChars(_bytes, 0, count, characters, 0, flush: false);
        return characters;
    }

    private void Leave()
    {
        _gone = true;
        gone();
    }

    /// <summary>Makes an application read through this class.</summary>
    public static void Use(IApplication app, Action gone) => Use(app, new Factory(gone));

    /// <summary>Gives an application its parts. The library has a place for them, but keeps it to itself.</summary>
    public static void Use(IApplication app, IComponentFactory parts) => Parts(app) = parts;

    [UnsafeAccessor(UnsafeAccessorKind.Field, Name = "_componentFactory")]
    private static extern ref IComponentFactory? Parts([UnsafeAccessorType("Terminal.Gui.App.ApplicationImpl, Terminal.Gui")] object app);

    private sealed class Factory(Action gone) : AnsiComponentFactory
    {
        public override IInput<char> CreateInput() => new TtyInput(gone);

        public override ISizeMonitor CreateSizeMonitor(IOutput consoleOutput, IOutputBuffer outputBuffer) => new TtySize(consoleOutput, outputBuffer);
    }
}
