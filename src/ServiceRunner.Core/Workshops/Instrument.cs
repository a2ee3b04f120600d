using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Core.Workshops;

/// <summary>Something that measures.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Name">What the workshop calls it.</param>
/// <param name="Units">The units that it measures in, as procedures write them.</param>
/// <param name="Checked">The day on which it was last checked, or null.</param>
public sealed record Instrument(Placed<string> Id, string Name, IReadOnlyList<Placed<string>> Units, DateOnly? Checked)
{
    /// <summary>True if it measures in this unit.</summary>
    public bool Measures(string unit) => Units.Any(u => u.Value == unit);
}
