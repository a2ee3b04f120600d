using ServiceRunner.Core.Jobs;
using ServiceRunner.Core.Workshops;
using ServiceRunner.Files.Sentences;

namespace ServiceRunner.Files.Reports;

/// <summary>The steps that were touched, under their stages, with what was answered.</summary>
internal static class StageStories
{
    public static IReadOnlyList<StageStory> Of(Job job, Plan plan, IReadOnlyList<JobEvent> kept, Workshop workshop)
    {
        ILookup<StepRef, AnswerLine> answers = kept.Select(e => AnswerLine.Of(e, workshop)).Where(a => a is not null).ToLookup(a => a!.Value.Step, a => a!.Value.Line);
        List<(string Title, string Repair, List<StepLine> Steps)> stages = [];
        foreach (PlannedStep step in plan.InForce(job))
        {
            if (job.Steps.GetValueOrDefault(step.Key) is not { } record) continue;
            string repair = job.Repairs.FirstOrDefault(r => r.Instance == step.Key.Instance) is { } joined ? FindingStories.RepairTitle(plan.TitleOf(joined.Instance), joined.Part, plan) : "";
            if (stages is [] || stages[^1].Title != step.Stage.Title || stages[^1].Repair != repair) stages.Add((step.Stage.Title, repair, []));
            StepLine[] earlier = [.. job.EarlierSteps.Where(e => e.Step.Key == step.Key).Select(e => Line(e, []))];
            stages[^1].Steps.Add(Line(record, earlier));

            StepLine Line(StepRecord r, IReadOnlyList<StepLine> before) => new(step.Step.Do, r.Step.Occurrence, r.End, [.. answers[r.Step]], before);
        }
        return [.. stages.Select(s => new StageStory(s.Title, s.Steps) { Repair = s.Repair })];
    }
}
