namespace ServiceRunner.Core.Quantities;

/// <summary>A place in a text file: line and column, both from 1. The default, 0:0, means "no place".</summary>
public readonly record struct Place(int Line, int Column)
{
    /// <inheritdoc/>
    public override string ToString() => $"{Line}:{Column}";
}

/// <summary>A value and where it stands in its file, so that a complaint can name the place.</summary>
/// <param name="Value">The value.</param>
/// <param name="At">Where it was written.</param>
public readonly record struct Placed<T>(T Value, Place At)
{
    /// <summary>The value alone.</summary>
    public static implicit operator T(Placed<T> placed) => placed.Value;

    /// <inheritdoc/>
    public override string ToString() => Value?.ToString() ?? "";
}
