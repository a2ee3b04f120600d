using ServiceRunner.Core.Jobs;
using ServiceRunner.Screens;
using ServiceRunner.Screens.Baths;
using ServiceRunner.Screens.Board;
using ServiceRunner.Screens.Pick;
using ServiceRunner.Screens.Run;
using ServiceRunner.Tests.Shared;

namespace ServiceRunner.Tests.Lines;

/// <summary>The bench heard line by line: what is said after each entry, and what an entry means.</summary>
public class LineDialogueTests
{
    private static PaperLines AtJob()
    {
        PaperLines lines = new();
        lines.Bench.WithJob();
        lines.Greet().NewPaper();
        return lines;
    }

    [Fact]
    public void The_first_stage_of_the_shipped_service_is_walked_by_lines_alone()
    {
        using PaperLines lines = AtJob();
        string first = "";
        for (int i = 0; i < 200; i++)
        {
            if (lines.Run.Shown is { } step)
            {
                if (first.Length == 0) first = step.Stage.Id.Value;
                if (step.Stage.Id.Value != first) break;
                lines.To(step.Step.Id.Value);
            }
            switch (lines.Run.Offer)
            {
                case Offer.Fact or Offer.Answer { Act: null, Ask.Choices.Count: > 0 }: lines.Say("1"); break;
                case Offer.Answer { Act: null } a: lines.Say("", Screens.PaperBench.Typed(a.Ask)); break;
                default: lines.Say(""); break;
            }
        }
        Assert.NotEqual(first, lines.Run.Shown!.Stage.Id.Value);
        Snapshot.Verify(lines.Picture);
    }

    [Fact]
    public void The_board_is_told_by_number_and_a_number_opens_a_job()
    {
        using PaperLines lines = new();
        lines.Bench.WithJob("Q26-001").Keys("F2");
        lines.Bench.WithJob("Q26-002").Keys("F2");
        lines.Greet("Standard output is no terminal, so the bench is told line by line.").Say("2");
        Assert.IsType<RunModel>(lines.Shell.Screen);
        Snapshot.Verify(lines.Picture);
    }

    [Fact]
    public void A_job_is_booked_in_by_lines()
    {
        using PaperLines lines = new PaperLines().Greet();
        lines.Say("new job", "Wrist watch, gilt dial", "3", "M. Halvorsen", "10", "+14", "book", "hand-wound", "1");
        Assert.Equal("Wrist watch, gilt dial", lines.Bench.Job.What);
        Snapshot.Verify(lines.Picture);
    }

    [Fact]
    public void The_caution_is_told_before_the_act_and_not_again_for_the_next_question()
    {
        using PaperLines lines = AtJob();
        lines.To("let-down");
        int caution = lines.Last.ToList().FindIndex(l => l.StartsWith("Caution: Stored energy", StringComparison.Ordinal));
        Assert.InRange(caution, 0, lines.Last.ToList().FindIndex(l => l.StartsWith("Let the mainspring down", StringComparison.Ordinal)) - 1);
        lines.NewPaper().Say("more", "", "yes", "?", "5 turns");
        Snapshot.Verify(lines.Picture);
    }

    [Fact]
    public void Help_lists_what_can_be_done_now_and_why_says_why_not()
    {
        using PaperLines lines = AtJob();
        lines.To("see-train").NewPaper().Say("help", "why end the clock", "why take back", "help pass over", "why", "bottles", "take", "why f4");
        Snapshot.Verify(lines.Picture);
    }

    [Theory]
    [InlineData("2")]
    [InlineData("sluggish")]
    public void An_answer_is_chosen_by_its_number_or_as_it_reads(string entry)
    {
        using PaperLines lines = AtJob();
        lines.To("see-train");
        IReadOnlyList<string> choices = ((Offer.Answer)lines.Run.Offer).Ask.Choices;
        int findings = lines.Bench.Job.Findings.Count;
        lines.Say(entry == "sluggish" ? choices[1].ToUpperInvariant() : entry);
        Assert.Equal(findings + 1, lines.Bench.Job.Findings.Count);
        Assert.StartsWith($"Noted: {choices[1]}. Written down: a finding", lines.Last[0], StringComparison.Ordinal);
    }

