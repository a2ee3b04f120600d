using ServiceRunner.Core.Jobs;
using ServiceRunner.Voice;
using VoiceSettings = ServiceRunner.Core.Workshops.Voice;

namespace ServiceRunner.Tests.Voice;

/// <summary>What is told, in which order, through real programs.</summary>
public sealed class SpeakerTests : IDisposable
{
    private readonly MadePrograms _made = new();

    public void Dispose() => _made.Dispose();

    private VoiceSettings Both() => new() { Speech = true, Program = [_made.Speech()], Player = [_made.Player()] };

    // Speaks until the file "go" lies there: the test decides when.
    private VoiceSettings Held() => new() { Speech = true, Program = [_made.Speech("until [ -e go ]; do sleep 0.02; done\necho \"end $text\" >> log")], Player = [_made.Player()] };

    private void LetGo() => File.WriteAllText(Path.Combine(_made.Folder, "go"), "");

    [Fact]
    public void The_tone_comes_first_and_then_the_words()
    {
        using Speaker speaker = _made.Start(Both());
        speaker.Alarm(Urgency.Medium, "Wash jar is ready: 5 min");
        _made.UntilLines(2);
        Assert.Equal(["tone medium.wav", "say Wash jar is ready: 5 minutes"], _made.Lines);
        Assert.Equal(0, _made.Bells);
        Assert.Equal("Sound: player. Speech: speech.", speaker.Status);
        Assert.Equal("", speaker.TakeNote());
    }

    [Fact]
    public void A_step_has_no_tone()
    {
        using Speaker speaker = _made.Start(Both());
        speaker.Step("Lift the balance with its cock");
        _made.UntilLines(1);
        speaker.Step("Lift the fork");
        _made.UntilLines(2);
        Assert.Equal(["say Lift the balance with its cock", "say Lift the fork"], _made.Lines);
    }

    [Fact]
    public void The_most_urgent_alarm_comes_first_and_the_step_last()
    {
        using Speaker speaker = _made.Start(Held() with { LeastSounds = true });
        speaker.Alarm(Urgency.Medium, "first");
        _made.UntilLines(2);
        speaker.Step("step");
        speaker.Alarm(Urgency.Low, "low");
        speaker.Alarm(Urgency.Medium, "medium one");
        speaker.Alarm(Urgency.Medium, "medium two");
        speaker.Alarm(Urgency.High, "high");
        Assert.Equal(["high", "medium one", "medium two", "low"], speaker.Waiting.Select(a => a.Text));
        LetGo();
        _made.UntilLines(17);
        Assert.Equal(["first", "high", "medium one", "medium two", "low", "step"], _made.Lines.Where(l => l.StartsWith("end", StringComparison.Ordinal)).Select(l => l[4..]));
        Assert.Equal(["tone medium.wav", "tone high.wav", "tone medium.wav", "tone medium.wav", "tone low.wav"], _made.Lines.Where(l => l.StartsWith("tone", StringComparison.Ordinal)));
        Assert.Empty(speaker.Waiting);
    }

    [Fact]
    public void A_low_alarm_is_heard_only_where_it_is_wanted()
    {
        using Speaker speaker = _made.Start(Both());
        speaker.Alarm(Urgency.Low, "least reached");
        Assert.Empty(speaker.Waiting);
        speaker.Alarm(Urgency.Medium, "aim reached");
        _made.UntilLines(2);
        Assert.Equal(["tone medium.wav", "say aim reached"], _made.Lines);
    }

    [Fact]
    public void Another_step_cuts_the_step_short()
    {
        using Speaker speaker = _made.Start(Held());
        speaker.Step("one");
        _made.UntilLines(1);
        speaker.Step("two");
        _made.UntilLines(2);
        speaker.Step("three");
        _made.UntilLines(3);
        LetGo();
        _made.UntilLines(4);
        Assert.Equal(["say one", "say two", "say three", "end three"], _made.Lines);
        Assert.Equal("", speaker.TakeNote());
    }

    [Fact]
    public void Another_step_never_cuts_an_alarm()
    {
        using Speaker speaker = _made.Start(Held());
        speaker.Alarm(Urgency.Medium, "alarm");
        _made.UntilLines(2);
        speaker.Step("passed over");
        speaker.Step("step");
        Thread.Sleep(150);
        LetGo();
        _made.UntilLines(5);
        Assert.Equal(["tone medium.wav", "say alarm", "end alarm", "say step", "end step"], _made.Lines);
    }

    [Fact]
    public void A_step_that_an_alarm_cut_short_is_said_again_after_it()
    {
        using Speaker speaker = _made.Start(Held());
        speaker.Step("step");
        _made.UntilLines(1);
        speaker.Alarm(Urgency.High, "alarm");
        _made.UntilLines(3);
        LetGo();
        _made.UntilLines(6);
        Assert.Equal(["say step", "tone high.wav", "say alarm", "end alarm", "say step", "end step"], _made.Lines);
    }

