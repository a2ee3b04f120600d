using System.Diagnostics;
using ServiceRunner.Core.Jobs;
using ServiceRunner.Voice;
using VoiceSettings = ServiceRunner.Core.Workshops.Voice;

namespace ServiceRunner.Tests.Voice;

/// <summary>Programs that are missing, die, hang, chatter or do not listen; and texts that want to be more than text.</summary>
public sealed class TroubleTests : IDisposable
{
    private readonly MadePrograms _made = new();

    public void Dispose() => _made.Dispose();

    [Fact]
    public void Without_a_player_the_bell_rings_and_that_is_told_once()
    {
        using Speaker speaker = new(new VoiceSettings(), Bell, _made.Folder, _made.Temporary);
        speaker.Alarm(Urgency.Medium, "ready");
        speaker.Alarm(Urgency.High, "over");
        _made.Until(() => _bells == 2);
        Assert.Equal("No program that plays sounds was found; the terminal's bell rings instead.", speaker.TakeNote());
        Assert.Equal("", speaker.TakeNote());
        Assert.Equal("Sound: the terminal's bell. Speech is off in the workshop file.", speaker.Status);
    }

    private volatile int _bells;

    private void Bell() => Interlocked.Increment(ref _bells);

    [Fact]
    public void A_named_program_that_is_missing_is_named()
    {
        using Speaker speaker = _made.Start(new VoiceSettings { Speech = true, Player = ["no-such-player", "-q"], Program = ["/nowhere/no-such-voice"] });
        speaker.Alarm(Urgency.Medium, "ready");
        _made.Until(() => _made.Bells == 1);
        Assert.Equal("'no-such-player', named as the player of 'voice' in the workshop file, was not found; the terminal's bell rings instead.", speaker.TakeNote());
        Assert.Equal("'/nowhere/no-such-voice', named as the program of 'voice' in the workshop file, was not found; nothing is spoken.", speaker.TakeNote());
        Assert.Equal("'/nowhere/no-such-voice', named as the program of 'voice' in the workshop file, was not found; nothing is spoken.", speaker.WhyNotAgain);
        Assert.Equal("Sound: the terminal's bell. Speech: none.", speaker.Status);
    }

    [Fact]
    public void A_player_that_dies_at_once_leaves_it_to_the_bell()
    {
        using Speaker speaker = _made.Start(new VoiceSettings { Speech = true, Player = [_made.Make("deaf", "exit 1")], Program = [_made.Speech()] });
        speaker.Alarm(Urgency.Medium, "ready");
        _made.UntilLines(1);
        Assert.Equal(1, _made.Bells);
        speaker.Alarm(Urgency.Medium, "ready again");
        _made.UntilLines(2);
        Assert.Equal(2, _made.Bells);
        Assert.Equal("deaf could not play a tone; the terminal's bell rings instead.", speaker.TakeNote());
        Assert.Equal("", speaker.TakeNote());
    }

    [Fact]
    public void The_next_player_is_tried_and_kept()
    {
        _made.Make("pw-play", "echo tried >> log\nexit 1");
        _made.Make("aplay", "echo \"aplay $1 $(basename \"$2\")\" >> log");
        using Speaker speaker = _made.Start(new VoiceSettings());
        speaker.Alarm(Urgency.Medium, "");
        _made.UntilLines(2);
        speaker.Alarm(Urgency.High, "");
        _made.UntilLines(3);
        Assert.Equal(["tried", "aplay -q medium.wav", "aplay -q high.wav"], _made.Lines);
        Assert.Equal(0, _made.Bells);
        _made.Until(() => speaker.IsIdle);
        Assert.Equal("Sound: aplay. Speech is off in the workshop file.", speaker.Status);
    }

