using System.Text;
using ServiceRunner.Core.Jobs;
using ServiceRunner.Core.Quantities;
using ServiceRunner.Screens;
using ServiceRunner.Screens.Large;
using ServiceRunner.Screens.Run;
using ServiceRunner.Tests.Shared;

namespace ServiceRunner.Tests.Screens.Large;

/// <summary>A step as it is read from two metres.</summary>
public class LargePageTests
{
    public static TheoryData<string, int, int> Steps()
    {
        TheoryData<string, int, int> data = [];
        foreach (string step in new[] { "let-down", "see-train", "oil-train-side", "photo-closed", "luminous-look" })
            foreach ((int width, int height) in new[] { (80, 24), (120, 40), (200, 60) })
                data.Add(step, width, height);
        return data;
    }

    [Theory]
    [MemberData(nameof(Steps))]
    public void A_step(string step, int width, int height)
    {
        using PaperBench bench = new PaperBench().WithJob().To(step);
        Snapshot.Verify(Picture(bench, width, height), $"{step}.{width}x{height}");
    }

    public static TheoryData<int, int> Sizes() => new() { { 80, 24 }, { 120, 40 }, { 200, 60 } };

    [Theory]
    [MemberData(nameof(Sizes))]
    public void A_clock_runs_in_big_figures_below_what_is_at_hand(int width, int height)
    {
        using PaperBench bench = new PaperBench().WithJob().To("wash/degrease").Keys("Enter").Wait(TimeSpan.FromSeconds(95));
        Assert.Single(bench.Job.RunningSoaks);
        Snapshot.Verify(Picture(bench, width, height), $"{width}x{height}");
    }

    [Theory]
    [MemberData(nameof(Sizes))]
    public void A_clock_that_is_due_is_the_act(int width, int height)
    {
        using PaperBench bench = new PaperBench().WithJob().To("wash/degrease").Keys("Enter");
        bench.Wait(bench.Job.RunningSoaks.Single().Window.Aim + TimeSpan.FromSeconds(1));
        Assert.IsType<Offer.End>(bench.Run.Offer);
        Snapshot.Verify(Picture(bench, width, height), $"{width}x{height}");
    }

    [Fact]
    public void Of_three_clocks_the_two_most_urgent_are_big()
    {
        using PaperBench bench = new();
        bench.WithJob("Q26-001").To("wash/wash").Keys("Enter");
        bench.WithJob("Q26-002").To("wash/degrease").Keys("Enter", "Enter");
        bench.Wait(TimeSpan.FromMinutes(6));
        Moment now = bench.Session.Now;
        List<Soak> clocks = [.. LargeClocks.ByUrgency(bench.Shell).Select(c => c.Soak)];
        Assert.Equal([Standing.Over, Standing.Over, Standing.AtAim], clocks.Select(c => c.Standing(now)));
        Assert.True(clocks[0].Length(now).Length - clocks[0].Window.Aim > clocks[1].Length(now).Length - clocks[1].Window.Aim);
        Snapshot.Verify(Picture(bench, 120, 40));
    }

    [Fact]
    public void A_job_that_is_booked_in() => Phase_in_large(b => b, "booked-in");

    [Fact]
    public void A_job_that_was_interrupted() => Phase_in_large(b => b.To("open-back").Keys("p"), "interrupted");

    [Fact]
    public void A_job_that_waits() => Phase_in_large(b => b.To("open-back").Keys("h", "2").Type("a fourth wheel, ordered").Type("").Type("power off, covered"), "waits");

    [Fact]
    public void A_job_with_every_step_settled() => Phase_in_large(b => b.ToEnd(), "settled");

    [Fact]
    public void Looking_back_shows_no_caution_and_says_so() => Phase_in_large(b => b.To("luminous-look").Keys("PageUp"), "back");

    private static void Phase_in_large(Func<PaperBench, PaperBench> go, string name)
    {
        using PaperBench bench = new();
        go(bench.WithJob());
        Snapshot.Verify(Picture(bench, 80, 24), name, test: nameof(Phase_in_large));
    }

    [Fact]
    public void A_step_out_of_order_says_before_it_what_speaks_against_it()
    {
        using PaperBench bench = new PaperBench().WithJob().To("hear-owner").Keys("g");
        foreach (char c in "lift the hands") bench.Keys(c == ' ' ? "Space" : c.ToString());
        Snapshot.Verify(Picture(bench.Keys("Enter"), 80, 24));
    }

