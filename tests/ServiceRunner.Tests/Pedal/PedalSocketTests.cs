using System.Diagnostics;
using System.Net.Sockets;
using ServiceRunner.Files.Data;
using ServiceRunner.Pedal;
using ServiceRunner.Tests.EndToEnd;
using ServiceRunner.Tests.Shared;

namespace ServiceRunner.Tests.Pedal;

public class PedalSocketTests
{
    [Fact]
    public void A_word_is_pressed_and_answered_with_a_sentence()
    {
        using PedalBench bench = new PedalBench().Works();
        using PedalBench.Client client = bench.Dial();
        foreach ((string word, string answer) in new[] { ("go-on", "ok: 1 GoOn"), ("back", "ok: 2 Back"), ("say-again", "ok: 3 SayAgain"), ("answer", "ok: 4 Answer"), ("mark\r", "ok: 5 Mark") })
            Assert.Equal(answer, client.Ask(word));
    }

    [Fact]
    public void A_thousand_presses_come_in_their_order()
    {
        using PedalBench bench = new PedalBench().Works();
        using PedalBench.Client client = bench.Dial();
        string[] words = ["go-on", "back", "say-again", "mark", "go-on", "answer", "back"];
        Thread sender = new(() => client.Send(string.Concat(Enumerable.Range(0, 1000).Select(i => words[i % words.Length] + "\n"))));
        sender.Start();
        for (int i = 0; i < 1000; i++) Assert.Equal($"ok: {i + 1} {PedalWords.Read(words[i % words.Length])}", client.Line());
        sender.Join();
        Assert.Equal(Enumerable.Range(0, 1000).Select(i => PedalWords.Read(words[i % words.Length])!.Value), bench.Pressed);
    }

    [Fact]
    public void Eight_clients_at_once_lose_no_press()
    {
        using PedalBench bench = new PedalBench().Works();
        Thread[] clients = [.. Enumerable.Range(0, 8).Select(_ => new Thread(() =>
        {
            using PedalBench.Client client = bench.Dial();
            for (int i = 0; i < 50; i++) client.Ask("go-on");
        }))];
        foreach (Thread client in clients) client.Start();
        foreach (Thread client in clients) client.Join();
        Assert.Equal(400, bench.Pressed.Count);
    }

    [Fact]
    public void A_sender_that_does_not_wait_for_the_answer_has_pressed_all_the_same()
    {
        using PedalBench bench = new();
        using ManualResetEventSlim arrived = new();
        bench.Socket.Arrived = arrived.Set;
        using (PedalBench.Client client = bench.Dial()) client.Send("mark\n");
        Assert.True(arrived.Wait(TimeSpan.FromSeconds(20)));
        Assert.True(bench.Socket.TryTake(out PedalPress? press));
        Assert.Equal(PedalWord.Mark, press.Word);
        press.Answer("nobody hears this");
    }

    [Fact]
    public void A_sentence_stays_one_line_that_moves_no_cursor()
    {
        using PedalBench bench = new();
        bench.Socket.Arrived = () =>
        {
            if (bench.Socket.TryTake(out PedalPress? press)) press.Answer("one\ntwo\e[2J 摆轮 " + new string('x', 2000));
        };
        using PedalBench.Client client = bench.Dial();
        string answer = client.Ask("go-on");
        Assert.StartsWith("ok: one two [2J 摆轮 xxx", answer, StringComparison.Ordinal);
        Assert.Equal(1004, answer.Length);
        Assert.EndsWith("…", answer, StringComparison.Ordinal);
    }

    [Fact]
    public void The_first_answer_counts_and_a_refusal_is_one()
    {
        using PedalBench bench = new();
        bench.Socket.Arrived = () =>
        {
            if (!bench.Socket.TryTake(out PedalPress? press)) return;
            press.Refuse("the bench is opened to read only");
            press.Answer("done");
        };
        using PedalBench.Client client = bench.Dial();
        Assert.Equal("no: the bench is opened to read only", client.Ask("go-on"));
    }