    [Fact]
    public void An_alarm_about_the_same_takes_the_place_of_the_one_before()
    {
        using Speaker speaker = _made.Start(Held());
        speaker.Alarm(Urgency.Medium, "first");
        _made.UntilLines(2);
        speaker.Alarm(Urgency.Medium, "ready", "jar 1");
        speaker.Alarm(Urgency.High, "over", "jar 1");
        speaker.Alarm(Urgency.Medium, "settled before it was told", "jar 2");
        speaker.Settled("jar 2");
        Assert.Equal([new WaitingAlarm(Urgency.High, "over", "jar 1")], speaker.Waiting);
    }

    [Fact]
    public void An_alarm_that_is_answered_falls_silent()
    {
        using Speaker speaker = _made.Start(Held());
        speaker.Alarm(Urgency.High, "over", "jar 1");
        _made.UntilLines(2);
        speaker.Settled("jar 1");
        speaker.Step("next");
        _made.UntilLines(3);
        Assert.Equal(["tone high.wav", "say over", "say next"], _made.Lines);
    }

    [Fact]
    public void The_last_thing_is_said_again_without_its_tone()
    {
        using Speaker speaker = _made.Start(Both());
        Assert.Equal("Nothing was said yet.", speaker.WhyNotAgain);
        speaker.SayAgain();
        speaker.Step("step");
        _made.UntilLines(1);
        Assert.Equal("", speaker.WhyNotAgain);
        speaker.SayAgain();
        _made.UntilLines(2);
        speaker.Alarm(Urgency.Medium, "alarm");
        _made.UntilLines(4);
        speaker.SayAgain();
        _made.UntilLines(5);
        Assert.Equal(["say step", "say step", "tone medium.wav", "say alarm", "say alarm"], _made.Lines);
    }

    [Fact]
    public void Steps_that_are_not_wanted_aloud_are_said_when_asked_for()
    {
        using Speaker speaker = _made.Start(Both() with { Steps = false });
        speaker.Step("step");
        speaker.Alarm(Urgency.Medium, "alarm");
        _made.UntilLines(2);
        speaker.Step("next step");
        speaker.SayAgain();
        _made.UntilLines(3);
        Assert.Equal(["tone medium.wav", "say alarm", "say next step"], _made.Lines);
    }

    [Fact]
    public void Quiet_is_silence_at_once_and_alarms_wait_for_its_end()
    {
        using Speaker speaker = _made.Start(Held());
        speaker.Alarm(Urgency.Medium, "cut short");
        _made.UntilLines(2);
        speaker.Quiet = true;
        speaker.Alarm(Urgency.High, "while quiet");
        speaker.Step("step while quiet");
        Assert.Equal("Quiet: no tone, no word, no bell.", speaker.WhyNotAgain);
        Assert.Equal("Quiet: no tone, no word, no bell. Sound: player. Speech: speech.", speaker.Status);
        Thread.Sleep(300);
        Assert.Equal(["tone medium.wav", "say cut short"], _made.Lines);
        Assert.Equal(["while quiet", "cut short"], speaker.Waiting.Select(a => a.Text));
        Assert.Equal(0, _made.Bells);
        LetGo();
        speaker.Quiet = false;
        _made.UntilLines(8);
        Assert.Equal(["tone high.wav", "say while quiet", "end while quiet", "tone medium.wav", "say cut short", "end cut short"], _made.Lines.Skip(2));
    }

    [Fact]
    public void A_workshop_may_begin_quiet()
    {
        using Speaker speaker = _made.Start(Both() with { Quiet = true });
        speaker.Alarm(Urgency.High, "alarm");
        Thread.Sleep(200);
        Assert.Empty(_made.Lines);
        Assert.True(speaker.Quiet);
    }

    [Fact]
    public void What_is_switched_off_is_not_heard()
    {
        using (Speaker none = _made.Start(new VoiceSettings { Sound = false, Speech = false, Program = [_made.Speech()], Player = [_made.Player()] }))
        {
            none.Alarm(Urgency.High, "alarm");
            none.Step("step");
            none.SayAgain();
            Assert.Empty(none.Waiting);
            Assert.Equal("Sound is off in the workshop file. Speech is off in the workshop file.", none.Status);
            Assert.Equal("Speech is off in the workshop file.", none.WhyNotAgain);
        }
        using Speaker spoken = _made.Start(new VoiceSettings { Sound = false, Speech = true, Program = [Path.Combine(_made.Folder, "speech")] });
        spoken.Alarm(Urgency.High, "only words");
        _made.UntilLines(1);
        Assert.Equal(["say only words"], _made.Lines);
        Assert.Equal(0, _made.Bells);
    }
}
