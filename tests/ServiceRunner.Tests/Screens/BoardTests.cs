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

    [Fact]
    public void A_job_is_booked_in_by_hand()
    {
        using PaperBench bench = new();
        bench.Keys("n");
        Snapshot.Verify(bench.Picture(), "procedures");
        foreach (char c in "17 jewels") bench.Keys(c == ' ' ? "Space" : c.ToString());
        bench.Keys("Enter");
        bench.Type("").Type("Wrist watch, blue dial");
        Assert.Equal("Whose is it?", bench.Shell.Open!.Label);
        bench.Type("M. Halvorsen");
        Assert.Equal("Q26-001", bench.Shell.Open!.Start);
        Snapshot.Verify(bench.Picture(), "number");
        bench.Type("Q26-001");
        Assert.Equal("Q26-001 is booked in.", bench.Shell.Message);
        Assert.Equal("M. Halvorsen", bench.Session.Owners.Find(bench.Job.Owner)!.Name);
    }

    [Fact]
    public void A_number_is_given_once()
    {
        using PaperBench bench = new PaperBench().WithJob("Q26-001");
        bench.Keys("F2", "n", "1").Type("x").Type("").Type("Q26-001");
        Assert.Equal("There is a job Q26-001 already.", bench.Shell.Message);
        Assert.NotNull(bench.Shell.Open);
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
