using System.Text;
using ServiceRunner.Terminal;

namespace ServiceRunner.Lines;

/// <summary>
/// Reads standard input line by line on a thread of its own. The runtime's own reader would switch a terminal into
/// another mode by writing to it; this one only reads.
/// </summary>
internal sealed class LineInput
{
    // Nobody types this much; a pasted file must not fill the memory.
    private const int Longest = 4000;

    // So many wait for their turn; a faster writer waits.
    private const int Waiting = 1000;

    private readonly Queue<string?> _lines = new();
    private readonly List<byte> _line = [];

    public LineInput() => new Thread(OperatingSystem.IsWindows() ? FromConsole : FromDescriptor) { IsBackground = true, Name = "lines" }.Start();

    /// <summary>Waits for a line; false if none came in time. Null is the end of the input.</summary>
    public bool TryTake(TimeSpan patience, out string? line)
    {
        lock (_lines)
        {
            if (_lines.Count == 0) Monitor.Wait(_lines, patience);
            if (!_lines.TryDequeue(out line)) return false;
            Monitor.PulseAll(_lines);
            return true;
        }
    }

    private void Add(string? line)
    {
        lock (_lines)
        {
            while (_lines.Count >= Waiting) Monitor.Wait(_lines);
            _lines.Enqueue(line);
            Monitor.PulseAll(_lines);
        }
    }

    private void FromConsole()
    {
        while (Console.In.ReadLine() is { } line) Add(line.Length > Longest ? line[..Longest] : line);
        Add(null);
    }

    private void FromDescriptor()
    {
        byte[] bytes = new byte[4096];
        int count;
        while ((count = Tty.Read(bytes)) > 0)
            foreach (byte b in bytes.AsSpan(0, count))
            {
                if (b == '\n') End();
                else if (_line.Count < Longest) _line.Add(b);
            }
        if (_line.Count > 0) End();
        Add(null);
    }

    private void End()
    {
        Add(Encoding.UTF8.GetString([.. _line]).TrimEnd('\r'));
        _line.Clear();
    }
}