    [Fact]
    public void A_speech_program_that_dies_or_does_not_listen_is_told_once_and_stops_nothing()
    {
        using Speaker speaker = _made.Start(new VoiceSettings { Speech = true, Player = [_made.Player()], Program = [_made.Make("mute", "echo tried >> log\nexit 3")] });
        speaker.Step("one");
        _made.UntilLines(1);
        _made.Until(() => speaker.Status.EndsWith("Speech: none.", StringComparison.Ordinal));
        speaker.Alarm(Urgency.Medium, "two");
        _made.UntilLines(3);
        Assert.Equal(["tried", "tone medium.wav", "tried"], _made.Lines);
        Assert.Equal("mute could not speak.", speaker.TakeNote());
        Assert.Equal("", speaker.TakeNote());
    }

    // So does espeak-ng 1.51 on a machine without a sound card: it ends with 0.
    [Fact]
    public void A_program_that_complains_and_ends_in_no_time_has_not_spoken()
    {
        using Speaker speaker = _made.Start(new VoiceSettings { Speech = true, Player = [_made.Make("deaf", "echo no sound card >&2")], Program = [_made.Make("mute", "cat >> log\necho no sound card >&2")] });
        speaker.Alarm(Urgency.Medium, "The wash jar is ready to come out now, and the rinse is next");
        _made.UntilLines(1);
        _made.Until(() => speaker.IsIdle);
        Assert.Equal("deaf could not play a tone; the terminal's bell rings instead.", speaker.TakeNote());
        Assert.Equal("mute could not speak.", speaker.TakeNote());
        Assert.Equal(1, _made.Bells);
    }

    [Fact]
    public void A_program_that_is_no_program_is_no_exception()
    {
        string garbage = _made.Make("garbage", "");
        File.WriteAllBytes(garbage, [0x7F, 0x45, 0x4C, 0x46, 1, 2, 3]);
        using Speaker speaker = _made.Start(new VoiceSettings { Speech = true, Player = [garbage], Program = [garbage] });
        speaker.Alarm(Urgency.High, "over");
        _made.Until(() => _made.Bells == 1);
        Assert.Equal("garbage could not play a tone; the terminal's bell rings instead.", speaker.TakeNote());
    }

    [Fact]
    public void A_program_that_chatters_without_end_is_read_and_thrown_away()
    {
        string chatter = _made.Make("chatter", "head -c 3000000 /dev/urandom\nhead -c 3000000 /dev/urandom >&2\nsleep 0.1\necho said >> log");
        using Speaker speaker = _made.Start(new VoiceSettings { Speech = true, Sound = false, Program = [chatter] });
        speaker.Step("one");
        _made.UntilLines(1);
        _made.Until(() => speaker.IsIdle);
        Assert.EndsWith("Speech: chatter.", speaker.Status, StringComparison.Ordinal);
    }

    [Fact]
    public void A_program_that_leaves_something_running_does_not_hold_up_the_next()
    {
        string service = _made.Make("service", "cat >> log\nsleep 30 &\necho $! >> pids");
        using Speaker speaker = _made.Start(new VoiceSettings { Speech = true, Sound = false, Program = [service] });
        for (int i = 1; i <= 5; i++)
        {
            speaker.Alarm(Urgency.Medium, $"alarm {i}");
        }
        _made.UntilLines(5);
        foreach (string id in File.ReadAllLines(Path.Combine(_made.Folder, "pids")))
        {
            using Process left = Process.GetProcessById(int.Parse(id, System.Globalization.CultureInfo.InvariantCulture));
            left.Kill();
        }
    }

