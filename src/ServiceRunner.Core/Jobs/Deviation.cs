namespace ServiceRunner.Core.Jobs;

/// <summary>Kinds of deviation: stored words, and the words that a workshop file's <c>reasons-for</c> may name.</summary>
public static class Deviation
{
    /// <summary>A step was passed over.</summary>
    public const string Skipped = "skipped";

    /// <summary>A step was done before one that should have come first.</summary>
    public const string OutOfOrder = "out-of-order";

    /// <summary>A soak was ended under its least.</summary>
    public const string SoakShort = "soak-short";

    /// <summary>A soak was ended over its most.</summary>
    public const string SoakLong = "soak-long";

    /// <summary>A point got a lubricant that is not for its role, or none of the shelf is.</summary>
    public const string PointOtherLubricant = "point-other-lubricant";

    /// <summary>A point got a lubricant whose viscosity is outside its role.</summary>
    public const string PointOtherViscosity = "point-other-viscosity";

    /// <summary>A point got a lubricant from a bottle past its date.</summary>
    public const string LubricantPastDate = "lubricant-past-date";

    /// <summary>A point was left unserved.</summary>
    public const string PointLeft = "point-left";

    /// <summary>A measure or a count is outside its limits.</summary>
    public const string MeasureOutside = "measure-outside";

    /// <summary>A measure, a count or a rate was left out.</summary>
    public const string MeasureLeft = "measure-left";

    /// <summary>A challenge, a look, an estimate, a consent or a witness was left out.</summary>
    public const string ConfirmLeft = "confirm-left";

    /// <summary>A part was not where the step takes it to be.</summary>
    public const string PartNotAsWritten = "part-not-as-written";

    /// <summary>A part under power was moved with the power on.</summary>
    public const string PowerOn = "power-on";

    /// <summary>A part was fitted for good that was not cleaned, not dry or not looked over.</summary>
    public const string PartNotReady = "part-not-ready";

    /// <summary>A part was fitted or tried before the repair that it is in was at its end.</summary>
    public const string RepairOpen = "repair-open";

    /// <summary>Work went on over a finding that stops it.</summary>
    public const string OverFinding = "over-finding";

    /// <summary>A repair that costs was begun without the owner's word.</summary>
    public const string WithoutConsent = "without-consent";

    /// <summary>No second person looked where one was to.</summary>
    public const string WitnessLeft = "witness-left";

    /// <summary>The job was closed with something owed.</summary>
    public const string ClosedWithOwed = "closed-with-owed";

    /// <summary>Something was done in another way, as told by the repairer.</summary>
    public const string ByOtherMeans = "by-other-means";

    /// <summary>All kinds.</summary>
    public static readonly IReadOnlyList<string> Kinds =
        [Skipped, OutOfOrder, SoakShort, SoakLong, PointOtherLubricant, PointOtherViscosity, LubricantPastDate, PointLeft, MeasureOutside, MeasureLeft,
         ConfirmLeft, PartNotAsWritten, PartNotReady, PowerOn, RepairOpen, OverFinding, WithoutConsent, WitnessLeft, ClosedWithOwed, ByOtherMeans];
}
