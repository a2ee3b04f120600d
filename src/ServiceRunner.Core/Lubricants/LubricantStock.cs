namespace ServiceRunner.Core.Lubricants;

/// <summary>What a decision at an oiling point needs to know of the shelf today.</summary>
public sealed record LubricantStock
{
    /// <summary>An empty shelf.</summary>
    public static readonly LubricantStock None = new();

    /// <summary>Every bottle that stands on the shelf, in use or not.</summary>
    public IReadOnlyCollection<Bottle> Bottles { get; init; } = [];

    /// <summary>The temperature in °C measured at the bench today, or null.</summary>
    public decimal? CelsiusToday { get; init; }

    /// <summary>The lubricant chosen for a role in this session.</summary>
    public IReadOnlyDictionary<string, string> Chosen { get; init; } = new Dictionary<string, string>();

    /// <summary>A bottle, or null.</summary>
    public Bottle? Find(string lubricant, string batch) => Bottles.FirstOrDefault(b => b.Lubricant == lubricant && b.Batch == batch);
}