    [Fact]
    public void A_caller_never_waits_while_a_program_hangs_and_a_hundred_texts_wait()
    {
        string hangs = _made.Make("hangs", "echo begun >> log\nexec sleep 60");
        Speaker speaker = _made.Start(new VoiceSettings { Speech = true, Player = [_made.Player()], Program = [hangs] });
        speaker.Alarm(Urgency.Medium, "an alarm that hangs");
        _made.UntilLines(2);
        List<double> taken = [];
        void Timed(Action call)
        {
            long begun = Stopwatch.GetTimestamp();
            call();
            taken.Add(Stopwatch.GetElapsedTime(begun).TotalMilliseconds);
        }
        for (int i = 0; i < 100; i++)
        {
            Timed(() => speaker.Step($"Step {i}: lift the third wheel by 0.03 mm"));
            Timed(() => speaker.Alarm(Urgency.Medium, $"Alarm {i}", $"jar {i}"));
            Timed(speaker.SayAgain);
            Timed(() => _ = speaker.Status);
            Timed(() => _ = speaker.TakeNote());
        }
        Timed(() => speaker.Quiet = true);
        Timed(() => speaker.Quiet = false);
        // One call may meet the scheduler on a loaded machine; the work of a call itself is far below.
        taken.Sort();
        Assert.True(taken[^3] < 5, $"the slowest calls took {taken[^1]:0.00}, {taken[^2]:0.00} and {taken[^3]:0.00} ms");
        Assert.True(taken[taken.Count / 2] < 0.2, $"half of the calls took more than {taken[taken.Count / 2]:0.000} ms");
        long ending = Stopwatch.GetTimestamp();
        speaker.Dispose();
        Assert.True(Stopwatch.GetElapsedTime(ending).TotalMilliseconds < 800);
    }

    [Fact]
    public void A_program_that_hangs_twice_is_not_waited_for_again()
    {
        string hangs = _made.Make("hangs", "echo $$ >> log\nexec sleep 60");
        using Speaker speaker = _made.Start(new VoiceSettings { Speech = true, Sound = false, Program = [hangs] });
        speaker.Alarm(Urgency.Medium, "a");
        speaker.Alarm(Urgency.Medium, "b");
        speaker.Alarm(Urgency.Medium, "c");
        _made.Until(() => speaker.Waiting.Count == 0 && speaker.Status.EndsWith("Speech: none.", StringComparison.Ordinal), 20);
        Assert.Equal(2, _made.Lines.Length);
        Assert.All(_made.Lines, id => Assert.False(Directory.Exists($"/proc/{id}"), "it was not killed"));
        Assert.Equal("hangs could not speak.", speaker.TakeNote());
        Assert.Equal("hangs did not end in time twice and is not used any more in this run.", speaker.TakeNote());
    }

    [Fact]
    public void What_a_program_started_is_ended_with_it_and_the_end_is_quick()
    {
        string deep = _made.Make("deep", "sleep 60 &\necho $! >> log\nwait");
        Speaker speaker = _made.Start(new VoiceSettings { Speech = true, Sound = false, Program = [deep] });
        speaker.Step("one");
        _made.UntilLines(1);
        long begun = Stopwatch.GetTimestamp();
        speaker.Dispose();
        Assert.True(Stopwatch.GetElapsedTime(begun).TotalMilliseconds < 800);
        _made.Until(() => !Directory.Exists($"/proc/{_made.Lines[0]}") || File.ReadAllText($"/proc/{_made.Lines[0]}/stat").Contains(") Z ", StringComparison.Ordinal));
        speaker.Step("after the end");
        speaker.Alarm(Urgency.High, "after the end");
        Assert.Single(_made.Lines);
    }

    [Fact]
    public void Nothing_in_a_text_is_taken_for_a_command()
    {
        using Speaker speaker = _made.Start(new VoiceSettings { Speech = true, Sound = false, Program = [_made.Speech()] });
        string[] texts =
        [
            "-w touched --stdin", "--help", "$(touch touched)", "`touch touched`", "; touch touched", "| tee touched", "> touched",
            "one\ntouch touched", "\u001b]0;title\u0007 \u001b[2J red", "[[volm 0]]", "<voice name='x'/>", "'; touch touched; '", "%s%n", "\u202Eabc\0def",
        ];
        foreach (string text in texts)
        {
            int before = _made.Lines.Length;
            speaker.Step(text);
            _made.UntilLines(before + 1);
        }
        Assert.Equal(
        [
            "say w touched stdin", "say help", "say (touch touched)", "say touch touched", "say touch touched", "say tee touched", "say touched",
            "say one touch touched", "say 0;title 2J red", "say volm 0", "say voice name is x /", "say touch touched", "say per cent s per cent n", "say abc def",
        ], _made.Lines);
        Assert.Equal(["log", "speech", "temporary"], Directory.GetFileSystemEntries(_made.Folder).Select(Path.GetFileName).Order());
    }

