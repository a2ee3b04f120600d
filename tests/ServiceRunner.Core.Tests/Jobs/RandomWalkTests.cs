using CsCheck;
using ServiceRunner.Core.Jobs;

namespace ServiceRunner.Core.Tests.Jobs;

/// <summary>From any order of actions the ledgers still hold.</summary>
public class RandomWalkTests
{
    private static readonly string[] Steps = [.. Sample.Plan.Steps.Select(s => s.Key.Step)];

    private static readonly Gen<JobAction> Actions = Gen.Select(Gen.Int[0, 11], Gen.Int[0, Steps.Length - 1], Gen.Int[0, 4]).Select((kind, step, part) =>
    {
        StepRef at = Sample.Step(Steps[step]);
        string name = new[] { "wheel", "bridge", "screw", "balance", "plate" }[part];
        return (JobAction)(kind switch
        {
            0 or 1 or 2 => new JobAction.Do(at, "r"),
            3 => new JobAction.Skip(at, "r"),
            4 => new JobAction.BeginSoak(at, "", "r"),
            5 => new JobAction.EndSoak(at, "r"),
            6 => new JobAction.TakeBack(),
            7 => new JobAction.MovePart(name, part % 2 == 0 ? new PartPlace.Lost() : new PartPlace.OnMovement()),
            8 => new JobAction.Again(at.Key),
            9 => new JobAction.EnterAfterwards([at], Sample.Morning.Wall.AddMinutes(-5)),
            10 => part % 2 == 0 ? new JobAction.Pause("") : new JobAction.Resume(),
            _ => new JobAction.TakeBack(step + 1),
        });
    });

    [Fact]
    public void Settled_and_owed_steps_are_what_was_there_and_folding_anew_gives_the_same()
    {
        Actions.List[1, 60].Sample(actions =>
        {
            Walk walk = Walk.Begun();
            foreach (JobAction action in actions)
            {
                walk.Now = walk.Now.Plus(TimeSpan.FromSeconds(40));
                if (walk.Decide(action) is Decision.Accepted) walk.Then(action);
            }
            Job job = walk.Job;
            int settled = Sample.Plan.InForce(job).Count(s => job.IsSettled(s.Key));
            Assert.Equal(Sample.Plan.InForce(job).Count(), settled + Owed.Of(job, Sample.Plan).Steps.Count);
            Assert.All(Sample.Plan.Parts, p => Assert.NotNull(job.PlaceOf(p.Id)));
            Assert.Equal(job.Parts.Count(p => p.Value is not (PartPlace.OnMovement or PartPlace.Replaced)), Owed.Of(job, Sample.Plan).Parts.Count);
            Job again = Fold.All(job.Id, job.Log)!;
            Assert.Equal(job.Phase.GetType(), again.Phase.GetType());
            Assert.Equal(job.Parts.OrderBy(p => p.Key), again.Parts.OrderBy(p => p.Key));
            Assert.Equal(job.Steps.Where(s => s.Value.End is not null).Select(s => s.Key).Order(Comparer<StepKey>.Create((a, b) => string.CompareOrdinal(a.Step, b.Step))),
                again.Steps.Where(s => s.Value.End is not null).Select(s => s.Key).Order(Comparer<StepKey>.Create((a, b) => string.CompareOrdinal(a.Step, b.Step))));
            Assert.NotNull(walk.Offer);
        }, iter: 3000);
    }
}
