namespace ServiceRunner.Files.Reports.Estimates;

/// <summary>What an estimate says whichever way it is written.</summary>
internal static class EstimateWords
{
    public const string Draft = "This is a draft: it was not given to the owner yet, and may change.";

    public const string NothingFound = "Nothing was found to be wrong or unusual so far.";

    public const string NothingToDecide = "Nothing waits for the owner's decision.";

    public const string AgreedBefore = "Agreed before, and not in the total";

    public const string Limit = "Agreed limit of cost";

    public static readonly IReadOnlyList<string> Choices = ["Yes, to all of it.", "Yes, to a part of it, as marked above.", "No, leave all of it as it is."];
}