    [Fact]
    public void A_text_is_no_option_where_it_is_an_argument()
    {
        _made.Make("spd-say", "for a in \"$@\"; do echo \"$a\" >> log; done");
        using Speaker speaker = _made.Start(new VoiceSettings { Speech = true, Sound = false, Program = ["spd-say", "-l", "en"] });
        speaker.Step("--stop $(touch touched)");
        _made.UntilLines(5);
        Assert.Equal(["-l", "en", "--wait", "--", "stop (touch touched)"], _made.Lines);
    }

    [Fact]
    public void A_service_that_goes_on_speaking_is_told_to_stop()
    {
        _made.Make("spd-say", "echo \"$@\" >> log\n[ \"$1\" = --stop ] || exec sleep 30");
        using Speaker speaker = _made.Start(new VoiceSettings { Speech = true, Sound = false, Program = ["spd-say"] });
        speaker.Step("one");
        _made.UntilLines(1);
        speaker.Step("two");
        _made.UntilLines(3);
        Assert.Equal(["--wait -- one", "--stop", "--wait -- two"], _made.Lines);
    }

    [Fact]
    public void A_text_of_any_length_is_bounded_at_a_word()
    {
        using Speaker speaker = _made.Start(new VoiceSettings { Speech = true, Sound = false, Program = [_made.Speech()] });
        speaker.Step(string.Concat(Enumerable.Repeat("screwdriver ", 100_000)));
        _made.UntilLines(1);
        Assert.InRange(_made.Lines[0].Length, Speaker.LongestText / 2, Speaker.LongestText + 4);
        Assert.EndsWith("screwdriver", _made.Lines[0], StringComparison.Ordinal);
    }

    [Fact]
    public void The_tones_lie_where_only_this_user_reads_them_and_are_cleaned_up()
    {
        string player = _made.Make("player", "stat -c '%a' \"$(dirname \"$1\")\" \"$1\" >> log; cp \"$1\" copy.wav");
        string left = Path.Combine(_made.Temporary, "servicerunner-sounds-999999999-x");
        Directory.CreateDirectory(left);
        Speaker speaker = _made.Start(new VoiceSettings { Player = [player] });
        speaker.Alarm(Urgency.Medium, "ready");
        _made.UntilLines(2);
        _made.Until(() => speaker.IsIdle);
        Assert.Equal(["700", "600"], _made.Lines);
        Assert.False(Directory.Exists(left));
        Assert.Equal(Wave.Bytes(Tone.Of(Urgency.Medium).Samples(), Tone.Rate), File.ReadAllBytes(Path.Combine(_made.Folder, "copy.wav")));
        Assert.Single(Directory.GetDirectories(_made.Temporary));
        speaker.Dispose();
        Assert.Empty(Directory.GetDirectories(_made.Temporary));
    }

    [Fact]
    public void The_page_names_every_program_that_is_looked_for()
    {
        string page = File.ReadAllText(Path.Combine(Shared.Repository.Root, "docs", "sound-and-speech.md"));
        Assert.Contains(string.Join(", ", Player.Known.Select(k => $"`{k[0]}`")), page, StringComparison.Ordinal);
        Assert.Contains(string.Join(", ", Talker.Known.Select(k => $"`{k[0]}`")), page, StringComparison.Ordinal);
    }

    [Fact]
    public void A_program_that_lies_in_the_current_folder_by_chance_is_not_meant() =>
        Assert.Null(OutsideProgram.Find("aplay", $".{Path.PathSeparator}bin{Path.PathSeparator}"));
}
