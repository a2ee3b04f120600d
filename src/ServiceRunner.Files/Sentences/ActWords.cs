using ServiceRunner.Core.Jobs;

namespace ServiceRunner.Files.Sentences;

/// <summary>What an act was, in a few words: for whoever takes it back.</summary>
public static class ActWords
{
    /// <summary>An entry of the log: the repair that it gave up, the step that it settled, or else the last thing that happened in it.</summary>
    public static string Of(LogEntry entry, Plan plan)
    {
        foreach (JobEvent e in entry.Events)
            switch (e)
            {
                case JobEvent.RepairGivenUp x: return $"the giving up of '{plan.TitleOf(x.Instance)}'";
                case JobEvent.StepDone x: return $"'{Do(plan, x.Step)}' done";
                case JobEvent.StepSkipped x: return $"'{Do(plan, x.Step)}' passed over";
            }
        return entry.Events.Select(e => Of(e, plan)).LastOrDefault(w => w.Length > 0) ?? "the last entry";
    }

    private static string Of(JobEvent e, Plan plan) => e switch
    {
        JobEvent.SoakBegun x => $"the start of '{Do(plan, x.Step)}'",
        JobEvent.SoakEnded x => $"the end of '{Do(plan, x.Step)}'",
        JobEvent.Examined x => $"{AskWords.Spoken(x.Spot, false)}: {x.Choice}",
        JobEvent.PointServed x => $"served: {plan.Point(x.Point)?.Name ?? x.Point}",
        JobEvent.FindingNoted x => $"finding: {x.What}",
        JobEvent.PartMoved x => $"{plan.NameOf(x.Part)}: {JobWords.Of(x.To)}",
        JobEvent.FindingDecided x => $"decided: {JobWords.Of(x.Verdict)}",
        JobEvent.FindingPriced => "the cost of a finding",
        JobEvent.FindingWeighed x => $"weighed: {JobWords.Of(x.Weight)}",
        JobEvent.FindingSettled x => $"done with: {x.How}",
        JobEvent.RepairJoined x => $"the repair '{plan.TitleOf(x.Instance)}'",
        JobEvent.EstimateGiven => "the estimate",
        JobEvent.OwnerAnswered => "the owner's answer",
        JobEvent.PhotoKept x => $"the picture {x.Name}",
        JobEvent.PartAdded x => $"the part {x.Name}",
        JobEvent.PartRenewed x => $"{plan.NameOf(x.Part)}: {JobWords.Of(x.Origin)}",
        JobEvent.PartTended x => $"{plan.NameOf(x.Part)}: {JobWords.Of(x.What)}",
        JobEvent.WashBegunAgain x => $"{plan.NameOf(x.Part)} through the baths again",
        JobEvent.Marked => "a marked moment",
        JobEvent.Confirmed x => $"'{x.Ask}' {x.Answer}",
        JobEvent.Measured x => $"{AskWords.Spoken(x.What, false)}: {x.Value} {x.Unit}".TrimEnd(),
        JobEvent.Felt x => $"{AskWords.Spoken(x.What, false)}: {x.Choice}",
        JobEvent.Counted x => $"{AskWords.Spoken(x.What, false)}: {x.Value} {x.Unit}".TrimEnd(),
        JobEvent.RateTaken x => $"rate {AskWords.Spoken(x.Position, false)}: {x.Rate}",
        JobEvent.AskLeft => "an answer left open",
        JobEvent.DeviationNoted x => JobWords.DeviationKind(x.Kind),
        JobEvent.IntakeNoted => "a change of the intake",
        JobEvent.OwnerNamed => "a change of the owner",
        JobEvent.FactAnswered x => $"{x.Fact}: {x.Answer}",
        _ => "",
    };

    private static string Do(Plan plan, StepRef step) => plan.Find(step.Key)?.Step.Do ?? step.Step;
}
