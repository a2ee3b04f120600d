namespace ServiceRunner.Core.Procedures;

/// <summary>The closed lists of words that a procedure may use.</summary>
public static class Vocabulary
{
    /// <summary>Stages known by name; a procedure may have others with a title of its own.</summary>
    public static readonly IReadOnlyList<string> Stages =
        ["arrival", "examination", "estimate", "dismantling", "inspection", "cleaning", "pegging", "reassembly", "striking", "timing", "test", "final"];

    /// <summary>Kinds of part.</summary>
    public static readonly IReadOnlyList<string> PartKinds =
        ["plate", "bridge", "cock", "wheel", "barrel", "mainspring", "arbor", "pinion", "fork", "balance", "hairspring", "jewel", "setting",
         "spring", "lever", "click", "screw", "hand", "dial", "case", "ring", "pin", "other"];

    /// <summary>Roles of a lubricant at an oiling point.</summary>
    public static readonly IReadOnlyList<string> Roles =
        ["fast-pivot", "slow-pivot", "escapement", "keyless", "mainspring", "barrel-wall", "friction", "endstone", "strike", OilingPoint.Never];

    /// <summary>Cautions that a step may owe.</summary>
    public static readonly IReadOnlyList<string> Cautions =
        ["stored-energy", "eyes", "flammable", "vapour", "skin", "corrosive", "heat", "sharp", "flying-parts", "luminous", "mercury",
         "beryllium-dust", "electricity", "pressure", "suffocation", "ultrasonic-flammable"];

    /// <summary>Ways of drying.</summary>
    public static readonly IReadOnlyList<string> DryingMeans = ["air", "warm-air", "dryer", "sawdust", "blower"];

    /// <summary>What may harm a part.</summary>
    public static readonly IReadOnlyList<string> Harms = ["ultrasonic", "heat", "water", "alcohol", "ammonia", "magnetism", "blowing", "brushing"];

    /// <summary>Positions in which a rate is taken, named from the pendant or crown.</summary>
    public static readonly IReadOnlyList<string> Positions =
        ["dial-up", "dial-down", "crown-up", "crown-down", "crown-left", "crown-right", "pendant-up", "pendant-down", "pendant-left", "pendant-right"];
}
