using System.Net.Sockets;
using System.Text;

namespace ServiceRunner.Pedal;

/// <summary>The other end: a word to the bench, its answer back.</summary>
internal static class PedalCall
{
    /// <summary>Longer than the bench's own patience over line and answer together, so that its own words come first.</summary>
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(5);

    private const int LongestAnswer = 8 * 1024;

    /// <summary>True if somebody listens there: the leftover of a dead run refuses.</summary>
    public static bool Answers(string path)
    {
        using Socket? socket = Connect(path, TimeSpan.FromSeconds(1), out bool busy);
        return busy || socket is not null;
    }

    /// <summary>The answer's line without its end; null when no bench listens at any of the places.</summary>
    public static string? Press(PedalPlaces places, string word) => Press(places, word, Patience);

    internal static string? Press(PedalPlaces places, string word, TimeSpan patience)
    {
        if (!places.HasPlainBench) return null;
        foreach (string path in places.ToCall().Where(File.Exists))
        {
            using Socket? socket = Connect(path, patience, out bool busy);
            if (busy) return "no: the bench did not answer";
            if (socket is null) continue;
            // Presses and answers are for this user's own bench only, whoever put a socket there.
            if (SystemUser.AtOtherEnd(socket) is { } user && user != SystemUser.Me) continue;
            return Exchange(socket, word, patience);
        }
        return null;
    }

    private static string Exchange(Socket socket, string word, TimeSpan patience)
    {
        byte[] answer = new byte[LongestAnswer];
        int count = 0;
        Send(socket, word);
        try
        {
            long begun = TimeProvider.System.GetTimestamp();
            while (count < answer.Length && Array.IndexOf(answer, (byte)'\n', 0, count) < 0)
            {
                TimeSpan left = patience - TimeProvider.System.GetElapsedTime(begun);
                if (left <= TimeSpan.Zero || !socket.Poll(left, SelectMode.SelectRead)) return "no: the bench did not answer";
                int read = socket.Receive(answer, count, answer.Length - count, SocketFlags.None);
                if (read == 0) break;
                count += read;
            }
        }
        catch (SocketException)
        {
            // It hung up; what it said before that counts.
        }
        int end = Array.IndexOf(answer, (byte)'\n', 0, count);
        return end < 0 ? "no: the bench hung up without an answer" : PedalPress.OneLine(Encoding.UTF8.GetString(answer, 0, end));
    }

    // A bench that takes no further clients says so and hangs up without listening: then this fails, and there is an answer.
    private static void Send(Socket socket, string word)
    {
        try
        {
            socket.Send(Encoding.ASCII.GetBytes(word + "\n"));
        }
        catch (SocketException)
        {
            // The answer tells, or its absence.
        }
    }

    // Busy: it is there, but so many wait to be let in that it must be asleep.
    private static Socket? Connect(string path, TimeSpan patience, out bool busy)
    {
        busy = false;
        Socket socket = new(AddressFamily.Unix, SocketType.Stream, ProtocolType.Unspecified) { SendTimeout = (int)patience.TotalMilliseconds };
        try
        {
            socket.Connect(new UnixDomainSocketEndPoint(path));
            return socket;
        }
        catch (SocketException e)
        {
            busy = e.SocketErrorCode is SocketError.WouldBlock or SocketError.TimedOut or SocketError.IOPending;
            socket.Dispose();
            return null;
        }
    }
}
