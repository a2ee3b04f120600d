using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Core.Procedures;

/// <summary>A challenge. Without choices the answer is free text, but never only "yes".</summary>
public sealed record ConfirmFacet(string Ask, IReadOnlyList<string> Choices);

/// <summary>What a step does to the power of the movement.</summary>
public abstract record PowerFacet
{
    private PowerFacet() { }

    /// <summary>Lets it down.</summary>
    public sealed record LetsDown : PowerFacet;

    /// <summary>Winds.</summary>
    public sealed record Winds : PowerFacet;

    /// <summary>Sets a fusee or stop-work up by so many turns.</summary>
    public sealed record SetUp(decimal Turns) : PowerFacet;
}

/// <summary>Something that takes its time. A step has one at most.</summary>
public abstract record ClockFacet(Place At, IReadOnlyList<Placed<string>> Parts, Window Window)
{
    /// <summary>A stay in a liquid.</summary>
    public sealed record Bath(Place At, IReadOnlyList<Placed<string>> Parts, Window Window, Placed<string> Solution) : ClockFacet(At, Parts, Window)
    {
        /// <summary>The jar that the procedure names; empty where the workshop chooses.</summary>
        public string Jar { get; init; } = "";

        /// <summary>Temperature in °C, if it is warmed.</summary>
        public decimal? Celsius { get; init; }

        /// <summary>True in an ultrasonic tank.</summary>
        public bool Ultrasonic { get; init; }

        /// <summary>How it is moved, in words.</summary>
        public string Agitate { get; init; } = "";
    }

    /// <summary>Spin-off in a machine.</summary>
    public sealed record Spin(Place At, IReadOnlyList<Placed<string>> Parts, Window Window) : ClockFacet(At, Parts, Window);

    /// <summary>Drying, by one of <see cref="Vocabulary.DryingMeans"/>; temperature in °C if heated.</summary>
    public sealed record Dry(Place At, IReadOnlyList<Placed<string>> Parts, Window Window, Placed<string> By, decimal? Celsius) : ClockFacet(At, Parts, Window);

    /// <summary>A wait without a jar: settling, a day's running.</summary>
    public sealed record Wait(Place At, Window Window, string For) : ClockFacet(At, [], Window);
}

/// <summary>Parts brushed, and with what.</summary>
public sealed record BrushFacet(IReadOnlyList<Placed<string>> Parts, string With);

/// <summary>Places pegged out, and with what.</summary>
public sealed record PegFacet(IReadOnlyList<string> Places, string With);

/// <summary>
/// A place to look at and what may be seen there. The first choice is what one hopes for: going on takes it.
/// </summary>
/// <param name="Spot">The place: a part's id, or words.</param>
/// <param name="Choices">What may be seen; at least one.</param>
/// <param name="Part">The part that the place belongs to, or null.</param>
public sealed record ExamineFacet(Placed<string> Spot, IReadOnlyList<Placed<string>> Choices, Placed<string>? Part);

/// <summary>What a finding may bring in. An empty spot means any place of the step.</summary>
public sealed record IfFound(string Spot, Placed<string> Choice, Placed<string> Procedure);

/// <summary>Parts that get a barrier film.</summary>
public sealed record CoatFacet(IReadOnlyList<Placed<string>> Parts, string With);

/// <summary>Something to measure, as a number in a unit, or as felt. The first felt choice is what one hopes for.</summary>
/// <param name="What">What is measured.</param>
/// <param name="Unit">The unit as written; empty if it is only felt.</param>
/// <param name="AtLeast">Lower limit in that unit, or null.</param>
/// <param name="AtMost">Upper limit in that unit, or null.</param>
/// <param name="OrFelt">Felt choices; empty if only a number will do.</param>
public sealed record MeasureFacet(Placed<string> What, string Unit, decimal? AtLeast, decimal? AtMost, IReadOnlyList<string> OrFelt)
{
    /// <summary>True if the value is within the limits.</summary>
    public bool Accepts(decimal value) => !(value < AtLeast) && !(value > AtMost);
}

/// <summary>Something to count.</summary>
public sealed record CountFacet(Placed<string> What, string Unit, decimal? AtLeast, decimal? AtMost)
{
    /// <summary>True if the count is as expected.</summary>
    public bool Accepts(decimal value) => !(value < AtLeast) && !(value > AtMost);
}

/// <summary>Rates taken in positions, some hours after winding.</summary>
public sealed record RatesFacet
{
    /// <summary>Positions from <see cref="Vocabulary.Positions"/>.</summary>
    public required IReadOnlyList<Placed<string>> Positions { get; init; }

    /// <summary>How long to let it settle in each position.</summary>
    public TimeSpan? Settle { get; init; }

    /// <summary>Hours after winding at which they are taken; empty means once.</summary>
    public IReadOnlyList<decimal> AfterHours { get; init; } = [];

    /// <summary>Lift angle in degrees, or null where it is not known.</summary>
    public decimal? LiftAngle { get; init; }

    /// <summary>Lowest and highest mean daily rate in s/d, or null.</summary>
    public (decimal Low, decimal High)? Mean { get; init; }

    /// <summary>Greatest difference between positions in s/d, or null.</summary>
    public decimal? GreatestDifference { get; init; }

    /// <summary>Lowest and highest amplitude in degrees, or null.</summary>
    public (decimal Low, decimal High)? Amplitude { get; init; }
}
