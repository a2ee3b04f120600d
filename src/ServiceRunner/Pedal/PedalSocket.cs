using System.Diagnostics.CodeAnalysis;
using System.Net.Sockets;
using ServiceRunner.Files.Data;

namespace ServiceRunner.Pedal;

/// <summary>
/// Lets other programs of this user press the bench's pedal. It takes presses in and sends answers out on threads of
/// its own; the bench takes the presses up when it likes, and no client can keep it waiting.
/// </summary>
public sealed class PedalSocket : IDisposable
{
    internal const string WasStopped = "the bench was stopped when this came; press again";
    private const int Stack = 256 * 1024;
    private static readonly TimeSpan Turn = TimeSpan.FromMilliseconds(500);

    private readonly ListeningPlace _place;
    private readonly PedalLimits _limits;
    private readonly uint _user;
    private readonly PedalQueue _queue;
    private readonly Dictionary<Socket, Thread> _connections = [];
    private readonly Thread _thread;
    private volatile bool _closing;

    private PedalSocket(ListeningPlace place, PedalLimits limits, uint user)
    {
        (_place, _limits, _user, _queue) = (place, limits, user, new PedalQueue(limits));
        _thread = new Thread(Listen, Stack) { IsBackground = true, Name = "pedal" };
        _thread.Start();
    }

    /// <summary>Where it listens.</summary>
    public string Path => _place.Path;

    /// <summary>Called after a press came in, on a thread that is not the screen's.</summary>
    public Action? Arrived { get; set; }

    /// <summary>Opens the socket of a bench; or null with a sentence, and the bench works on without it.</summary>
    public static PedalSocket? Open(DataFolder folder, out string whyNot) => Open(PedalPlaces.Of(folder), new PedalLimits(), SystemUser.Me, out whyNot);

    internal static PedalSocket? Open(PedalPlaces places, PedalLimits limits, uint user, out string whyNot) =>
        ListeningPlace.Take(places, limits.Connections, out whyNot) is { } place ? new PedalSocket(place, limits, user) : null;

    /// <summary>The next press, in the order in which they came; never waits.</summary>
    public bool TryTake([NotNullWhen(true)] out PedalPress? press) => _queue.TryTake(out press);

    private void Listen()
    {
        long turned = TimeProvider.System.GetTimestamp();
        while (!_closing)
        {
            try
            {
                bool somebody = _place.Listener.Poll(Turn, SelectMode.SelectRead);
                // A turn that took so long was not one: the program was stopped (Ctrl+Z). What came in meanwhile was given
                // up by its senders and must not be done now, under the repairer's hands.
                if (TimeProvider.System.GetElapsedTime(turned) > Turn + _limits.Patience) TurnAwayAll();
                else if (somebody && !_closing) Take(_place.Listener.Accept());
            }
            catch (Exception)
            {
                if (!_closing) Thread.Sleep(100); // out of handles or memory, most likely: others may give some back
            }
            turned = TimeProvider.System.GetTimestamp();
        }
    }

    private void TurnAwayAll()
    {
        while (_place.Listener.Poll(0, SelectMode.SelectRead)) TurnAway(_place.Listener.Accept(), WasStopped);
    }

    private static void TurnAway(Socket socket, string why)
    {
        using (socket) PedalConnection.Send(socket, $"no: {why}", TimeSpan.Zero);
    }

    private void Take(Socket socket)
    {
        if (SystemUser.AtOtherEnd(socket) is { } user && user != _user)
        {
            TurnAway(socket, "this bench is another user's");
            return;
        }
        if (Admit(socket) is not { } thread)
        {
            TurnAway(socket, $"{_limits.Connections} others are connected already");
            return;
        }
        try
        {
            thread.Start();
        }
        catch (OutOfMemoryException) // what .NET says when the system gives no further thread
        {
            Forget(socket);
        }
    }

    private Thread? Admit(Socket socket)
    {
        lock (_connections)
        {
            if (_connections.Count >= _limits.Connections || _closing) return null;
            return _connections[socket] = new Thread(() => Serve(socket), Stack) { IsBackground = true, Name = "pedal client" };
        }
    }

    private void Serve(Socket socket)
    {
        new PedalConnection(socket, _queue, _limits, TellArrived).Serve();
        Forget(socket);
    }

    private void Forget(Socket socket)
    {
        lock (_connections) _connections.Remove(socket);
        socket.Dispose();
    }

    private void TellArrived()
    {
        try
        {
            Arrived?.Invoke();
        }
        catch (Exception)
        {
            // Only a hint to look sooner; on a client's thread an exception would end the program.
        }
    }

    public void Dispose()
    {
        if (_closing) return;
        _closing = true;
        _queue.Close();
        _place.Dispose();
        KeyValuePair<Socket, Thread>[] connections;
        lock (_connections) connections = [.. _connections];
        foreach ((Socket socket, _) in connections) EndInput(socket);
        long begun = TimeProvider.System.GetTimestamp();
        Join(_thread, begun);
        foreach ((Socket socket, Thread thread) in connections)
        {
            Join(thread, begun);
            socket.Dispose();
        }
    }

    // Whoever is slower than a turn, all together, ends with the process.
    private static void Join(Thread thread, long begun)
    {
        TimeSpan left = Turn - TimeProvider.System.GetElapsedTime(begun);
        if (!thread.ThreadState.HasFlag(ThreadState.Unstarted)) thread.Join(left > TimeSpan.Zero ? left : TimeSpan.Zero);
    }

    // Wakes a thread that waits for this client, but lets its answer still go out.
    private static void EndInput(Socket socket)
    {
        try
        {
            socket.Shutdown(SocketShutdown.Receive);
        }
        catch (Exception e) when (e is SocketException or ObjectDisposedException)
        {
            // It went by itself.
        }
    }
}
