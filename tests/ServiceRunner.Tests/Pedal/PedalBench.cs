using System.Net.Sockets;
using System.Text;
using ServiceRunner.Files.Data;
using ServiceRunner.Pedal;
using ServiceRunner.Tests.EndToEnd;

namespace ServiceRunner.Tests.Pedal;

/// <summary>A data folder with its pedal's socket, and somebody who takes the presses up if wanted.</summary>
internal sealed class PedalBench : IDisposable
{
    private readonly TemporaryFolder _home = new();
    private readonly CancellationTokenSource _end = new();
    private Thread? _worker;

    public PedalBench(PedalLimits? limits = null, uint? user = null, Func<PedalBench, PedalPlaces>? places = null)
    {
        Folder = ((FolderReady)DataFolder.Create(Path.Combine(_home.Path, "data"))).Folder;
        Places = places?.Invoke(this) ?? InDataFolder;
        Socket = PedalSocket.Open(Places, limits ?? new PedalLimits(), user ?? SystemUser.Me, out string whyNot)!;
        Assert.True(Socket is not null, whyNot);
    }

    public string Home => _home.Path;

    public DataFolder Folder { get; }

    public PedalPlaces Places { get; }

    public PedalSocket Socket { get; }

    /// <summary>The places of a machine that has neither a runtime folder nor one for temporary files.</summary>
    public PedalPlaces InDataFolder => new(Folder.Path, Folder.Bench, null, []);

    /// <summary>What was pressed so far.</summary>
    public List<PedalWord> Pressed { get; } = [];

    /// <summary>From now on presses are answered with their number, as a bench does: on one thread, one after the other.</summary>
    public PedalBench Works()
    {
        SemaphoreSlim woken = new(0);
        Socket.Arrived = () => woken.Release();
        _worker = new Thread(() =>
        {
            while (!_end.IsCancellationRequested)
            {
                woken.Wait(20);
                while (Socket.TryTake(out PedalPress? press))
                {
                    Pressed.Add(press.Word);
                    press.Answer($"{Pressed.Count} {press.Word}");
                }
            }
        });
        _worker.Start();
        return this;
    }

    public Client Dial() => new(Socket.Path);

    public void Dispose()
    {
        _end.Cancel();
        _worker?.Join();
        Socket.Dispose();
        _end.Dispose();
        _home.Dispose();
    }

    /// <summary>A program at the other end, well-behaved or not.</summary>
    public sealed class Client : IDisposable
    {
        private readonly Socket _socket = new(AddressFamily.Unix, SocketType.Stream, ProtocolType.Unspecified) { ReceiveTimeout = 20_000, SendTimeout = 20_000 };

        public Client(string path) => _socket.Connect(new UnixDomainSocketEndPoint(path));

        public void Send(string text) => Send(Encoding.UTF8.GetBytes(text));

        public void Send(byte[] bytes) => _socket.Send(bytes);

        public void SaysNoMore() => _socket.Shutdown(SocketShutdown.Send);

        public string Ask(string word)
        {
            Send(word + "\n");
            return Line();
        }

        /// <summary>The next line; empty when the bench has hung up.</summary>
        public string Line()
        {
            List<byte> line = [];
            byte[] one = new byte[1];
            try
            {
                while (_socket.Receive(one) == 1 && one[0] != '\n') line.Add(one[0]);
            }
            catch (SocketException e) when (e.SocketErrorCode is SocketError.ConnectionReset)
            {
                // Hung up while something of ours was still unread.
            }
            return Encoding.UTF8.GetString([.. line]);
        }

        public void Dispose() => _socket.Dispose();
    }
}
