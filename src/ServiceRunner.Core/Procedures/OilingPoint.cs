using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Core.Procedures;

/// <summary>One place that gets a lubricant, or (<see cref="MustStayDry"/>) must not.</summary>
public sealed record OilingPoint
{
    /// <summary>Its id.</summary>
    public required Placed<string> Id { get; init; }

    /// <summary>The file that it was taken in from, where its places are; empty for the procedure's own file.</summary>
    public string TakenFrom { get; init; } = "";

    /// <summary>What it is called.</summary>
    public required string Name { get; init; }

    /// <summary>Which class of lubricant it wants, from <see cref="Vocabulary.Roles"/>.</summary>
    public required Placed<string> Role { get; init; }

    /// <summary>How much, in words.</summary>
    public string Amount { get; init; } = "";

    /// <summary>Before, with or after which part is fitted; null where it must stay dry.</summary>
    public ServingOrder? When { get; init; }

    /// <summary>Why; needed where it must stay dry.</summary>
    public string Why { get; init; } = "";

    /// <summary>Where on the map, in mm from the top left; null if the procedure has no map.</summary>
    public MapPoint? On { get; init; }

    /// <summary>The role of a place that must stay dry.</summary>
    public const string Never = "never";

    /// <summary>True if nothing may be put there.</summary>
    public bool MustStayDry => Role.Value == Never;
}

/// <summary>When a point is served, against the fitting of a part.</summary>
public sealed record ServingOrder(ServingTime Time, Placed<string> Part);

/// <summary>Before, with or after a part is fitted.</summary>
public enum ServingTime
{
    /// <summary>Before the part is fitted: afterwards nobody can reach it.</summary>
    Before,

    /// <summary>While the part is fitted.</summary>
    With,

    /// <summary>After the part is fitted and tried.</summary>
    After,
}

/// <summary>A place on the map in mm, on the dial side or the train side, each as one looks at it.</summary>
public sealed record MapPoint(decimal X, decimal Y, bool DialSide);
