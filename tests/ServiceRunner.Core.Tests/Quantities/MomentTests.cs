using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Core.Tests.Quantities;

/// <summary>Time that can be trusted: within one boot by the time since boot, whatever the wall clock does.</summary>
public class MomentTests
{
    private static Moment At(string wall, string boot, double minutesSinceBoot) =>
        new(DateTimeOffset.Parse(wall, System.Globalization.CultureInfo.InvariantCulture), boot, TimeSpan.FromMinutes(minutesSinceBoot));

    [Theory]
    [InlineData("2026-03-29T01:58:00+01:00", "2026-03-29T03:03:00+02:00")] // summer time begins
    [InlineData("2026-10-25T02:58:00+02:00", "2026-10-25T02:03:00+01:00")] // and ends
    [InlineData("2026-12-31T23:58:00+01:00", "2027-01-01T00:03:00+01:00")] // New Year
    [InlineData("2028-02-28T23:58:00+01:00", "2028-02-29T00:03:00+01:00")] // a leap day
    public void Midnight_summer_time_and_New_Year_are_no_fault_and_change_no_length(string from, string to)
    {
        Moment start = At(from, "b", 100), end = At(to, "b", 105);
        Assert.Equal(new Elapsed(TimeSpan.FromMinutes(5), true), start.Until(end));
        Assert.Equal(TimeSpan.Zero, start.DriftUntil(end));
        Assert.Equal(TimeSpan.FromMinutes(5), start.Until(end with { Boot = "c", SinceBoot = TimeSpan.FromMinutes(1) }).Length);
    }

    [Fact]
    public void A_clock_set_back_changes_no_length_within_a_boot_and_is_a_drift()
    {
        Moment start = At("2026-03-02T09:00:00Z", "b", 100), end = At("2026-03-02T08:05:00Z", "b", 105);
        Assert.Equal(new Elapsed(TimeSpan.FromMinutes(5), true), start.Until(end));
        Assert.Equal(TimeSpan.FromHours(-1), start.DriftUntil(end));
    }

    [Fact]
    public void A_machine_that_slept_counts_the_sleep()
    {
        // The time since boot runs through suspend: 100 min, then eight hours asleep.
        Assert.Equal(TimeSpan.FromHours(8), At("2026-03-02T00:00:00Z", "b", 100).Until(At("2026-03-02T08:00:00Z", "b", 580)).Length);
    }

    [Fact]
    public void Without_a_boot_nothing_is_certain()
    {
        Assert.False(At("2026-03-02T09:00:00Z", "", 1).Until(At("2026-03-02T09:05:00Z", "", 6)).Certain);
        Assert.Equal(TimeSpan.Zero, At("2026-03-02T09:00:00Z", "b", 1).DriftUntil(At("2026-03-02T19:05:00Z", "c", 6)));
    }
}