    [Theory]
    [InlineData(59, 30)]
    [InlineData(100, 17)]
    public void Where_large_letters_say_too_little_the_page_is_as_always(int width, int height)
    {
        using PaperBench bench = new PaperBench().WithJob().To("let-down");
        Sheet asAlways = new(width, height);
        RunPage.Draw(asAlways, 1, height - 4, bench.Run, bench.Shell);
        Assert.Equal(asAlways.ToString(), Draw(bench, width, height).ToString());
    }

    [Theory]
    [InlineData(60, 18)]
    [InlineData(80, 24)]
    [InlineData(120, 40)]
    [InlineData(200, 60)]
    public void Every_step_of_the_service_says_its_caution_then_its_act_and_stays_in_its_rows(int width, int height)
    {
        using PaperBench bench = new PaperBench().WithJob();
        bench.Keys("Enter");
        int seen = 0;
        for (int i = 0; NextFrom(bench, i) is { } next; i = next.Index + 1)
        {
            bench.To(next.Step.Id.Value);
            Sheet sheet = Draw(bench, width, height);
            Assert.Equal("", sheet.Row(0));
            for (int y = height - 3; y < height; y++) Assert.Equal("", sheet.Row(y));
            if (bench.Run.Offer is not (Offer.Do or Offer.Answer or Offer.Begin)) continue;
            int act = RowOf(sheet, next.Step.Do);
            Assert.True(act > 0, $"'{next.Step.Do}' is not on the sheet:\n{sheet}");
            if (next.Step.Cautions.Count > 0) Assert.InRange(sheet.ToString().Split('\n').ToList().FindIndex(r => r.Contains('▲', StringComparison.Ordinal)), 1, act - 1);
            seen++;
        }
        Assert.True(seen > 60, $"only {seen} steps were seen");
    }

    // A step that is known to be in the job and not done; those that depend on a fact come up once it is answered.
    private static PlannedStep? NextFrom(PaperBench bench, int index) => bench.Run.Job.Plan.Steps
        .FirstOrDefault(s => s.Index >= index && s.BelongsTo(bench.Job) == Belonging.Yes && !bench.Job.IsSettled(s.Key) && !bench.Job.Soaks.ContainsKey(bench.Job.At(s.Key)));

    // Where an act begins, in one of the sizes; -1 if a line of it is missing.
    private static int RowOf(Sheet sheet, string act)
    {
        foreach (LetterSize size in Enum.GetValues<LetterSize>())
            if (Found(sheet, [.. LargeLetters.Wrap(act, sheet.Width - 4, size).Select(l => LargeLetters.RowsOf(l, size))]) is > 0 and int row)
                return row;
        return Found(sheet, [.. Paragraph.Wrap(act, sheet.Width - 4).Select(l => new[] { l })]);
    }

    private static int Found(Sheet sheet, IReadOnlyList<IReadOnlyList<string>> lines)
    {
        int y = 0, first = -1;
        foreach (IReadOnlyList<string> line in lines)
        {
            while (y < sheet.Height && !line.Select((row, i) => (row, i)).All(r => y + r.i < sheet.Height && sheet.Row(y + r.i) == ("  " + r.row).TrimEnd())) y++;
            if (y >= sheet.Height) return -1;
            if (first < 0) first = y;
            y += line.Count;
        }
        return first;
    }

    private static Sheet Draw(PaperBench bench, int width, int height)
    {
        Sheet sheet = new(width, height);
        LargePage.Draw(sheet, 1, height - 4, bench.Run, bench.Shell);
        return sheet;
    }

    private static string Picture(PaperBench bench, int width, int height)
    {
        Sheet sheet = Draw(bench, width, height);
        StringBuilder text = new(sheet.ToString());
        text.Append('\n').Append(new string('─', width)).Append('\n');
        foreach (Ink ink in new[] { Ink.Caution, Ink.Alarm, Ink.Good, Ink.Title })
        {
            int rows = Enumerable.Range(0, height).Count(y => Enumerable.Range(0, width).Any(x => sheet[x, y].Ink == ink));
            if (rows > 0) text.Append($"{ink}: on {rows} rows\n");
        }
        return text.ToString();
    }
}
