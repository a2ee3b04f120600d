using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Core.Workshops;

/// <summary>
/// What stands in the workshop and how it likes to work, read from a file that people write and the program never
/// does. Procedures name classes (a solution, a role); the workshop says what stands on its shelf. See docs/workshop-file.md.
/// </summary>
public sealed record Workshop
{
    /// <summary>Its id.</summary>
    public required Placed<string> Id { get; init; }

    /// <summary>Its name, as on a report.</summary>
    public required string Name { get; init; }

    /// <summary>Who works there.</summary>
    public required IReadOnlyList<Person> People { get; init; }

    /// <summary>The room, or null if not described.</summary>
    public Room? Room { get; init; }

    /// <summary>Liquids on the shelf.</summary>
    public IReadOnlyList<Liquid> Liquids { get; init; } = [];

    /// <summary>Jars, and the jars of machines and tanks.</summary>
    public IReadOnlyList<Jar> Jars { get; init; } = [];

    /// <summary>Cleaning machines, ultrasonic tanks, dryers.</summary>
    public IReadOnlyList<Machine> Machines { get; init; } = [];

    /// <summary>Lubricants on the shelf.</summary>
    public IReadOnlyList<Lubricant> Lubricants { get; init; } = [];

    /// <summary>What measures.</summary>
    public IReadOnlyList<Instrument> Instruments { get; init; } = [];

    /// <summary>Keys that the pedal's switches send.</summary>
    public Pedal Pedal { get; init; } = new();

    /// <summary>Sound and speech.</summary>
    public Voice Voice { get; init; } = new();

    /// <summary>Deviations that ask for a reason, by their names. The others are written down without a question.</summary>
    public IReadOnlyList<Placed<string>> ReasonsFor { get; init; } = [];

    /// <summary>Whether a second person looks where a procedure asks for one.</summary>
    public WitnessWish Witness { get; init; }

    /// <summary>True if nobody can look but the one who works: going on then leaves a witness out, unless one is wanted.</summary>
    public bool WorksAlone => Witness == WitnessWish.Optional && People.Count <= 1;

    /// <summary>The workshop's answers where a procedure leaves the choice to it: fact → answer.</summary>
    public IReadOnlyDictionary<string, string> Prefers { get; init; } = new Dictionary<string, string>();

    /// <summary>What the workshop's job numbers begin with.</summary>
    public string NumberPrefix { get; init; } = "";

    /// <summary>What stands behind a sum of money, as on a receipt; empty: figures stand alone.</summary>
    public string Currency { get; init; } = "";
}

/// <summary>Somebody who works in the workshop, known in the log by the initials.</summary>
public sealed record Person(Placed<string> Initials, string Name, bool Reviews);

/// <summary>The room: volume in m³, air changes per hour, usual temperature in °C; null where not known.</summary>
public sealed record Room(decimal? CubicMetres, decimal? AirChangesPerHour, decimal? Celsius);

/// <summary>A liquid on the shelf.</summary>
public sealed record Liquid
{
    /// <summary>Its id.</summary>
    public required Placed<string> Id { get; init; }

    /// <summary>What is written on the bottle.</summary>
    public required string Name { get; init; }

    /// <summary>The class that procedures name.</summary>
    public required Placed<string> Solution { get; init; }

    /// <summary>What is in it, by substance and share by volume in per cent.</summary>
    public IReadOnlyList<Share> Contains { get; init; } = [];

    /// <summary>GHS hazard statements by code, from its safety data sheet.</summary>
    public IReadOnlyList<Placed<string>> Hazards { get; init; } = [];

    /// <summary>True if it can burn at the bench.</summary>
    public bool Flammable { get; init; }

    /// <summary>True if there is water in it.</summary>
    public bool Water { get; init; }
}

/// <summary>A substance and its share by volume in per cent.</summary>
public sealed record Share(Placed<string> Substance, decimal Percent);

/// <summary>A vessel.</summary>
public sealed record Jar
{
    /// <summary>Its id.</summary>
    public required Placed<string> Id { get; init; }

    /// <summary>What is written on it.</summary>
    public required string Name { get; init; }

    /// <summary>The liquid that it holds.</summary>
    public required Placed<string> Holds { get; init; }

    /// <summary>Contents in mL, or null.</summary>
    public decimal? Millilitres { get; init; }