    [Fact]
    public void A_fault_in_the_wake_up_call_harms_nobody()
    {
        using PedalBench bench = new();
        bench.Socket.Arrived = () => throw new InvalidOperationException("the screen is gone");
        using PedalBench.Client client = bench.Dial();
        client.Send("go-on\n");
        PedalPress? press = null;
        Assert.True(SpinWait.SpinUntil(() => bench.Socket.TryTake(out press), TimeSpan.FromSeconds(20)));
        press!.Answer("done");
        Assert.Equal("ok: done", client.Line());
    }

    [Fact]
    public void A_press_that_nobody_took_up_in_time_is_never_done_later()
    {
        using PedalBench bench = new(new PedalLimits { Patience = TimeSpan.FromMilliseconds(300) });
        using PedalBench.Client client = bench.Dial();
        client.Send("go-on\ngo-on\n");
        Assert.Equal("no: the bench did not answer; the press was dropped", client.Line());
        Assert.Equal("", client.Line()); // what was sent behind it is not done either
        Assert.False(bench.Socket.TryTake(out _));
    }

    [Fact]
    public void A_press_that_was_taken_up_and_not_answered_may_have_been_done()
    {
        using PedalBench bench = new(new PedalLimits { Patience = TimeSpan.FromMilliseconds(300) });
        bench.Socket.Arrived = () => Assert.True(bench.Socket.TryTake(out _));
        using PedalBench.Client client = bench.Dial();
        Assert.Equal("no: the bench did not answer; it may have acted, look at the screen before you press again", client.Ask("go-on"));
    }

    [Fact]
    public void Only_so_many_presses_wait()
    {
        PedalQueue queue = new(new PedalLimits());
        PedalPress[] presses = [.. Enumerable.Range(0, 32).Select(_ => queue.Put(PedalWord.GoOn, out string _)!)];
        Assert.Null(queue.Put(PedalWord.GoOn, out string why));
        Assert.Equal("32 presses wait for the bench already", why);
        queue.Forget(presses[0]);
        Assert.NotNull(queue.Put(PedalWord.Back, out _));
        Assert.True(queue.TryTake(out PedalPress? first));
        Assert.Same(presses[1], first);
    }

    [Fact]
    public void Closing_tells_those_who_wait_and_removes_the_socket()
    {
        PedalBench bench = new();
        using ManualResetEventSlim arrived = new();
        bench.Socket.Arrived = arrived.Set;
        using PedalBench.Client waits = bench.Dial(), silent = bench.Dial();
        waits.Send("go-on\n");
        Assert.True(arrived.Wait(TimeSpan.FromSeconds(20)));
        Assert.True(File.Exists(bench.Socket.Path));
        bench.Socket.Dispose();
        Assert.Equal("no: the bench was closed", waits.Line());
        silent.Line();
        Assert.False(File.Exists(bench.Socket.Path));
        bench.Socket.Dispose();
        bench.Dispose();
    }

