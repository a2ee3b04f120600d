using ServiceRunner.Core.Jobs;
using ServiceRunner.Core.Quantities;
using ServiceRunner.Files.Sentences;

namespace ServiceRunner.Files.Reports;

/// <summary>The steps that were touched, under their stages, with what was answered.</summary>
internal static class StageStories
{
    public static IReadOnlyList<StageStory> Of(Job job, Plan plan, IReadOnlyList<JobEvent> kept)
    {
        ILookup<StepRef, AnswerLine> answers = kept.Select(Answer).Where(a => a is not null).ToLookup(a => a!.Value.Step, a => a!.Value.Line);
        List<(string Title, List<StepLine> Steps)> stages = [];
        foreach (PlannedStep step in plan.InForce(job))
        {
            if (job.Steps.GetValueOrDefault(step.Key) is not { } record) continue;
            if (stages is [] || stages[^1].Title != step.Stage.Title) stages.Add((step.Stage.Title, []));
            StepLine[] earlier = [.. job.EarlierSteps.Where(e => e.Step.Key == step.Key).Select(e => Line(e, []))];
            stages[^1].Steps.Add(Line(record, earlier));

            StepLine Line(StepRecord r, IReadOnlyList<StepLine> before) => new(step.Step.Do, r.Step.Occurrence, r.End, [.. answers[r.Step]], before);
        }
        return [.. stages.Select(s => new StageStory(s.Title, s.Steps))];
    }

    private static (StepRef Step, AnswerLine Line)? Answer(JobEvent e) => e switch
    {
        JobEvent.Confirmed x => (x.Step, new AnswerLine(x.Ask, x.Answer, "", AnswerKind.Confirmed)),
        JobEvent.Examined x => (x.Step, Stated(AskWords.Spoken(x.Spot), x.Choice)),
        JobEvent.Measured x => (x.Step, Figure(x.What, x.Value, x.Unit, x.AtLeast, x.AtMost)),
        JobEvent.Felt x => (x.Step, Stated(AskWords.Spoken(x.What), $"felt {x.Choice}")),
        JobEvent.Counted x => (x.Step, Figure(x.What, x.Value, x.Unit, x.AtLeast, x.AtMost)),
        JobEvent.EstimateNoted x => (x.Step, Stated("Estimate", x.Text)),
        JobEvent.ConsentNoted x => (x.Step, Stated("The owner's answer", x.Text)),
        JobEvent.Witnessed x => (x.Step, Stated("Second person", x.Initials)),
        JobEvent.AskLeft x => (x.Step, new AnswerLine(AskWords.Spoken(x.Ask.Split(':')[^1]), "", "", AnswerKind.Left)),
        _ => null,
    };

    private static AnswerLine Stated(string asked, string answer) => new(asked, answer, "", AnswerKind.Stated);

    private static AnswerLine Figure(string what, TypedNumber value, string unit, decimal? atLeast, decimal? atMost) =>
        new(AskWords.Spoken(what), $"{value} {unit}", AskWords.Limits(atLeast, atMost, unit), AnswerKind.Stated) { Outside = value.Value < atLeast || value.Value > atMost };
}
