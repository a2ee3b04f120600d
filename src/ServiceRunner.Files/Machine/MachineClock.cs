using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Files.Machine;

/// <summary>This machine's moment: its wall clock, and the clock since its boot that nobody can set.</summary>
/// <param name="wall">The wall clock; null for the machine's own.</param>
/// <param name="boot">Boot and time since it; null for the machine's own.</param>
public sealed class MachineClock(TimeProvider? wall = null, Func<(string Boot, TimeSpan SinceBoot)>? boot = null)
{
    private readonly TimeProvider _wall = wall ?? TimeProvider.System;
    private readonly Func<(string Boot, TimeSpan SinceBoot)> _boot = boot ?? OfThisMachine;

    public Moment Now()
    {
        (string boot, TimeSpan since) = _boot();
        return new Moment(_wall.GetLocalNow(), boot, since);
    }

    private static readonly string ThisBoot = Kernel.Boot();

    /// <summary>Without a clock through sleep the boot stays unnamed, so that no length is called certain that is not.</summary>
    private static (string Boot, TimeSpan SinceBoot) OfThisMachine() =>
        Kernel.SinceBoot() is { } since ? (ThisBoot, since) : ("", TimeSpan.Zero);
}