    [Fact]
    public void Only_the_owner_may_open_it()
    {
        using PedalBench bench = new();
        if (OperatingSystem.IsWindows()) return;
        Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(bench.Socket.Path));
    }

    [Fact]
    public void Another_user_is_refused_even_where_the_file_lets_him_in()
    {
        if (OperatingSystem.IsWindows()) return;
        using PedalBench bench = new(user: SystemUser.Me + 1);
        using PedalBench.Client client = bench.Dial();
        Assert.Equal("no: this bench is another user's", client.Line());
        Assert.False(bench.Socket.TryTake(out _));
    }

    [Fact]
    public void Two_benches_hear_their_own_presses_only()
    {
        using PedalBench one = new PedalBench(places: b => b.InDataFolder with { Temporary = [b.Home] }).Works(), two = new PedalBench().Works();
        using PedalBench.Client toOne = one.Dial(), toTwo = two.Dial();
        toOne.Ask("go-on");
        toTwo.Ask("back");
        toOne.Ask("mark");
        Assert.Equal([PedalWord.GoOn, PedalWord.Mark], one.Pressed);
        Assert.Equal([PedalWord.Back], two.Pressed);
    }

    [Fact]
    public void A_living_socket_is_not_taken_away()
    {
        using PedalBench bench = new PedalBench().Works();
        Assert.Null(PedalSocket.Open(bench.Places, new PedalLimits(), SystemUser.Me, out string whyNot));
        Assert.Equal("The pedal's socket is not open (another run listens on it already); keys and pedals that send keys work as ever.", whyNot);
        using PedalBench.Client client = bench.Dial();
        Assert.Equal("ok: 1 GoOn", client.Ask("go-on"));
    }

    [Fact]
    public void A_socket_that_lives_without_our_lock_is_not_taken_away_either()
    {
        using TemporaryFolder home = new();
        DataFolder folder = ((FolderReady)DataFolder.Create(Path.Combine(home.Path, "data"))).Folder;
        using Socket other = new(AddressFamily.Unix, SocketType.Stream, ProtocolType.Unspecified);
        other.Bind(new UnixDomainSocketEndPoint(Path.Combine(folder.Path, "pedal.sock")));
        other.Listen(1);
        Assert.Null(PedalSocket.Open(new PedalPlaces(folder.Path, folder.Bench, null, []), new PedalLimits(), SystemUser.Me, out string whyNot));
        Assert.Contains("another run listens", whyNot, StringComparison.Ordinal);
        using PedalBench.Client reaches = new(Path.Combine(folder.Path, "pedal.sock"));
    }

    [Fact]
    public void The_leftover_of_a_dead_run_is_replaced()
    {
        using TemporaryFolder home = new();
        DataFolder folder = ((FolderReady)DataFolder.Create(Path.Combine(home.Path, "data"))).Folder;
        string path = Path.Combine(folder.Path, "pedal.sock");
        // .NET removes the file of a socket that it closes; under another name it stays, as after kill -9.
        using (Socket dead = new(AddressFamily.Unix, SocketType.Stream, ProtocolType.Unspecified))
        {
            dead.Bind(new UnixDomainSocketEndPoint(path + "x"));
            dead.Listen(1);
            File.Move(path + "x", path);
        }
        Assert.True(File.Exists(path));
        AssertReplaced(folder, path);
    }

    [FactNeeding("python3")]
    public void The_leftover_of_a_killed_process_is_replaced()
    {
        using TemporaryFolder home = new();
        DataFolder folder = ((FolderReady)DataFolder.Create(Path.Combine(home.Path, "data"))).Folder;
        string path = Path.Combine(folder.Path, "pedal.sock");
        const string Listen = "import socket,sys,time; s=socket.socket(socket.AF_UNIX); s.bind(sys.argv[1]); s.listen(1); print('up', flush=True); time.sleep(600)";
        using (Process process = Process.Start(new ProcessStartInfo("python3", ["-c", Listen, path]) { RedirectStandardOutput = true })!)
        {
            Assert.Equal("up", process.StandardOutput.ReadLine());
            process.Kill(); // SIGKILL
            process.WaitForExit();
        }
        Assert.True(File.Exists(path));
        AssertReplaced(folder, path);
    }

    private static void AssertReplaced(DataFolder folder, string path)
    {
        using PedalSocket? socket = PedalSocket.Open(new PedalPlaces(folder.Path, folder.Bench, null, []), new PedalLimits(), SystemUser.Me, out string whyNot);
        Assert.Equal("", whyNot);
        Assert.Equal(path, socket!.Path);
        socket.Arrived = () =>
        {
            if (socket.TryTake(out PedalPress? press)) press.Answer("heard");
        };
        using PedalBench.Client client = new(path);
        Assert.Equal("ok: heard", client.Ask("go-on"));
    }

    [Fact]
    public void A_file_of_somebody_elses_making_is_not_removed()
    {
        using TemporaryFolder home = new();
        DataFolder folder = ((FolderReady)DataFolder.Create(Path.Combine(home.Path, "data"))).Folder;
        string path = Path.Combine(folder.Path, "pedal.sock");
        File.WriteAllText(path, "a drawing of a pedal");
        Assert.Null(PedalSocket.Open(new PedalPlaces(folder.Path, folder.Bench, null, []), new PedalLimits(), SystemUser.Me, out string whyNot));
        Assert.Equal($"The pedal's socket is not open ({path} is there and is not a socket); keys and pedals that send keys work as ever.", whyNot);
        Assert.Equal("a drawing of a pedal", File.ReadAllText(path));
    }
}