    /// <summary>Opening in mm, or null.</summary>
    public decimal? OpeningMillimetres { get; init; }

    /// <summary>How many baskets it is good for, or null.</summary>
    public int? LifeBaskets { get; init; }

    /// <summary>How many days it is good for, or null.</summary>
    public int? LifeDays { get; init; }
}

/// <summary>A cleaning machine, a tank, a dryer.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Name">Its name.</param>
/// <param name="Kind">One of <see cref="Machine.Kinds"/>.</param>
/// <param name="Jars">Jars that belong to it.</param>
/// <param name="Heated">True if it heats.</param>
/// <param name="RatedForFlammables">True only if its maker states so.</param>
public sealed record Machine(Placed<string> Id, string Name, Placed<string> Kind, IReadOnlyList<Placed<string>> Jars, bool Heated, bool RatedForFlammables)
{
    /// <summary>Kinds of machine.</summary>
    public static readonly IReadOnlyList<string> Kinds = ["rotating", "ultrasonic", "dryer"];
}

/// <summary>A class of oil or grease on the shelf.</summary>
public sealed record Lubricant
{
    /// <summary>Its id.</summary>
    public required Placed<string> Id { get; init; }

    /// <summary>What the workshop calls it.</summary>
    public required string Name { get; init; }

    /// <summary>What it is used for.</summary>
    public required IReadOnlyList<Placed<string>> Roles { get; init; }

    /// <summary>ISO 3448 grade (mm²/s at 40 °C), or null.</summary>
    public int? IsoGrade { get; init; }

    /// <summary>Kinematic viscosity in mm²/s at a stated temperature, or null.</summary>
    public ViscosityAt? Viscosity { get; init; }

    /// <summary>A second viscosity at another temperature, or null: with two, that at any other can be computed.</summary>
    public ViscosityAt? SecondViscosity { get; init; }

    /// <summary>Viscosity index by ASTM D2270, or null: it stands for a second point.</summary>
    public decimal? ViscosityIndex { get; init; }

    /// <summary>True for a grease.</summary>
    public bool Grease { get; init; }

    /// <summary>How many days an opened bottle is good for, or null.</summary>
    public int? GoodForDays { get; init; }
}

/// <summary>Kinematic viscosity in mm²/s at a temperature in °C.</summary>
public sealed record ViscosityAt(decimal SquareMillimetresPerSecond, decimal Celsius);

/// <summary>Keys that the pedal's switches send, by the names of docs/keys.md.</summary>
public sealed record Pedal
{
    /// <summary>Keys that go on.</summary>
    public IReadOnlyList<Placed<string>> GoOn { get; init; } = [new("PageDown", default), new("Enter", default)];

    /// <summary>Keys that look back.</summary>
    public IReadOnlyList<Placed<string>> Back { get; init; } = [new("PageUp", default)];

    /// <summary>Keys of a third switch: say again.</summary>
    public IReadOnlyList<Placed<string>> Third { get; init; } = [new("F13", default)];

    /// <summary>How long after a going-on key another one is taken for the same press held or knocked, in milliseconds.</summary>
    public int DeadMilliseconds { get; init; } = 700;
}

/// <summary>Sound and speech.</summary>
public sealed record Voice
{
    /// <summary>True if alarms may sound.</summary>
    public bool Sound { get; init; } = true;

    /// <summary>True if steps and alarms are spoken.</summary>
    public bool Speech { get; init; }

    /// <summary>The speech program and its arguments; empty: whichever is found.</summary>
    public IReadOnlyList<string> Program { get; init; } = [];

    /// <summary>The program that plays tones, and its arguments; empty: whichever is found.</summary>
    public IReadOnlyList<string> Player { get; init; } = [];

    /// <summary>True if a clock that reaches its least is heard too.</summary>
    public bool LeastSounds { get; init; }

    /// <summary>True if the program starts quiet: no tone, no word, no bell until somebody ends that.</summary>
    public bool Quiet { get; init; }

    /// <summary>True if steps are spoken as they come; if not, only when asked for.</summary>
    public bool Steps { get; init; } = true;

    /// <summary>How fast to speak, in words a minute, or null: as the speech program does.</summary>
    public int? WordsAMinute { get; init; }

    /// <summary>The slowest and the fastest speech that can be asked for, in words a minute.</summary>
    public static (int Slowest, int Fastest) Speeds => (80, 450);
}
