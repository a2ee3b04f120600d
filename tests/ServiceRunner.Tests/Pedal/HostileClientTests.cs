using ServiceRunner.Pedal;

namespace ServiceRunner.Tests.Pedal;

/// <summary>Whatever a client does, the bench answers the next one.</summary>
public class HostileClientTests
{
    private static readonly PedalLimits Impatient = new() { Patience = TimeSpan.FromMilliseconds(400) };
    private const string Words = "no: the words are go-on, back, say-again, answer and mark";

    private static void StillAnswers(PedalBench bench)
    {
        int pressed = bench.Pressed.Count;
        using PedalBench.Client client = bench.Dial();
        Assert.Equal($"ok: {pressed + 1} GoOn", client.Ask("go-on"));
    }

    [Theory]
    [InlineData("")]
    [InlineData("go on")]
    [InlineData("GO-ON")]
    [InlineData("go-on ")]
    [InlineData("go-on\0")]
    [InlineData("gö-on")]
    [InlineData("quit")]
    public void An_unknown_word_is_answered_with_the_words_and_the_next_is_heard(string word)
    {
        using PedalBench bench = new PedalBench().Works();
        using PedalBench.Client client = bench.Dial();
        Assert.Equal(Words, client.Ask(word));
        Assert.Equal("ok: 1 Back", client.Ask("back"));
    }

    [Fact]
    public void A_line_of_256_bytes_is_read_and_one_more_is_too_long()
    {
        using PedalBench bench = new PedalBench().Works();
        using PedalBench.Client fits = bench.Dial(), longer = bench.Dial();
        Assert.Equal(Words, fits.Ask(new string('x', 255)));
        longer.Send(new string('x', 256));
        Assert.Equal("no: a line has at most 256 bytes", longer.Line());
        Assert.Equal("", longer.Line());
        StillAnswers(bench);
    }

    [Fact]
    public void Random_bytes_press_nothing()
    {
        using PedalBench bench = new PedalBench().Works();
        Random random = new(20261124);
        for (int i = 0; i < 100; i++)
        {
            byte[] bytes = new byte[random.Next(1, 2000)];
            random.NextBytes(bytes);
            using PedalBench.Client client = bench.Dial();
            try
            {
                client.Send(bytes);
                client.SaysNoMore();
                string answer;
                while ((answer = client.Line()).Length > 0) Assert.StartsWith("no: ", answer, StringComparison.Ordinal);
            }
            catch (System.Net.Sockets.SocketException)
            {
                // Hung up on in the middle: as it should be.
            }
        }
        Assert.Empty(bench.Pressed);
        StillAnswers(bench);
    }

    [Fact]
    public void A_flood_without_a_line_end_is_cut_off()
    {
        using PedalBench bench = new PedalBench().Works();
        using PedalBench.Client client = bench.Dial();
        byte[] flood = new byte[64 * 1024];
        Assert.ThrowsAny<System.Net.Sockets.SocketException>(() =>
        {
            for (int i = 0; i < 1000; i++) client.Send(flood);
        });
        StillAnswers(bench);
    }

    [Fact]
    public void Half_a_word_is_not_done()
    {
        using PedalBench bench = new PedalBench().Works();
        using PedalBench.Client client = bench.Dial();
        client.Send("go-on");
        client.SaysNoMore();
        Assert.Equal("no: the line has no end", client.Line());
        Assert.Empty(bench.Pressed);
    }

    [Fact]
    public void A_client_that_says_nothing_is_sent_away()
    {
        using PedalBench bench = new PedalBench(Impatient).Works();
        using PedalBench.Client client = bench.Dial();
        Assert.Equal("no: no line came within 0.4 s", client.Line());
        Assert.Equal("", client.Line());
        StillAnswers(bench);
    }

    [Fact]
    public void A_client_that_says_a_letter_now_and_then_is_sent_away()
    {
        using PedalBench bench = new PedalBench(Impatient).Works();
        using PedalBench.Client client = bench.Dial();
        Thread dripping = new(() =>
        {
            try
            {
                for (int i = 0; i < 100; i++, Thread.Sleep(50)) client.Send("x");
            }
            catch (System.Net.Sockets.SocketException)
            {
                // Sent away.
            }
        });
        dripping.Start();
        Assert.StartsWith("no: ", client.Line(), StringComparison.Ordinal);
        dripping.Join();
        StillAnswers(bench);
    }

    [Fact]
    public void A_client_that_reads_no_answers_stops_itself_only()
    {
        using PedalBench bench = new PedalBench(Impatient).Works();
        using PedalBench.Client client = bench.Dial();
        Assert.ThrowsAny<System.Net.Sockets.SocketException>(() =>
        {
            string unknown = string.Concat(Enumerable.Repeat("x\n", 5000));
            for (int i = 0; i < 1000; i++) client.Send(unknown);
        });
        StillAnswers(bench);
    }

    [Fact]
    public void A_client_that_reads_late_gets_every_answer()
    {
        using PedalBench bench = new PedalBench().Works();
        using PedalBench.Client client = bench.Dial();
        client.Send(string.Concat(Enumerable.Repeat("go-on\n", 1000)));
        Thread.Sleep(300); // by now the answers fill what the system holds for him
        for (int i = 1; i <= 1000; i++) Assert.Equal($"ok: {i} GoOn", client.Line());
    }

    [Fact]
    public void Eight_silent_clients_keep_the_ninth_out_for_their_time_only()
    {
        using PedalBench bench = new PedalBench(new PedalLimits { Patience = TimeSpan.FromSeconds(1) }).Works();
        PedalBench.Client[] silent = [.. Enumerable.Range(0, 8).Select(_ => bench.Dial())];
        using (PedalBench.Client ninth = bench.Dial()) Assert.Equal("no: 8 others are connected already", ninth.Line());
        foreach (PedalBench.Client client in silent) Assert.StartsWith("no: no line came", client.Line(), StringComparison.Ordinal);
        foreach (PedalBench.Client client in silent) Assert.Equal("", client.Line());
        Assert.True(SpinWait.SpinUntil(() =>
        {
            using PedalBench.Client client = bench.Dial();
            return client.Ask("go-on").StartsWith("ok: ", StringComparison.Ordinal);
        }, TimeSpan.FromSeconds(20)));
        foreach (PedalBench.Client client in silent) client.Dispose();
    }

    [Fact]
    public void A_thousand_clients_that_hang_up_at_once_do_no_harm()
    {
        using PedalBench bench = new PedalBench().Works();
        for (int i = 0; i < 1000; i++) bench.Dial().Dispose();
        Assert.True(SpinWait.SpinUntil(() =>
        {
            using PedalBench.Client client = bench.Dial();
            return client.Ask("go-on").StartsWith("ok: ", StringComparison.Ordinal);
        }, TimeSpan.FromSeconds(20)));
    }
}
