using ServiceRunner.Files.Data;
using ServiceRunner.Pedal;
using ServiceRunner.Tests.EndToEnd;
using ServiceRunner.Verbs;

namespace ServiceRunner.Tests.Pedal;

public class PedalVerbTests
{
    private static (int Exit, string Output, string Errors) Run(Func<TextWriter, TextWriter, int> verb)
    {
        StringWriter output = new() { NewLine = "\n" }, errors = new() { NewLine = "\n" };
        return (verb(output, errors), output.ToString(), errors.ToString());
    }

    private static (int Exit, string Output, string Errors) Press(PedalBench bench, string word) => Run((o, e) => PedalVerb.Press(bench.Places, word, o, e));

    [Fact]
    public void It_presses_and_prints_what_the_bench_says()
    {
        using PedalBench bench = new PedalBench().Works();
        Assert.Equal((0, "1 GoOn\n", ""), Press(bench, "go-on"));
        Assert.Equal((0, "2 SayAgain\n", ""), Press(bench, "say-again"));
        Assert.Equal([PedalWord.GoOn, PedalWord.SayAgain], bench.Pressed);
    }

    [Fact]
    public void It_finds_the_bench_of_a_data_folder_by_itself()
    {
        using TemporaryFolder home = new();
        DataFolder folder = ((FolderReady)DataFolder.Create(Path.Combine(home.Path, "data"))).Folder;
        using PedalSocket? socket = PedalSocket.Open(folder, out string whyNot);
        Assert.True(socket is not null, whyNot);
        socket.Arrived = () =>
        {
            if (socket.TryTake(out PedalPress? press)) press.Answer("Done: Let the mainspring down.");
        };
        Assert.Equal((0, "Done: Let the mainspring down.\n", ""), Run((o, e) => PedalVerb.Run(folder.Path, "go-on", o, e)));
    }

    [Fact]
    public void A_refusal_is_exit_code_1()
    {
        using PedalBench bench = new();
        bench.Socket.Arrived = () =>
        {
            if (bench.Socket.TryTake(out PedalPress? press)) press.Refuse("the bench is opened to read only");
        };
        Assert.Equal((1, "", "servicerunner: the bench is opened to read only.\n"), Press(bench, "go-on"));
    }

    [Fact]
    public void A_bench_that_takes_no_further_clients_is_exit_code_1_each_time()
    {
        using PedalBench bench = new(new PedalLimits { Connections = 0 });
        for (int i = 0; i < 200; i++) Assert.Equal((1, "", "servicerunner: 0 others are connected already.\n"), Press(bench, "go-on"));
    }

    [Fact]
    public void A_bench_that_does_not_answer_is_exit_code_1()
    {
        using PedalBench bench = new(new PedalLimits { Patience = TimeSpan.FromMilliseconds(200) });
        Assert.Equal((1, "", "servicerunner: the bench did not answer; the press was dropped.\n"), Press(bench, "go-on"));
    }

    [Fact]
    public void No_open_bench_is_exit_code_7()
    {
        using TemporaryFolder home = new();
        string data = Path.Combine(home.Path, "data");
        Assert.IsType<FolderReady>(DataFolder.Create(data));
        Assert.Equal((7, "", $"servicerunner: no bench is open on {data}; open one with 'servicerunner' in a terminal, or name another folder with --data.\n"),
            Run((o, e) => PedalVerb.Run(data, "go-on", o, e)));
        Assert.Equal([DataFolder.Marker], Directory.GetFileSystemEntries(data).Select(Path.GetFileName)); // who calls makes nothing
    }

    [Fact]
    public void A_bench_that_was_closed_is_exit_code_7()
    {
        using PedalBench bench = new PedalBench().Works();
        Assert.Equal(0, Press(bench, "go-on").Exit);
        bench.Socket.Dispose();
        Assert.Equal(7, Press(bench, "go-on").Exit);
    }

    [Fact]
    public void A_folder_that_is_not_there_is_exit_code_4()
    {
        using TemporaryFolder home = new();
        (int exit, _, string errors) = Run((o, e) => PedalVerb.Run(Path.Combine(home.Path, "nowhere"), "go-on", o, e));
        Assert.Equal(4, exit);
        Assert.StartsWith("servicerunner: There is no data folder at", errors, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("go")]
    [InlineData("")]
    [InlineData("Go-on")]
    public void An_unknown_word_is_exit_code_2_with_the_list(string word) =>
        Assert.Equal((2, "", $"servicerunner: there is no pedal word '{word}'; there are go-on, back, say-again, answer and mark.\n"),
            Run((o, e) => PedalVerb.Run("/nowhere", word, o, e)));

    [Fact]
    public void Something_else_that_listens_there_is_not_believed()
    {
        using TemporaryFolder home = new();
        DataFolder folder = ((FolderReady)DataFolder.Create(Path.Combine(home.Path, "data"))).Folder;
        using System.Net.Sockets.Socket other = new(System.Net.Sockets.AddressFamily.Unix, System.Net.Sockets.SocketType.Stream, System.Net.Sockets.ProtocolType.Unspecified);
        other.Bind(new System.Net.Sockets.UnixDomainSocketEndPoint(Path.Combine(folder.Path, "pedal.sock")));
        other.Listen(2);
        Thread speaks = new(() =>
        {
            foreach (string said in new[] { "HELLO \e[2J\n", "" })
            {
                using System.Net.Sockets.Socket client = other.Accept();
                client.Send(System.Text.Encoding.ASCII.GetBytes(said)); // and hangs up without having listened
            }
        });
        speaks.Start();
        PedalPlaces places = new(folder.Path, folder.Bench, null, []);
        Assert.Equal((1, "", "servicerunner: what listens there is not a bench.\n"), Run((o, e) => PedalVerb.Press(places, "go-on", o, e)));
        Assert.Equal((1, "", "servicerunner: the bench hung up without an answer.\n"), Run((o, e) => PedalVerb.Press(places, "go-on", o, e)));
        speaks.Join();
    }

    [Fact]
    public void A_bench_that_sleeps_keeps_nobody_waiting_for_ever()
    {
        using TemporaryFolder home = new();
        DataFolder folder = ((FolderReady)DataFolder.Create(Path.Combine(home.Path, "data"))).Folder;
        using System.Net.Sockets.Socket asleep = new(System.Net.Sockets.AddressFamily.Unix, System.Net.Sockets.SocketType.Stream, System.Net.Sockets.ProtocolType.Unspecified);
        asleep.Bind(new System.Net.Sockets.UnixDomainSocketEndPoint(Path.Combine(folder.Path, "pedal.sock")));
        asleep.Listen(1); // as a stopped program: the system lets a few in, then makes the others wait at the door
        PedalPlaces places = new(folder.Path, folder.Bench, null, []);
        for (int i = 0; i < 4; i++) Assert.Equal("no: the bench did not answer", PedalCall.Press(places, "go-on", TimeSpan.FromMilliseconds(200)));
    }
}
