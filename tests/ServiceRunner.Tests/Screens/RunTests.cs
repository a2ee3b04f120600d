using ServiceRunner.Core.Jobs;
using ServiceRunner.Tests.Shared;

namespace ServiceRunner.Tests.Screens;

/// <summary>Following a checklist with both hands busy.</summary>
public class RunTests
{
    [Fact]
    public void A_booked_in_job_is_begun_with_the_going_on_key()
    {
        using PaperBench bench = new PaperBench().WithJob();
        Snapshot.Verify(bench.Picture());
        bench.Keys("PageDown");
        Assert.IsType<Phase.Running>(bench.Job.Phase);
    }

    [Theory]
    [InlineData(80, 24)]
    [InlineData(120, 40)]
    [InlineData(60, 18)]
    [InlineData(200, 60)]
    [InlineData(20, 5)]
    public void A_step_with_its_cautions_before_its_act(int width, int height)
    {
        using PaperBench bench = new PaperBench().WithJob().To("let-down");
        Snapshot.Verify(bench.Picture(width, height), $"{width}x{height}");
    }

    [Fact]
    public void The_caution_stands_above_the_act()
    {
        using PaperBench bench = new PaperBench().WithJob().To("let-down");
        string picture = bench.Picture();
        Assert.InRange(picture.IndexOf("Stored energy", StringComparison.Ordinal), 0, picture.IndexOf("Let the mainspring down", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(30)]
    [InlineData(250)]
    [InlineData(660)]
    public void A_key_held_down_goes_on_once(int milliseconds)
    {
        using PaperBench bench = new PaperBench().WithJob().To("photo-closed");
        bench.Wait(TimeSpan.FromSeconds(1));
        int before = bench.Job.Log.Count;
        bench.Held("PageDown", 40, TimeSpan.FromMilliseconds(milliseconds));
        Assert.Equal(before + 1, bench.Job.Log.Count);
        bench.Keys("PageDown");
        Assert.Equal(before + 2, bench.Job.Log.Count);
    }

    [Fact]
    public void While_looking_back_going_on_only_returns()
    {
        using PaperBench bench = new PaperBench().WithJob().To("luminous-look");
        int before = bench.Job.Log.Count;
        bench.Keys("PageUp", "PageUp");
        Assert.Equal("hear-owner", bench.Run.Shown!.Step.Id.Value);
        Snapshot.Verify(bench.Picture());
        bench.Keys("PageDown");
        Assert.False(bench.Run.LooksBack);
        Assert.Equal(before, bench.Job.Log.Count);
    }

    [Fact]
    public void A_confirm_wants_its_value_and_takes_no_yes()
    {
        using PaperBench bench = new PaperBench().WithJob().To("let-down");
        int before = bench.Job.Log.Count;
        bench.Keys("Enter");
        Assert.Equal("By how many turns did the crown run back?", bench.Shell.Open!.Label);
        bench.Type("yes");
        Assert.Contains("does not say what you see", bench.Shell.Message, StringComparison.Ordinal);
        Assert.NotNull(bench.Shell.Open);
        Assert.Equal(before, bench.Job.Log.Count);
        bench.Type("5,5 turns");
        Assert.Null(bench.Shell.Open);
        Assert.Equal(Power.Off, bench.Job.Power);
    }

    [Fact]
    public void What_was_typed_and_left_is_brought_back()
    {
        using PaperBench bench = new PaperBench().WithJob().To("let-down").Keys("Enter");
        bench.Shell.Leave("5 tur");
        Assert.Null(bench.Shell.Open);
        bench.Keys("Enter");
        Assert.Equal("5 tur", bench.Shell.Open!.Start);
    }

    [Fact]
    public void A_look_is_answered_by_its_number_and_a_bad_one_is_a_finding()
    {
        using PaperBench bench = new PaperBench().WithJob().To("see-train");
        Snapshot.Verify(bench.Picture());
        int findings = bench.Job.Findings.Count;
        bench.Keys("2");
        Assert.Equal(findings + 1, bench.Job.Findings.Count);
    }

    [Fact]
    public void Oil_is_served_one_point_at_a_time_and_the_bottle_can_be_named()
    {
        using PaperBench bench = new PaperBench().WithJob().To("oil-train-side");
        bench.Keys("b").Type("H-1140").Type("1 Feb 2026").Type("");
        Snapshot.Verify(bench.Picture());
        bench.Keys("Enter");
        Assert.Equal("H-1140", bench.Job.Points["centre-upper"].Event.Batch);
    }

    [Fact]
    public void Taking_back_returns_to_the_step()
    {
        using PaperBench bench = new PaperBench().WithJob().To("luminous-look").Keys("u");
        Assert.Equal("photo-closed", bench.Run.Shown!.Step.Id.Value);
        Assert.Equal("Taken back: 'Photograph the watch closed' done.", bench.Shell.Message);
    }

    [Fact]
    public void Passing_over_asks_for_the_reason_that_the_workshop_wants()
    {
        using PaperBench bench = new PaperBench().WithJob().To("photo-closed").Keys("s");
        Assert.Equal("Why passed over?", bench.Shell.Open!.Label);
        bench.Type(" ");
        Assert.Equal("Nothing was typed.", bench.Shell.Message);
        bench.Type("x");
        Assert.Equal("Say it in a few words.", bench.Shell.Message);
        bench.Type("the camera is broken");
        Assert.Equal("the camera is broken", bench.Job.Deviations.Single().Event.Reason);
    }

    [Fact]
    public void A_pause_marks_the_place_and_coming_back_shows_the_last_three_steps()
    {
        using PaperBench bench = new PaperBench().WithJob().To("open-back").Keys("p");
        Snapshot.Verify(bench.Picture());
        bench.Keys("Enter");
        Assert.Equal("open-back", bench.Run.Shown!.Step.Id.Value);
    }

    [Fact]
    public void A_hold_says_what_it_waits_for_and_in_which_condition()
    {
        using PaperBench bench = new PaperBench().WithJob().To("open-back").Keys("h", "2");
        bench.Type("a fourth wheel, ordered").Type("in a while");
        Assert.Equal("'in a while' is not a day. As 2026-03-20, 20 Mar, Monday, +14 days or +3 weeks.", bench.Shell.Message);
        bench.Type("1 Mar 2026");
        Assert.Equal("Sun 1 March 2026 has passed already.", bench.Shell.Message);
        bench.Type("+3 weeks").Type("");
        Assert.Equal("Say in which condition it can wait.", bench.Shell.Message);
        bench.Type("power off, covered");
        Assert.Equal(new Phase.Held(bench.Job.Phase.Since, HoldFor.Part, "a fourth wheel, ordered", "power off, covered", new DateOnly(2026, 3, 23)), bench.Job.Phase);
        Snapshot.Verify(bench.Picture());
    }

    [Fact]
    public void A_step_out_of_order_says_what_speaks_against_it_and_is_written_down()
    {
        using PaperBench bench = new PaperBench().WithJob().To("hear-owner").Keys("g");
        foreach (char c in "lift the hands") bench.Keys(c == ' ' ? "Space" : c.ToString());
        bench.Keys("Enter");
        Snapshot.Verify(bench.Picture());
        bench.Keys("Enter");
        Assert.Contains(bench.Job.Deviations, d => d.Event.Kind == Deviation.OutOfOrder);
    }

    [Fact]
    public void Steps_done_away_from_the_screen_are_entered_afterwards()
    {
        using PaperBench bench = new PaperBench().WithJob().To("photo-closed").Keys("a", "2").Type("8:30");
        StepRecord record = bench.Job.Steps[new StepKey("1", "photo-closed")];
        Assert.Equal(new DateTimeOffset(2026, 3, 2, 8, 30, 0, TimeSpan.Zero), record.End!.Remembered);
        Assert.True(bench.Job.IsSettled(new StepKey("1", "luminous-look")));
    }

    [Fact]
    public void A_key_without_a_meaning_says_where_the_keys_are()
    {
        using PaperBench bench = new PaperBench().WithJob().Keys("Z");
        Assert.Equal("Z does nothing here; F1 shows the keys.", bench.Shell.Message);
    }

    [Fact]
    public void A_count_outside_its_limits_wants_a_reason_and_says_so()
    {
        using PaperBench bench = new PaperBench().WithJob().To("count-screws").Keys("Enter");
        bench.Type("21");
        Assert.Equal("Why outside its limits?", bench.Shell.Open!.Label);
        bench.Type("one was missing on arrival");
        Assert.Equal("Noted: 21. Written down: outside its limits: screws in the tray: 21 screws, expected 22. u takes it back.", bench.Shell.Message);
    }

    [Fact]
    public void A_bad_look_is_said_at_once()
    {
        using PaperBench bench = new PaperBench().WithJob().To("see-train").Keys("2");
        Assert.StartsWith("Noted: worn. Written down: a finding: centre pivots, worn.", bench.Shell.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Figures_typed_fast_are_not_choices()
    {
        using PaperBench bench = new PaperBench().WithJob().To("see-train").Keys("1");
        int before = bench.Job.Log.Count;
        bench.Shell.Press(new("2"));
        Assert.Equal(before, bench.Job.Log.Count);
        Assert.Contains("not taken for choices", bench.Shell.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_luminous_watch_stops_and_no_answer_goes_on_without_advice_that_allows_it()
    {
        using PaperBench bench = new PaperBench().WithJob().To("luminous-look").Keys("Enter", "2");
        Assert.Equal("luminous-stop", bench.Run.Shown!.Step.Id.Value);
        bench.Keys("Enter").Type("in the steel box; the authority was asked");
        Assert.All(Assert.IsType<Offer.Answer>(bench.Run.Offer).Ask.Choices, c => Assert.DoesNotContain("no work", c, StringComparison.Ordinal));
        bench.Keys("x", "1").Type("the advice allows no work");
        Assert.IsType<Phase.Stopped>(bench.Job.Phase);
    }

    [Fact]
    public void What_is_ended_early_counts_the_parts_and_is_never_called_ready()
    {
        using PaperBench bench = new PaperBench().WithJob().To("stud-free").Keys("x", "1");
        Assert.Matches(@"Why is it returned unrepaired\? \d+ parts still off the movement\.", bench.Shell.Open!.Label);
        bench.Shell.Leave("");
        bench.Keys("c").Type("the owner wants it back as it is");
        Assert.Contains("closed, not finished", bench.Picture(), StringComparison.Ordinal);
        Assert.Equal("closed, not finished", bench.Session.Board().Single().State);
        bench.Keys("PageDown");
        Assert.Contains("This job is closed, not finished.", bench.Picture(), StringComparison.Ordinal);
    }
}