    [Fact]
    public void Numbers_right_behind_each_other_are_all_taken()
    {
        using PaperLines lines = AtJob();
        lines.To("see-train");
        int before = lines.Bench.Job.Log.Count;
        lines.Say("1").SayAtOnce("take back").SayAtOnce("1");
        Assert.Equal(before + 3, lines.Bench.Job.Log.Count);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(30)]
    [InlineData(400)]
    public void An_empty_line_knocked_goes_on_once(int milliseconds)
    {
        using PaperLines lines = AtJob();
        lines.To("photo-closed").Wait(TimeSpan.FromSeconds(2));
        int before = lines.Bench.Job.Log.Count;
        lines.SayAtOnce("");
        for (int i = 0; i < 5; i++) lines.Wait(TimeSpan.FromMilliseconds(milliseconds)).SayAtOnce("");
        Assert.Equal(before + 1, lines.Bench.Job.Log.Count);
        Assert.Equal(["That came within 0.7 s of the press before, or of a clock coming due, and is taken for the same press, held or knocked."], lines.Last);
        lines.Say("");
        Assert.Equal(before + 2, lines.Bench.Job.Log.Count);
    }

    [Fact]
    public void An_empty_line_knocked_behind_an_answer_does_not_go_on()
    {
        using PaperLines lines = AtJob();
        lines.To("let-down").Say("").Say("5 turns");
        int before = lines.Bench.Job.Log.Count;
        lines.SayAtOnce("");
        Assert.Equal(before, lines.Bench.Job.Log.Count);
    }

    [Fact]
    public void Go_on_in_words_is_never_taken_for_a_knock()
    {
        using PaperLines lines = AtJob();
        lines.To("photo-closed");
        int before = lines.Bench.Job.Log.Count;
        lines.SayAtOnce("go on").SayAtOnce("GO ON");
        Assert.Equal(before + 2, lines.Bench.Job.Log.Count);
    }

    [Fact]
    public void A_question_that_is_left_keeps_what_was_typed()
    {
        using PaperLines lines = AtJob();
        lines.To("let-down").Say("", "yes", ".");
        Assert.Null(lines.Shell.Open);
        Assert.Equal("What you typed is kept; the same question brings it back.", lines.Last[0]);
        lines.Say("");
        Assert.Contains("Enter takes 'yes'.", lines.Last);
    }

    [Fact]
    public void Back_looks_back_and_going_on_returns()
    {
        using PaperLines lines = AtJob();
        lines.To("luminous-look").NewPaper();
        int before = lines.Bench.Job.Log.Count;
        lines.Say("back", "back", "more", "");
        Assert.Equal(before, lines.Bench.Job.Log.Count);
        Snapshot.Verify(lines.Picture);
    }

    [Fact]
    public void A_list_is_told_nine_at_a_time_and_narrowed_by_a_word()
    {
        using PaperLines lines = AtJob();
        lines.To("hear-owner").NewPaper().Say("g", "more", "nothing of the kind", "/", "/endstones", "next", ".");
        Assert.IsType<RunModel>(lines.Shell.Screen);
        Snapshot.Verify(lines.Picture);
        lines.Say("g", "12");
        Assert.IsType<RunModel>(lines.Shell.Screen);
    }

    [Fact]
    public void Keys_and_names_do_the_same()
    {
        using PaperLines lines = AtJob();
        lines.To("hear-owner");
        lines.Say("F4");
        Assert.IsType<BathsModel>(lines.Shell.Screen);
        lines.Say("back").Say("baths");
        Assert.IsType<BathsModel>(lines.Shell.Screen);
        lines.Say("bench");
        Assert.IsType<BoardModel>(lines.Shell.Screen);
        lines.Say("to the marked").Say("p");
        Assert.IsType<Phase.Paused>(lines.Bench.Job.Phase);
        lines.Say("").Say("finding").Say("1").Say("dial").Say("scratched at 4").Say("1").Say("1");
        Assert.Single(lines.Bench.Job.Findings);
        lines.Say("u");
        Assert.Empty(lines.Bench.Job.Findings);
        lines.Say("quit");
        Assert.True(lines.Shell.Done);
    }

    [Fact]
    public void No_entry_is_answered_by_silence()
    {
        using PaperLines lines = AtJob();
        foreach (string entry in new[] { "", "space", "where", "F6", "F8", "F1", "", "down", "g", "down", "Backspace", ".", "v", ".", "more", "clocks", "0", "99", "\t", "→" })
        {
            lines.Say(entry);
            Assert.True(lines.Last.Count > 0, entry);
        }
    }
}
