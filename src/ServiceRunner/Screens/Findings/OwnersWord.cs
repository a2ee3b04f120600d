using System.Globalization;
using ServiceRunner.Core.Jobs;
using ServiceRunner.Core.Quantities;
using ServiceRunner.Files.Sentences;
using ServiceRunner.Files.Yaml;
using ServiceRunner.Screens.Pick;
using ServiceRunner.Session;

namespace ServiceRunner.Screens.Findings;

/// <summary>What findings cost, what the owner is told, and what the owner says.</summary>
public sealed partial class FindingsModel
{
    private void Price()
    {
        FindingEntry finding = Marked!;
        Shell.Ask(new Prompt($"{Words(finding)}: what will it cost?", "The sum, as 120 or 120,50. May be left empty.", finding.Fate.Cost?.AsTyped ?? "", money =>
        {
            TypedNumber? cost = null;
            if (money.Trim().Length > 0)
            {
                if (TypedNumber.Read(money, out TypedNumber read) != TypedNumber.Fault.None || read.Value < 0) return $"'{money.Trim()}' is no sum of money; type it as 120 or 120,50.";
                cost = read;
            }
            return Shell.AskNext(new Prompt($"{Words(finding)}: how much of your time?", "As 2 h 30 min. May be left empty.", finding.Fate.Time is { } known ? Times.Length(known) : "", time =>
            {
                TimeSpan? length = null;
                if (time.Trim().Length > 0)
                {
                    if (!DurationText.TryRead(time, out TimeSpan read)) return $"'{time.Trim()}' is no length of time; type it as 2 h 30 min.";
                    length = read;
                }
                return Complaint(Session.Act(Job, new JobAction.PriceFinding(finding.Id, cost, length)), "The cost is noted.");
            }));
        }));
    }

    private void Estimate()
    {
        IReadOnlyList<FindingEntry> lines = FindingsLedger.ToEstimate(State, Job.Plan);
        int open = lines.Count(l => l.Fate.Cost is null);
        string unpriced = open > 0 ? $" {Times.Count(open, "line")} without a price." : "";
        if (!Act(new JobAction.GiveEstimate(Session.Workshop.Currency), "")) return;
        (bool printed, string sentence) = Slips.PrintEstimate(Session, Job);
        Shell.Say($"The estimate is written down: {FindingWords.Total(lines.Select(l => l.Fate.Cost), Session.Workshop.Currency)}.{unpriced} {sentence}", refusal: !printed);
    }

    private void Answer()
    {
        IReadOnlyList<FindingEntry> asked = FindingsLedger.ToEstimate(State, Job.Plan);
        List<string> all = [.. asked.Select(f => f.Id)];
        Shell.Choose("What did the owner say?",
        [
            new Choice("Yes, to all of it", Times.List(asked.Select(Words)), () => AskMeans(all, [])),
            new Choice("Yes, to a part of it", "asked one by one", () => OneByOne(asked, 0, [], [])),
            new Choice("No", "nothing of it", () => AskMeans([], all)),
        ]);
    }

    private void OneByOne(IReadOnlyList<FindingEntry> asked, int at, IReadOnlyList<string> agreed, IReadOnlyList<string> declined)
    {
        if (at == asked.Count)
        {
            AskMeans(agreed, declined);
            return;
        }
        FindingEntry finding = asked[at];
        Shell.Choose($"{Words(finding)}{(finding.Fate.Cost is { } cost ? $", {FindingWords.Money(cost.Value, Session.Workshop.Currency)}" : "")}?",
        [
            new Choice("Yes", "", () => OneByOne(asked, at + 1, [.. agreed, finding.Id], declined)),
            new Choice("No", "", () => OneByOne(asked, at + 1, agreed, [.. declined, finding.Id])),
            new Choice("Not said yet", "", () => OneByOne(asked, at + 1, agreed, declined)),
        ]);
    }

    private void AskMeans(IReadOnlyList<string> agreed, IReadOnlyList<string> declined) => Shell.Choose("How did the answer come?",
    [
        .. new[] { Means.Telephone, Means.InPerson, Means.Writing, Means.Other }.Select(m => new Choice(JobWords.Of(m), "", () => AskDay(agreed, declined, m))),
    ]);

    private void AskDay(IReadOnlyList<string> agreed, IReadOnlyList<string> declined, Means how)
    {
        DateOnly today = Session.Now.Day;
        Shell.Ask(new Prompt("On which day?", DayText.Past, today.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture), day =>
            DayText.Read(day, today, ahead: false, out DateOnly? read) is { Length: > 0 } no ? no
                : (read ?? today) is var on && on > today ? RejectionWords.Sentence(new Rejection.InTheFuture(default), Job.Plan)
                : Shell.AskNext(new Prompt("In the owner's words?", "A few of them; may be left empty.", "", words =>
                    Complaint(Session.Act(Job, new JobAction.TakeAnswer(agreed, declined, how, on, words)), $"Written down: agreed to {agreed.Count}, declined {declined.Count}.")))));
    }
}
