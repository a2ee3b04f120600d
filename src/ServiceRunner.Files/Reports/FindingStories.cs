using System.Globalization;
using ServiceRunner.Core.Jobs;
using ServiceRunner.Files.Sentences;

namespace ServiceRunner.Files.Reports;

/// <summary>The findings of a job with all that became of them, and what passed between workshop and owner.</summary>
internal static class FindingStories
{
    public static IReadOnlyList<FindingLine> Of(Job job, Plan plan, string currency) => [.. FindingsLedger.Of(job, plan).Select(f =>
        new FindingLine(FindingWords.Where(f.Noted.Event, plan), f.Noted.Event.What, f.Weight, f.Sure, f.Noted.By, f.Noted.At.Wall)
        {
            Fate = [.. Fate(f, job, plan, currency)],
            Pictures = [.. job.Photos.Where(p => p.Event.Finding == f.Id).Select(p => Picture(p.Event, FindingWords.Of(f.Noted.Event, plan)))],
        })];

    /// <summary>What the owner was told and answered, in order.</summary>
    public static IReadOnlyList<OwnerLine> Owner(Job job, Plan plan)
    {
        string Named(string id) => job.Findings.FirstOrDefault(f => f.Event.Finding == id) is { } finding ? FindingWords.Of(finding.Event, plan) : id;
        IEnumerable<(int Action, OwnerLine Line)> told = job.Estimates.Select(e => (e.Action, new OwnerLine(Day(e.At.Wall), "Estimate given",
            [.. e.Event.Lines.Select(l => $"{Named(l.Finding)}: {Cost(l, e.Event.Currency)}"), $"Total: {FindingWords.Total(e.Event.Lines.Select(l => l.Cost), e.Event.Currency)}"], e.By)));
        IEnumerable<(int Action, OwnerLine Line)> answered = job.OwnerAnswers.Select(a => (a.Action, new OwnerLine(a.Event.On.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture), $"Answer {JobWords.Of(a.Event.How)}",
            [.. a.Event.Agreed.Select(f => $"Agreed: {Named(f)}"), .. a.Event.Declined.Select(f => $"Declined: {Named(f)}"), .. a.Event.Words.Length > 0 ? [$"\"{a.Event.Words}\""] : Array.Empty<string>()], a.By)));
        return [.. told.Concat(answered).OrderBy(x => x.Action).Select(x => x.Line)];
    }

    /// <summary>A picture; what it shows is not said again where that is only the finding.</summary>
    public static PictureLine Picture(JobEvent.PhotoKept photo, string of = "") => new(photo.Name, photo.Hash, photo.Caption == of ? "" : photo.Caption);

    private static IEnumerable<string> Fate(FindingEntry finding, Job job, Plan plan, string currency)
    {
        FindingFate fate = finding.Fate;
        string stands = JobWords.Of(finding);
        if (finding.Standing != FindingStanding.Settled || finding is { Renewed: true, Repairs.Count: 0 } && fate is { Settled: "", Agreed: not false, Verdict: not Verdict.Accept }) yield return $"{Capital(stands)}.";
        if (fate.Verdict is { } verdict && Last<JobEvent.FindingDecided>(job, e => e.Finding == finding.Id) is { } decided)
            yield return $"Decided: {JobWords.Of(verdict)}{Because(verdict, fate.Detail)} ({decided.By}, {Day(decided.At.Wall)}).";
        if (fate.Cost is not null || fate.Time is not null)
            yield return $"Price: {Cost(new EstimateLine(finding.Id, fate.Cost, fate.Time), fate.Currency ?? currency)}.";
        foreach (Noted<JobEvent.OwnerAnswered> answer in job.OwnerAnswers.Where(a => a.Event.Agreed.Contains(finding.Id) || a.Event.Declined.Contains(finding.Id)))
            yield return string.Create(CultureInfo.InvariantCulture, $"The owner {(answer.Event.Agreed.Contains(finding.Id) ? "agreed" : "declined")} {JobWords.Of(answer.Event.How)}, {answer.Event.On:yyyy-MM-dd}.");
        foreach (Repair repair in finding.Repairs)
            yield return $"{RepairTitle(repair.Title, repair.Part, plan)}, {(repair.IsFinished ? Finished(job, repair) : $"{repair.Left} of {Times.Count(repair.Total, "step")} left")}.";
        if (fate.Settled.Length > 0) yield return $"Done with: {fate.Settled}.";
    }

    /// <summary>A repair with its part.</summary>
    public static string RepairTitle(string title, string part, Plan plan) => $"Repair: {title}{(part.Length > 0 ? $" ({plan.NameOf(part)})" : "")}";

    private static string Finished(Job job, Repair repair)
    {
        List<StepEnd> ends = [.. job.Steps.Values.Where(s => s.Step.Instance == repair.Instance && s.End is not null).Select(s => s.End!)];
        return ends.MaxBy(e => e.At.Wall) is not { } last ? "nothing was done in it"
            : $"{(repair.IsGivenUp ? "given up" : "finished")} {Day(last.Remembered ?? last.At.Wall)}";
    }

    private static string Because(Verdict verdict, string detail) => detail.Length == 0 ? "" : verdict == Verdict.SendOut ? $" to {detail}" : $": {detail}";

    private static string Cost(EstimateLine line, string currency) =>
        $"{(line.Cost is { } cost ? FindingWords.Money(cost.Value, currency) : "no price yet")}{(line.Time is { } time ? $", {Times.Length(time)}" : "")}";

    private static LogEntry? Last<T>(Job job, Func<T, bool> which) where T : JobEvent =>
        job.Log.LastOrDefault(e => !job.TakenBack.Contains(e.Number) && e.Events.OfType<T>().Any(which));

    private static string Day(DateTimeOffset at) => HtmlReport.Day(at);

    private static string Capital(string text) => text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];
}
