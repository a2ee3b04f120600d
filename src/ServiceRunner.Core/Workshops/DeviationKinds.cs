namespace ServiceRunner.Core.Workshops;

/// <summary>Ways of doing something other than as written, by the names that a workshop file uses in <c>reasons-for</c>.</summary>
public static class DeviationKinds
{
    /// <summary>All of them.</summary>
    public static readonly IReadOnlyList<string> All =
        ["skipped", "out-of-order", "soak-short", "soak-long", "point-other-lubricant", "point-left", "measure-outside", "measure-left",
         "confirm-left", "part-not-as-written", "part-not-ready", "power-on", "repair-open", "over-finding", "without-consent", "closed-with-owed", "by-other-means"];
}
