using ServiceRunner.Files.Machine;

namespace ServiceRunner.Demo;

/// <summary>A clock that the making of the invented workshop moves by hand, and that ends at the present.</summary>
internal sealed class DemoTime : TimeProvider
{
    private readonly DateTimeOffset _present;
    private readonly TimeSpan _presentSinceBoot;
    private readonly string _boot;

    public DemoTime(MachineClock machine)
    {
        Core.Quantities.Moment now = machine.Now();
        (_present, _presentSinceBoot, _boot) = (now.Wall, now.SinceBoot, now.Boot);
        Now = _present;
    }

    /// <summary>What the clock shows.</summary>
    public DateTimeOffset Now { get; set; }

    /// <summary>The present, as it was when the making began.</summary>
    public DateTimeOffset Present => _present;

    public override DateTimeOffset GetUtcNow() => Now.ToUniversalTime();

    public override TimeZoneInfo LocalTimeZone => System.LocalTimeZone;

    /// <summary>A machine that shows this time. What lies before this machine's boot belongs to an earlier one.</summary>
    public MachineClock Clock => new(this, () =>
        _presentSinceBoot - (_present - Now) is { Ticks: >= 0 } since ? (_boot, since) : ("an earlier boot", TimeSpan.FromHours(1) + (Now - _present.AddYears(-1))));
}
