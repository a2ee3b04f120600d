namespace ServiceRunner.Core.Quantities;

/// <summary>
/// How long something should last: not less than <see cref="Least"/>, best about <see cref="Aim"/>, not more than
/// <see cref="Most"/>. A missing most means that longer does no harm.
/// </summary>
public sealed record Window(TimeSpan Least, TimeSpan Aim, TimeSpan? Most)
{
    /// <summary>Where a length stands in the window.</summary>
    public Standing Of(TimeSpan length) =>
        length < Least ? Standing.Under
        : Most is { } most && length > most ? Standing.Over
        : length < Aim ? Standing.Within
        : Standing.AtAim;
}

/// <summary>Where a soak stands in its <see cref="Window"/>.</summary>
public enum Standing
{
    /// <summary>Shorter than the least.</summary>
    Under,

    /// <summary>The least is reached, the aim is not.</summary>
    Within,

    /// <summary>The aim is reached, the most is not passed.</summary>
    AtAim,

    /// <summary>The most is passed.</summary>
    Over,
}
