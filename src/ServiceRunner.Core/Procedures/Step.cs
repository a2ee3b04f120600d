using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Core.Procedures;

/// <summary>One small act with its facets. A facet that a step does not have is null or empty.</summary>
public sealed record Step
{
    /// <summary>Its id; <c>wash/rinse-1</c> for a step taken in as <c>wash</c>.</summary>
    public required Placed<string> Id { get; init; }

    /// <summary>The file that it was taken in from, where its places are; empty for the procedure's own file.</summary>
    public string TakenFrom { get; init; } = "";

    /// <summary>One short imperative.</summary>
    public required string Do { get; init; }

    /// <summary>How it is done well.</summary>
    public string How { get; init; } = "";

    /// <summary>What goes wrong otherwise.</summary>
    public string Why { get; init; } = "";

    /// <summary>Hands-on time, or null.</summary>
    public TimeSpan? Takes { get; init; }

    /// <summary>True if the hands can do something else while the step's clock runs.</summary>
    public bool HandsFree { get; init; }

    /// <summary>Steps that come first.</summary>
    public IReadOnlyList<Placed<string>> After { get; init; } = [];

    /// <summary>Caution codes, from <see cref="Vocabulary.Cautions"/>; shown before the act.</summary>
    public IReadOnlyList<Placed<string>> Cautions { get; init; } = [];

    /// <summary>A challenge that wants a value or a state.</summary>
    public ConfirmFacet? Confirm { get; init; }

    /// <summary>What the step does to the power.</summary>
    public PowerFacet? Power { get; init; }

    /// <summary>Parts taken off.</summary>
    public IReadOnlyList<Placed<string>> Removes { get; init; } = [];

    /// <summary>Parts tried dry.</summary>
    public IReadOnlyList<Placed<string>> Tries { get; init; } = [];

    /// <summary>Parts fitted for good.</summary>
    public IReadOnlyList<Placed<string>> Fits { get; init; } = [];

    /// <summary>Parts that a new one replaces.</summary>
    public IReadOnlyList<Placed<string>> Replaces { get; init; } = [];

    /// <summary>The step's clock: a bath, a spin-off, a drying or a wait.</summary>
    public ClockFacet? Clock { get; init; }

    /// <summary>Parts brushed.</summary>
    public BrushFacet? Brush { get; init; }

    /// <summary>Places pegged out.</summary>
    public PegFacet? Peg { get; init; }

    /// <summary>Places looked at, each with what may be seen there.</summary>
    public IReadOnlyList<ExamineFacet> Examine { get; init; } = [];

    /// <summary>What a finding may bring in.</summary>
    public IReadOnlyList<IfFound> IfFound { get; init; } = [];

    /// <summary>Parts that get a barrier film.</summary>
    public CoatFacet? Coat { get; init; }

    /// <summary>Oiling points served, in this order.</summary>
    public IReadOnlyList<Placed<string>> Oil { get; init; } = [];

    /// <summary>Points that must stay dry and are looked at together here.</summary>
    public IReadOnlyList<Placed<string>> StaysDry { get; init; } = [];

    /// <summary>What is measured.</summary>
    public IReadOnlyList<MeasureFacet> Measure { get; init; } = [];

    /// <summary>What is counted.</summary>
    public CountFacet? Count { get; init; }

    /// <summary>True if something is demagnetised.</summary>
    public bool Demagnetise { get; init; }

    /// <summary>Rates taken in positions.</summary>
    public RatesFacet? Rates { get; init; }

    /// <summary>What a picture must show; empty if none is asked for.</summary>
    public string Photo { get; init; } = "";

    /// <summary>What is to be estimated; empty if nothing.</summary>
    public string Estimate { get; init; } = "";

    /// <summary>What the owner is asked; empty if nothing.</summary>
    public string Consent { get; init; } = "";

    /// <summary>What a second person looks at; empty if nobody is asked.</summary>
    public string Witness { get; init; } = "";

    /// <summary>Tools, jars, machines.</summary>
    public IReadOnlyList<Placed<string>> Uses { get; init; } = [];

    /// <summary>Facts of the job that must hold for this step to be in it.</summary>
    public IReadOnlyList<Condition> OnlyIf { get; init; } = [];
}

/// <summary>A fact of the job and the answers with which a step is in the job.</summary>
public sealed record Condition(Placed<string> Fact, IReadOnlyList<string> Answers);
