using System.Diagnostics;
using System.Globalization;

namespace ServiceRunner.Benchmarks;

/// <summary>
/// What we do and its floor, measured by turns, so that whatever else the machine does meets both. Medians are compared;
/// the ratios of the single rounds say how far they can be trusted.
/// </summary>
internal sealed class Pairs(string ours, string floor, string unit)
{
    private readonly List<List<(double Ours, double Floor)>> _rounds = [];

    /// <summary>Begins a round.</summary>
    public void Begin() => _rounds.Add([]);

    /// <summary>Adds one measurement of each.</summary>
    public void Add(double oursTook, double floorTook) => _rounds[^1].Add((oursTook, floorTook));

    /// <summary>Runs rounds of one measurement each. What prepares a measurement is not in it.</summary>
    public void Run(int rounds, Func<double> oursTakes, Func<double> floorTakes)
    {
        for (int i = 0; i < rounds; i++)
        {
            Begin();
            if (i % 2 == 0) Add(oursTakes(), floorTakes());
            else
            {
                double first = floorTakes();
                Add(oursTakes(), first);
            }
        }
    }

    public double Ours => Median(_rounds.SelectMany(r => r).Select(p => p.Ours));

    public double Floor => Median(_rounds.SelectMany(r => r).Select(p => p.Floor));

    /// <summary>Prints both, the ratio, and whether the target is met.</summary>
    /// <param name="mostRatio">The target: ours is at most so many times the floor.</param>
    /// <param name="most">The target: ours is at most so much.</param>
    public void Print(double? mostRatio = null, double? most = null)
    {
        List<double> ratios = [.. _rounds.Where(r => r.Count > 0).Select(r => Median(r.Select(p => p.Ours)) / Median(r.Select(p => p.Floor)))];
        Line(ours, $"{Figure(Ours)} {unit}");
        Line($"floor: {floor}", $"{Figure(Floor)} {unit}");
        Line("ratio", $"{Figure(Ours / Floor)} (rounds {Figure(ratios.Min())} to {Figure(ratios.Max())}, {ratios.Count} of them)");
        if (mostRatio is { } ratio) Line($"target: ratio at most {Figure(ratio)}", Ours / Floor <= ratio ? "met" : "missed");
        if (most is { } value) Line($"target: at most {Figure(value)} {unit}", Ours <= value ? "met" : "missed");
    }

    /// <summary>One printed line.</summary>
    public static void Line(string what, string value) => Console.WriteLine($"  {what,-58} {value}");

    public static string Figure(double value) => value.ToString(value >= 1000 ? "N0" : value >= 100 ? "0" : value >= 10 ? "0.0" : "0.00", CultureInfo.InvariantCulture);

    public static double Milliseconds(Action action)
    {
        long start = Stopwatch.GetTimestamp();
        action();
        return Stopwatch.GetElapsedTime(start).TotalMilliseconds;
    }

    public static double Median(IEnumerable<double> values) => Share(values, 0.5);

    /// <summary>The value that this share of all stays at or below.</summary>
    public static double Share(IEnumerable<double> values, double share)
    {
        double[] sorted = [.. values.Order()];
        return sorted.Length == 0 ? double.NaN : sorted[Math.Max(0, (int)Math.Ceiling(share * sorted.Length) - 1)];
    }
}
