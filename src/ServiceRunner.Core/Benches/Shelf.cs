using System.Collections.Immutable;
using ServiceRunner.Core.Lubricants;

namespace ServiceRunner.Core.Benches;

/// <summary>The bottles of lubricant at the bench: one in use of each lubricant, and those that stand beside it.</summary>
public static class Shelf
{
    /// <summary>Every bottle, those in use first.</summary>
    public static IReadOnlyList<Bottle> Bottles(this Bench bench) =>
    [
        .. bench.Batches.Values.OrderBy(b => b.Lubricant, StringComparer.Ordinal).Select(b => new Bottle(b.Lubricant, b.Batch, b.OpenedOn, b.GoodUntil)),
        .. bench.OtherBottles.Select(b => new Bottle(b.Lubricant, b.Batch, b.OpenedOn, b.GoodUntil)),
    ];

    /// <summary>The bottles of one lubricant, the one in use first.</summary>
    public static IReadOnlyList<Bottle> BottlesOf(this Bench bench, string lubricant) => [.. bench.Bottles().Where(b => b.Lubricant == lubricant)];

    /// <summary>A bottle, or null.</summary>
    public static Bottle? FindBottle(this Bench bench, string lubricant, string batch) => bench.Bottles().FirstOrDefault(b => b.Lubricant == lubricant && b.Batch == batch);

    /// <summary>True if this bottle is the one in use of its lubricant.</summary>
    public static bool IsInUse(this Bench bench, Bottle bottle) => bench.Batches.GetValueOrDefault(bottle.Lubricant)?.Batch == bottle.Batch;

    /// <summary>The temperature in °C read on this day, or null.</summary>
    public static decimal? CelsiusOn(this Bench bench, DateTimeOffset now) =>
        bench.Temperature is { } read && read.At.ToOffset(now.Offset).Date == now.Date ? read.Celsius : null;

    // What was in use stays on the shelf beside the new one.
    internal static Bench Using(this Bench bench, BenchEvent.BatchTaken taken)
    {
        ImmutableList<BenchEvent.BottleNoted> others = bench.OtherBottles.RemoveAll(b => b.Lubricant == taken.Lubricant && b.Batch == taken.Batch);
        if (bench.Batches.GetValueOrDefault(taken.Lubricant) is { } before && before.Batch != taken.Batch)
            others = others.Add(new BenchEvent.BottleNoted(before.Lubricant, before.Batch, before.OpenedOn, before.GoodUntil));
        return bench with { Batches = bench.Batches.SetItem(taken.Lubricant, taken), OtherBottles = others };
    }

    internal static Bench Noting(this Bench bench, BenchEvent.BottleNoted noted)
    {
        if (bench.Batches.GetValueOrDefault(noted.Lubricant) is { } inUse && inUse.Batch == noted.Batch)
            return bench with { Batches = bench.Batches.SetItem(noted.Lubricant, new BenchEvent.BatchTaken(noted.Lubricant, noted.Batch, noted.OpenedOn, noted.GoodUntil)) };
        return bench with { OtherBottles = bench.OtherBottles.RemoveAll(b => b.Lubricant == noted.Lubricant && b.Batch == noted.Batch).Add(noted) };
    }

    internal static Bench Without(this Bench bench, string lubricant, string batch) => bench with
    {
        Batches = bench.Batches.GetValueOrDefault(lubricant)?.Batch == batch ? bench.Batches.Remove(lubricant) : bench.Batches,
        OtherBottles = bench.OtherBottles.RemoveAll(b => b.Lubricant == lubricant && b.Batch == batch),
    };
}
