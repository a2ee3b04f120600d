namespace ServiceRunner.Tests.Screens;

/// <summary>A disk that runs full is told while there is still room, and once for each time.</summary>
public class DiskTests
{
    private const long MiB = 1 << 20;

    private static bool Told(PaperBench bench) => bench.Picture(120, 40).Contains("is nearly full", StringComparison.Ordinal);

    private static PaperBench Seen(PaperBench bench)
    {
        Assert.True(Told(bench));
        return bench.Wait(TimeSpan.FromSeconds(5)).Keys("Down");
    }

    [Fact]
    public void It_is_told_at_opening_and_not_again_while_it_stays_so()
    {
        using PaperBench bench = new() { DiskLeft = 12 * MiB + 5 };
        bench.Wait(TimeSpan.FromSeconds(1));
        string picture = string.Join(' ', bench.Picture(120, 40).Split('\n').Select(l => l.Trim()));
        Assert.Contains($"The disk of {bench.Path} is nearly full: 12 MiB are left. Make room soon; when there is none, nothing more can be written down.", picture, StringComparison.Ordinal);
        Seen(bench);
        bench.DiskLeft = 3 * MiB;
        bench.Wait(TimeSpan.FromMinutes(5));
        Assert.False(Told(bench));
    }

    [Fact]
    public void It_is_told_again_when_there_was_room_in_between()
    {
        using PaperBench bench = new() { DiskLeft = 500 * MiB };
        Assert.False(Told(bench.Wait(TimeSpan.FromSeconds(20))));
        bench.DiskLeft = 63 * MiB;
        Seen(bench.Wait(TimeSpan.FromSeconds(20)));
        foreach (long swinging in new[] { 65, 63, 66, 60 })
        {
            bench.DiskLeft = swinging * MiB;
            Assert.False(Told(bench.Wait(TimeSpan.FromSeconds(20))));
        }
        bench.DiskLeft = 200 * MiB;
        bench.Wait(TimeSpan.FromSeconds(20));
        bench.DiskLeft = 50 * MiB;
        Assert.True(Told(bench.Wait(TimeSpan.FromSeconds(20))));
    }
}
