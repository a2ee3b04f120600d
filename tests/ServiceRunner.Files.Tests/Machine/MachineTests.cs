using Microsoft.Extensions.Time.Testing;
using ServiceRunner.Core.Quantities;
using ServiceRunner.Files.Machine;

namespace ServiceRunner.Files.Tests.Machine;

public sealed class MachineTests
{
    [Fact]
    public void The_machines_clocks_run_on_together()
    {
        MachineClock clock = new();
        Moment first = clock.Now();
        Thread.Sleep(50);
        Moment then = clock.Now();
        Assert.True(then.SinceBoot - first.SinceBoot >= TimeSpan.FromMilliseconds(45));
        Assert.Equal(first.Boot, then.Boot);
        Assert.InRange(then.Wall - TimeProvider.System.GetUtcNow(), TimeSpan.FromSeconds(-5), TimeSpan.FromSeconds(5));
    }

    [Fact]
    public void On_Linux_it_is_the_kernels_time_since_boot_and_the_kernels_name_of_the_boot()
    {
        if (!OperatingSystem.IsLinux()) return;
        Moment now = new MachineClock().Now();
        double uptime = double.Parse(File.ReadAllText("/proc/uptime").Split(' ')[0], System.Globalization.CultureInfo.InvariantCulture);
        Assert.InRange(now.SinceBoot.TotalSeconds, uptime - 5, uptime + 5);
        Assert.Equal(File.ReadAllText("/proc/sys/kernel/random/boot_id").Trim(), now.Boot);
    }

    [Fact]
    public void A_test_can_steer_both_clocks()
    {
        FakeTimeProvider wall = new(new DateTimeOffset(2026, 11, 24, 12, 0, 0, TimeSpan.Zero));
        TimeSpan since = TimeSpan.FromSeconds(10);
        MachineClock clock = new(wall, () => ("boot-1", since));
        Moment first = clock.Now();
        wall.Advance(TimeSpan.FromHours(1));
        since += TimeSpan.FromMinutes(5);
        Assert.Equal(new Elapsed(TimeSpan.FromMinutes(5), true), first.Until(clock.Now()));
        Assert.Equal(TimeSpan.FromMinutes(55), first.DriftUntil(clock.Now()));
    }

    [Fact]
    public void Ids_sort_by_their_time_and_do_not_repeat()
    {
        DateTimeOffset start = new(2026, 11, 24, 12, 0, 0, TimeSpan.Zero);
        List<string> ids = [.. Enumerable.Range(0, 1000).Select(i => Identity.New(start.AddMilliseconds(i)))];
        Assert.Equal(ids.Order(StringComparer.Ordinal), ids);
        Assert.All(ids, id => Assert.Matches("^[0-7][0-9A-HJKMNP-TV-Z]{25}$", id));
        Assert.Equal(10_000, Enumerable.Range(0, 10_000).Select(_ => Identity.New(start)).Distinct().Count());
    }

    [Fact]
    public void The_time_in_an_id_is_milliseconds_since_1970_in_base_32()
    {
        string id = Identity.New(DateTimeOffset.FromUnixTimeMilliseconds(33));
        Assert.StartsWith("0000000011", id, StringComparison.Ordinal);
        Assert.StartsWith("000000000Z", Identity.New(DateTimeOffset.FromUnixTimeMilliseconds(31)), StringComparison.Ordinal);
    }
}
