using ServiceRunner.Tests.Shared;

namespace ServiceRunner.Tests.Screens;

public class BoardTests
{
    [Theory]
    [InlineData(80, 24)]
    [InlineData(120, 40)]
    public void The_board_says_what_each_job_waits_for(int width, int height)
    {
        using PaperBench bench = new PaperBench().WithJob("Q26-001").To("open-back").Keys("h", "1");
        bench.Type("the estimate").Type("closed, in its bag").Keys("Esc");
        bench.WithJob("Q26-002").To("photo-closed").Keys("F2");
        bench.WithJob("Q26-003").Keys("F2");
        Snapshot.Verify(bench.Picture(width, height), $"{width}x{height}");
    }

    [Theory]
    [InlineData(80, 24)]
    [InlineData(120, 40)]
    public void A_job_that_waits_for_a_day_shows_it_and_is_marked_when_it_has_come(int width, int height)
    {
        using PaperBench bench = new PaperBench().WithJob("Q26-001").To("open-back").Keys("h", "3");
        bench.Type("the owner is away").Type("12 March").Type("closed, in its bag").Keys("Esc");
        bench.WithJob("Q26-002").To("open-back").Keys("h", "2");
        bench.Type("a crown, ordered").Type("+1 week").Type("closed, in its bag").Keys("Esc");
        Snapshot.Verify(bench.Picture(width, height), $"{width}x{height}");
        bench.Wait(TimeSpan.FromDays(7));
        Snapshot.Verify(bench.Picture(width, height), $"{width}x{height}.due");
    }

    [Fact]
    public void Searching_finds_by_owner_and_number()
    {
        using PaperBench bench = new PaperBench().WithJob("Q26-001");
        bench.Keys("F2").WithJob("Q26-002").Keys("F2", "/").Type("-002");
        Assert.Equal("Q26-002", bench.Shell.Board.Rows.Single().Number);
        bench.Keys("Esc");
        Assert.Equal(2, bench.Shell.Board.Rows.Count);
    }

    [Theory]
    [InlineData(80, 24)]
    [InlineData(120, 40)]
    public void Promised_days_are_shown_and_those_near_or_past_are_marked(int width, int height)
    {
        using PaperBench bench = new();
        foreach (int days in new[] { 0, 1, 2, 14, 400 })
            bench.WithJob($"Q26-0{days}", promised: days).Keys("F2");
        bench.WithJob("Q26-9").Keys("F2").Wait(TimeSpan.FromDays(1));
        Snapshot.Verify(bench.Picture(width, height), $"{width}x{height}");
    }

    [Fact]
    public void Where_rows_are_short_a_promised_day_is_said_in_two_words()
    {
        using PaperBench bench = new();
        for (int i = 0; i < 12; i++) bench.WithJob($"Q26-{i:000}", promised: i / 2).Keys("F2");
        bench.WithJob("Q26-100").To("open-back").Keys("h", "1").Type("the estimate").Type("covered").Keys("F2");
        Snapshot.Verify(bench.Wait(TimeSpan.FromDays(2)).Picture());
    }

    [Fact]
    public void The_archive_is_reached_with_one_key_and_a_finished_job_opens_to_be_read()
    {
        using PaperBench bench = new PaperBench().WithJob("Q26-001", serial: "204 417").To("hear-owner").Keys("x", "1").Type("no part to be had");
        bench.Keys("F2").Wait(TimeSpan.FromDays(400));
        bench.WithJob("Q27-001").Keys("F2");
        Assert.Equal(["Q27-001"], bench.Shell.Board.Rows.Select(r => r.Number));
        bench.Keys("/").Type("204");
        Assert.Empty(bench.Shell.Board.Rows);
        Assert.Contains("Nothing here contains '204'; y looks through all years.", bench.Picture(), StringComparison.Ordinal);
        bench.Keys("y");
        Assert.Equal(["Q26-001"], bench.Shell.Board.Rows.Select(r => r.Number));
        Snapshot.Verify(bench.Picture());
        bench.Keys("Enter");
        Assert.Equal("Q26-001", bench.Job.Number);
        Assert.Contains("Returned unrepaired", bench.Picture(), StringComparison.Ordinal);
        bench.Keys("F2", "Esc");
        Assert.Equal(["Q27-001", "Q26-001"], bench.Shell.Board.Rows.Select(r => r.Number));
        bench.Keys("Esc");
        Assert.Equal(["Q27-001"], bench.Shell.Board.Rows.Select(r => r.Number));
    }

    [Fact]
    public void Searching_finds_by_the_batch_of_a_lubricant()
    {
        using PaperBench bench = new PaperBench().WithJob("Q26-001").To("oil-train-side");
        bench.Keys("b").Type("H-1140").Type("1 Feb 2026").Type("").Keys("Enter", "F2");
        bench.WithJob("Q26-002").Keys("F2", "/").Type("h-1140");
        Assert.Equal("Q26-001", bench.Shell.Board.Rows.Single().Number);
    }

    [Fact]
    public void Nobody_signed_in_books_nothing()
    {
        using PaperBench bench = new();
        bench.Session.Act(new ServiceRunner.Core.Benches.BenchAction.SignOut("IV"));
        bench.Keys("n");
        Assert.Equal("Nobody is signed in: press i first.", bench.Shell.Message);
        bench.Keys("i", "2");
        Assert.Equal("TB", bench.Session.Bench.Repairer);
    }

    [Fact]
    public void The_help_page_says_of_each_key_whether_it_can_be_used_now()
    {
        using PaperBench bench = new PaperBench().WithJob().To("let-down").Keys("F1");
        Snapshot.Verify(bench.Picture(100, 40));
    }
}
