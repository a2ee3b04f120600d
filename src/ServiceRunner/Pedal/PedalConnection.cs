using System.Net.Sockets;
using System.Text;

namespace ServiceRunner.Pedal;

/// <summary>
/// One client, on a thread of its own that waits for it and for nothing else: lines in, one answer each. Whatever comes
/// in its place (nothing, bytes, a flood, one letter a second) ends this connection only.
/// </summary>
internal sealed class PedalConnection(Socket socket, PedalQueue queue, PedalLimits limits, Action arrived)
{
    private readonly byte[] _held = new byte[limits.LineBytes];
    private int _count;

    /// <summary>Serves the client until it goes or has to.</summary>
    public void Serve()
    {
        try
        {
            bool goesOn = true;
            while (goesOn && ReadLine() is { } line) goesOn = Answer(line);
        }
        catch (Exception)
        {
            // The client is gone, or the bench closes; whatever else it was, on this thread it would end the program.
        }
    }

    // False when the connection is to end: nobody reads, or the bench did not answer, and what the client sent after this
    // word would then be done when it no longer waits for it.
    private bool Answer(string line)
    {
        if (PedalWords.Read(line) is not { } word) return Send($"no: the words are {PedalWords.All}");
        if (queue.Put(word, out string why) is not { } press) return Send($"no: {why}");
        arrived();
        bool answered = press.Wait(out string answer);
        queue.Forget(press);
        return Send(answer) && answered;
    }

    // Null when no further line comes or is wanted.
    private string? ReadLine()
    {
        long begun = TimeProvider.System.GetTimestamp();
        while (true)
        {
            int end = Array.IndexOf(_held, (byte)'\n', 0, _count);
            if (end >= 0) return TakeLine(end);
            if (_count == _held.Length) return Dismiss($"a line has at most {limits.LineBytes} bytes");
            TimeSpan left = limits.Patience - TimeProvider.System.GetElapsedTime(begun);
            if (left <= TimeSpan.Zero || !socket.Poll(left, SelectMode.SelectRead)) return Dismiss($"no line came within {limits.Patience.TotalSeconds:0.#} s");
            int read = socket.Receive(_held, _count, _held.Length - _count, SocketFlags.None);
            // A word without the line's end may be half a word: nothing is done by halves.
            if (read == 0) return _count == 0 ? null : Dismiss("the line has no end");
            _count += read;
            // The program was stopped while this came in: its sender has given up.
            if (TimeProvider.System.GetElapsedTime(begun) > limits.Patience) return Dismiss(PedalSocket.WasStopped);
        }
    }

    private string TakeLine(int end)
    {
        int length = end > 0 && _held[end - 1] == '\r' ? end - 1 : end;
        string line = Encoding.ASCII.GetString(_held, 0, length);
        _count -= end + 1;
        Array.Copy(_held, end + 1, _held, 0, _count);
        return line;
    }

    private string? Dismiss(string why)
    {
        Send($"no: {why}");
        return null;
    }

    private bool Send(string line) => Send(socket, line, limits.Patience);

    /// <summary>Sends a line to a client that reads, and waits no longer than said for one that is slow at it.</summary>
    public static bool Send(Socket socket, string line, TimeSpan patience)
    {
        ReadOnlySpan<byte> bytes = Encoding.UTF8.GetBytes(line + "\n");
        long begun = TimeProvider.System.GetTimestamp();
        socket.Blocking = false;
        while (true)
        {
            bytes = bytes[socket.Send(bytes, SocketFlags.None, out SocketError error)..];
            if (bytes.IsEmpty) return true;
            TimeSpan left = patience - TimeProvider.System.GetElapsedTime(begun);
            if (error is not (SocketError.Success or SocketError.WouldBlock) || left <= TimeSpan.Zero || !socket.Poll(left, SelectMode.SelectWrite)) return false;
        }
    }
}
