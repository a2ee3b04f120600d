using System.Globalization;
using ServiceRunner.Core.Jobs;
using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Files.Sentences;

/// <summary>What is said of a finding, of its cost, and of what it holds back.</summary>
public static class FindingWords
{
    /// <summary>Where and what, in a few words: <c>Fourth wheel: lower pivot bent</c>.</summary>
    public static string Of(JobEvent.FindingNoted finding, Plan plan) => $"{Where(finding, plan)}: {finding.What}";

    /// <summary>Where it is: the part by its name, or the place as it was called.</summary>
    public static string Where(JobEvent.FindingNoted finding, Plan plan)
    {
        string spot = PartWords.Spot(finding, plan);
        // "Fourth pivots" says already that it is of the fourth wheel.
        string part = finding.Part.Length > 0 && finding.Part != finding.Spot && FirstWord(plan.NameOf(finding.Part)) != FirstWord(spot) ? $" ({plan.NameOf(finding.Part)})" : "";
        return $"{spot}{part}";
    }

    private static string FirstWord(string text) => text.Split([' ', ','], 2)[0].ToLowerInvariant();

    /// <summary>All that is known of it, a sentence each.</summary>
    public static IEnumerable<string> Detail(FindingEntry finding, Job job, Plan plan, string currency, DateTimeOffset now)
    {
        yield return $"{Capital(JobWords.Of(finding.Weight))}; {JobWords.Of(finding.Sure)}. Noted by {finding.Noted.By}, {Times.When(finding.Noted.At.Wall, now)}.";
        yield return $"{Capital(JobWords.Of(finding))}.";
        if (finding.Fate.Verdict is { } verdict and not Verdict.Accept && finding.Repairs.Count == 0 && finding.Standing is not (FindingStanding.ToBeMended or FindingStanding.SentOut))
            yield return $"Decided: {JobWords.Of(verdict)}{(finding.Fate.Detail.Length > 0 ? $", {finding.Fate.Detail}" : "")}.";
        if (finding.Fate.Cost is not null || finding.Fate.Time is not null)
            yield return $"Cost: {Times.List(new[] { finding.Fate.Cost is { } c ? Money(c.Value, currency) : "", finding.Fate.Time is { } t ? Times.Length(t) : "" }.Where(x => x.Length > 0))}{(finding.Fate is { Cost.Value: > 0, Agreed: null } && AgreedLimit.Of(job) is { } limit ? $", {Limit(limit)}" : "")}.";
        foreach (Noted<JobEvent.OwnerAnswered> answer in job.OwnerAnswers.Where(a => a.Event.Agreed.Contains(finding.Id) || a.Event.Declined.Contains(finding.Id)))
            yield return $"The owner {(answer.Event.Agreed.Contains(finding.Id) ? "agreed" : "declined")}, {JobWords.Of(answer.Event.How)}, {answer.Event.On.ToString("d MMM yyyy", CultureInfo.InvariantCulture)}{(answer.Event.Words.Length > 0 ? $": \"{answer.Event.Words}\"" : "")}.";
        foreach (Repair repair in finding.Repairs)
            yield return $"Repair: {repair.Title}, {(repair.IsGivenUp ? "given up" : repair.IsFinished ? "at its end" : $"{repair.Left} of {Times.Count(repair.Total, "step")} left")}{(repair.Part.Length > 0 ? $" ({plan.NameOf(repair.Part)})" : "")}.";
        foreach (Noted<JobEvent.PhotoKept> photo in job.Photos.Where(p => p.Event.Finding == finding.Id)) yield return $"Picture: {photo.Event.Name}.";
    }

    /// <summary>How many steps wait, and how many may go on.</summary>
    public static string Counts(int waiting, int free) =>
        waiting == 0 ? $"Nothing waits for it; {Times.Count(free, "step")} may go on." : $"{Times.Count(waiting, "step")} {(waiting == 1 ? "waits" : "wait")}, {free} may go on.";

    /// <summary>A sum of money; the currency is empty if the workshop states none.</summary>
    public static string Money(decimal sum, string currency) => string.Create(CultureInfo.InvariantCulture, $"{sum:0.00} {currency}").TrimEnd();

    /// <summary>How the cost of all findings stands to what the owner agreed to: <c>within the agreed 300.00 EUR, the service itself not counted</c>.</summary>
    public static string Limit(AgreedLimit limit)
    {
        string agreed = $"the agreed {Money(limit.Limit, limit.Currency)}";
        return limit.Sum is not { } sum ? $"not to be compared with {agreed}, since not all is priced in the same currency"
            : limit.IsKept ? $"within {agreed}, the service itself not counted"
            : $"{Money(sum, limit.Currency)} with the other findings, {Money(limit.Over, limit.Currency)} over {agreed}";
    }

    /// <summary>The sum of what was priced.</summary>
    public static string Total(IEnumerable<TypedNumber?> costs, string currency) => Money(costs.Sum(c => c?.Value ?? 0), currency);

    private static string Capital(string text) => text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];
}
