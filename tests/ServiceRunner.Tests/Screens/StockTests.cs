using ServiceRunner.Core.Benches;
using ServiceRunner.Screens.Stock;
using ServiceRunner.Tests.Shared;

namespace ServiceRunner.Tests.Screens;

/// <summary>The shelf: bottles with their dates, the one in use, the day's temperature.</summary>
public class StockTests
{
    private static PaperBench WithBottles()
    {
        PaperBench bench = new();
        bench.Session.Act(new BenchAction.TakeBatch("light-oil", "L-2207", new DateOnly(2025, 11, 2), null));
        bench.Session.Act(new BenchAction.TakeBatch("heavy-oil", "H-1140", new DateOnly(2024, 3, 20), null));
        bench.Session.Act(new BenchAction.TakeBatch("stone-grease", "S-0318", new DateOnly(2023, 2, 1), new DateOnly(2026, 2, 1)));
        bench.Session.Act(new BenchAction.NoteBottle("light-oil", "L-2311", null, new DateOnly(2029, 6, 30)));
        return bench.Keys("F9");
    }

    [Theory]
    [InlineData(80, 24)]
    [InlineData(120, 40)]
    public void Each_lubricant_with_its_bottles(int width, int height)
    {
        using PaperBench bench = WithBottles();
        Snapshot.Verify(bench.Picture(width, height), $"{width}x{height}");
    }

    [Fact]
    public void A_bottle_is_taken_into_use_and_the_one_before_stays()
    {
        using PaperBench bench = WithBottles();
        bench.Keys("Down", "Down", "Enter");
        Assert.Equal("In use: Light oil, L-2311.", bench.Shell.Message);
        Assert.Equal(["L-2311", "L-2207"], bench.Session.Bench.BottlesOf("light-oil").Select(b => b.Batch));
        Assert.Equal(["L-2311", "L-2207"], bench.Restart().Session.Bench.BottlesOf("light-oil").Select(b => b.Batch));
    }

    [Fact]
    public void A_new_bottle_has_its_batch_and_its_dates()
    {
        using PaperBench bench = WithBottles();
        bench.Keys("n").Type("L-9").Type("3/4/2026");
        Assert.Equal("'3/4/2026' can be read as two days; type 2026-04-03 or 2026-03-04.", bench.Shell.Message);
        bench.Type("1 Apr 2026");
        Assert.Equal("1 Apr 2026 has not come yet; when was it opened?", bench.Shell.Message);
        bench.Type("2026-02-28").Type("Mar 2028");
        Assert.Equal("On the shelf: Light oil, L-9. Enter on its line takes it into use.", bench.Shell.Message);
        Assert.Equal(new Core.Lubricants.Bottle("light-oil", "L-9", new DateOnly(2026, 2, 28), new DateOnly(2028, 3, 31)), bench.Session.Bench.FindBottle("light-oil", "L-9"));
    }

    [Fact]
    public void Dates_are_put_right_and_a_bottle_is_struck_off()
    {
        using PaperBench bench = WithBottles();
        bench.Keys("Down", "d").Type("1 Nov 2025").Type("");
        Assert.Equal("Light oil, L-2207: opened 1 Nov 2025, good until 1 Nov 2027 (from opening).", bench.Shell.Message);
        bench.Keys("x", "1");
        Assert.Equal(2, bench.Session.Bench.BottlesOf("light-oil").Count);
        bench.Keys("x", "2");
        Assert.Equal("Struck off: Light oil, L-2207.", bench.Shell.Message);
        Assert.Equal(["L-2311"], bench.Session.Bench.BottlesOf("light-oil").Select(b => b.Batch));
    }

    [Fact]
    public void Todays_temperature_goes_before_the_usual_one_for_that_day()
    {
        using PaperBench bench = WithBottles();
        bench.Keys("t").Type("hot");
        Assert.Equal("'hot' is not a temperature; type 21 or 21.5.", bench.Shell.Message);
        bench.Type("210");
        Assert.Equal("A bench has between -10 and 50 °C; look at the figure.", bench.Shell.Message);
        bench.Type("26,5");
        Assert.Equal("26.5 °C at the bench today.", bench.Shell.Message);
        Assert.Equal((26.5m, true), ((StockModel)bench.Shell.Screen).Temperature);
        bench.Wait(TimeSpan.FromHours(20));
        Assert.Equal((21m, false), ((StockModel)bench.Shell.Screen).Temperature);
    }
}
