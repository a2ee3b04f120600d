using System.Net.Sockets;

namespace ServiceRunner.Pedal;

/// <summary>
/// A socket file that is ours as long as we live. A lock beside it is held meanwhile, which the system drops however the
/// process ends: so of two runs only one can find a leftover and take its place, and a living socket is never taken away.
/// </summary>
internal sealed class ListeningPlace : IDisposable
{
    private readonly FileStream _lock;

    private ListeningPlace(string path, Socket listener, FileStream hold) => (Path, Listener, _lock) = (path, listener, hold);

    public string Path { get; }

    public Socket Listener { get; }

    /// <summary>Takes the first place that will do; null with a sentence when there is none, or the bench is listening already.</summary>
    public static ListeningPlace? Take(PedalPlaces places, int backlog, out string whyNot)
    {
        whyNot = $"the bench's id in {Files.Data.DataFolder.Marker} is not one";
        if (places.HasPlainBench)
        {
            List<string> reasons = [];
            foreach (PedalPlace place in places.ToListen())
            {
                string why = place.WhyNot;
                bool taken = false;
                if (why.Length == 0 && Take(place.Path, backlog, out why, out taken) is { } ours)
                {
                    whyNot = "";
                    return ours;
                }
                reasons.Add(why);
                if (taken) break; // two sockets for one bench would share its presses out between two runs
            }
            whyNot = string.Join("; ", reasons.Distinct());
        }
        whyNot = $"The pedal's socket is not open ({PedalPress.OneLine(whyNot)}); keys and pedals that send keys work as ever.";
        return null;
    }

    private static ListeningPlace? Take(string path, int backlog, out string whyNot, out bool taken)
    {
        whyNot = "";
        taken = false;
        FileStream? hold = null;
        Socket? listener = null;
        try
        {
            hold = Lock(path);
            taken = hold is null || PedalCall.Answers(path);
            whyNot = taken ? "another run listens on it already" : Leftover(path);
            if (whyNot.Length > 0) return null;
            File.Delete(path);
            listener = new Socket(AddressFamily.Unix, SocketType.Stream, ProtocolType.Unspecified);
            listener.Bind(new UnixDomainSocketEndPoint(path));
            // The folder keeps others out in the moment before this, and each client's user is asked for as well.
            if (!OperatingSystem.IsWindows()) File.SetUnixFileMode(path, UnixFileMode.UserRead | UnixFileMode.UserWrite);
            listener.Listen(backlog);
            ListeningPlace place = new(path, listener, hold!);
            (hold, listener) = (null, null);
            return place;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or SocketException or PlatformNotSupportedException or ArgumentException)
        {
            whyNot = $"{path}: {e.Message}";
            return null;
        }
        finally
        {
            listener?.Dispose();
            hold?.Dispose();
        }
    }

    private static string Leftover(string path)
    {
        bool there = System.IO.Path.Exists(path) || new FileInfo(path).LinkTarget is not null;
        return !there || SystemUser.IsSocket(path) ? "" : $"{path} is there and is not a socket";
    }

    // Null when another run holds it. The empty file stays when we go: to remove it would let two runs hold one lock.
    private static FileStream? Lock(string path)
    {
        FileStreamOptions options = new() { Mode = FileMode.OpenOrCreate, Access = FileAccess.ReadWrite, Share = FileShare.None, BufferSize = 0 };
        if (!OperatingSystem.IsWindows()) options.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        try
        {
            return new FileStream(System.IO.Path.ChangeExtension(path, ".lock"), options);
        }
        catch (IOException e) when ((e.HResult & 0xFFFF) is 11 or 35 or 32) // would block on Linux and macOS, a sharing violation on Windows
        {
            return null;
        }
    }

    /// <summary>Ends the listening and removes the socket file, which is ours while the lock is held.</summary>
    public void Dispose()
    {
        try
        {
            Listener.Shutdown(SocketShutdown.Both); // wakes the thread that waits for a client
        }
        catch (SocketException)
        {
            // Not every system knows this of a socket that listens; the thread wakes by itself.
        }
        Listener.Dispose();
        try
        {
            if (SystemUser.IsSocket(Path)) File.Delete(Path);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // A leftover is recognised by the next run.
        }
        _lock.Dispose();
    }
}
