using ServiceRunner.Core.Jobs;
using ServiceRunner.Core.Workshops;
using ServiceRunner.Files.Sentences;

namespace ServiceRunner.Files.Reports.Estimates;

/// <summary>A finding of the condition report: where it is, what it is, and how sure, all in words.</summary>
public sealed record ConditionLine(string Where, string What, string Sure);

/// <summary>A line of an estimate, in words: the finding, what is to be done, the price, and the time; the time is empty if not said.</summary>
public sealed record EstimateRow(string Finding, string Done, string Price, string Time);

/// <summary>
/// What an owner is given to decide upon: in which condition the piece is, what would be done, what it costs. It tells
/// the last estimate as it was told; if none was given yet, what would be told now, and says that it is a draft.
/// </summary>
public sealed class Estimate
{
    /// <param name="job">The job.</param>
    /// <param name="plan">Its procedures.</param>
    /// <param name="workshop">The workshop.</param>
    /// <param name="owner">The owner's name; empty if none was given or it was erased.</param>
    /// <param name="today">The day it is made.</param>
    public Estimate(Job job, Plan plan, Workshop workshop, string owner, DateOnly today)
    {
        Noted<JobEvent.EstimateGiven>? given = job.Estimates.LastOrDefault();
        // As it was told means: with the findings and decisions of that moment, whatever came later.
        Job then = given is null ? job : Fold.All(job.Id, job.Log.Take(given.Action))!;
        IReadOnlyList<FindingEntry> findings = FindingsLedger.Of(then, plan);
        List<EstimateLine> lines = given is not null ? [.. given.Event.Lines]
            : [.. FindingsLedger.ToEstimate(job, plan).Select(f => new EstimateLine(f.Id, f.Fate.Cost, f.Fate.Time))];
        string currency = given?.Event.Currency ?? workshop.Currency;
        (Workshop, Number, What, Owner, Serial) = (workshop.Name, job.Number, job.What, owner, then.Intake.Serial);
        (IsDraft, Day) = (given is null, given is null ? today : DateOnly.FromDateTime(given.At.Wall.Date));
        OnArrival = then.Intake.Condition;
        Condition = [.. findings.Where(f => f.Weight != Weight.Note).Select(f => Line(f, plan))];
        AlsoSeen = [.. findings.Where(f => f.Weight == Weight.Note).Select(f => Line(f, plan))];
        Rows = [.. lines.Select(l => Row(l, findings.FirstOrDefault(f => f.Id == l.Finding), plan, currency))];
        Total = FindingWords.Total(lines.Select(l => l.Cost), currency);
        Unpriced = lines.Count(l => l.Cost is null);
        AgreedBefore = [.. findings.Where(f => f.Fate is { Agreed: true, Cost.Value: > 0 } && !lines.Any(l => l.Finding == f.Id))
            .Select(f => $"{FindingWords.Of(f.Noted.Event, plan)}, {FindingWords.Money(f.Fate.Cost!.Value.Value, f.Fate.Currency ?? currency)}")];
        Limit = then.Intake.CostLimit is null ? "" : IntakeWords.Limit(then.Intake);
    }

    public string Workshop { get; }
    public string Number { get; }
    public string What { get; }

    /// <summary>As engraved; empty if none was noted.</summary>
    public string Serial { get; }

    /// <summary>The owner's name; empty if none was given or it was erased.</summary>
    public string Owner { get; }

    /// <summary>True if no estimate was given to the owner yet.</summary>
    public bool IsDraft { get; }

    /// <summary>The day it was told, or that of the draft.</summary>
    public DateOnly Day { get; }

    /// <summary>What it is called at its head.</summary>
    public string Title => IsDraft ? "Draft of an estimate" : "Estimate";

    /// <summary>How it arrived; empty if nothing was noted.</summary>
    public string OnArrival { get; }

    /// <summary>What was found that is more than a note.</summary>
    public IReadOnlyList<ConditionLine> Condition { get; }

    /// <summary>What was noted besides.</summary>
    public IReadOnlyList<ConditionLine> AlsoSeen { get; }

    /// <summary>What the owner is to decide upon.</summary>
    public IReadOnlyList<EstimateRow> Rows { get; }

    /// <summary>The sum of what has a price.</summary>
    public string Total { get; }

    /// <summary>How many lines have no price.</summary>
    public int Unpriced { get; }

    /// <summary>What the sum leaves out, as a sentence; empty if every line has its price.</summary>
    public string NotInTotal => Unpriced == 0 ? "" : $"Not in it: {Times.Count(Unpriced, "line")} without a price yet.";

    /// <summary>What the owner agreed to before, each with its price: it is in no total any more.</summary>
    public IReadOnlyList<string> AgreedBefore { get; }

    /// <summary>What was agreed at most as the piece came in; empty if nothing was.</summary>
    public string Limit { get; }

    private static ConditionLine Line(FindingEntry finding, Plan plan)
    {
        JobEvent.FindingNoted noted = finding.Noted.Event;
        return new(FindingWords.Where(noted, plan), noted.What, JobWords.Of(finding.Sure));
    }

    private static EstimateRow Row(EstimateLine line, FindingEntry? finding, Plan plan, string currency) => new(
        finding is null ? "" : FindingWords.Of(finding.Noted.Event, plan),
        finding is null ? "" : Done(finding),
        line.Cost is { } cost ? FindingWords.Money(cost.Value, currency) : "no price yet",
        line.Time is { } time ? Times.Length(time) : "");

    private static string Done(FindingEntry finding)
    {
        string by = finding.Repairs.Count > 0 ? $": {Times.List(finding.Repairs.Select(r => r.Title).Distinct())}" : "";
        return finding.Fate.Verdict switch
        {
            Verdict.Replace => $"replaced{by}",
            Verdict.SendOut => finding.Fate.Detail.Length > 0 ? $"sent out to {finding.Fate.Detail}" : "sent out",
            Verdict.AskOwner => $"your decision is asked{by}",
            _ => $"mended here{by}",
        };
    }
}
