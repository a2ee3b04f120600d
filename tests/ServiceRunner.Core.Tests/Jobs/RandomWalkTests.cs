using CsCheck;
using ServiceRunner.Core.Jobs;

namespace ServiceRunner.Core.Tests.Jobs;

/// <summary>From any order of actions the ledgers still hold.</summary>
public class RandomWalkTests
{
    private static readonly string[] Steps = [.. Sample.Plan.Steps.Select(s => s.Key.Step)];

    private static readonly Gen<JobAction> Actions = Gen.Select(Gen.Int[0, 19], Gen.Int[0, Steps.Length - 1], Gen.Int[0, 4]).Select((kind, step, part) =>
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
            11 => new JobAction.NoteFinding(name, name, "worn", (Weight)(step % 3), Sureness.Seen),
            12 => new JobAction.DecideFinding(Finding(step), (Verdict)part, ""),
            13 => new JobAction.BringIn(Finding(step), name, Walk.Repair, new Dictionary<string, string>()),
            14 => new JobAction.Do(new StepRef("2", new[] { "soften", "out", "in", "true", "out" }[part], 1), "r"),
            15 => new JobAction.RenewPart(name, (Origin)(step % 4), ""),
            16 => new JobAction.AddPart($"Ring {step}", part % 2 == 0 ? "" : "E1", 1, part),
            17 => new JobAction.WashAgain(name),
            18 => part % 2 == 0 ? new JobAction.Hold(HoldFor.Part, "a part", "covered", null) : new JobAction.Restart(part == 1 ? [] : [name]),
            19 => new JobAction.TakeAnswer([Finding(step)], [], Means.Telephone, new DateOnly(2026, 3, 1), ""),
            10 => part % 2 == 0 ? new JobAction.Pause("") : new JobAction.Resume(),
            _ => new JobAction.TakeBack(step + 1),
        });
    });

    // Ids of actions are given in turn: a5 is the fifth thing asked of the walk, if it was a finding.
    private static string Finding(int step) => $"a{step + 3}";

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
            Plan plan = walk.Plan;
            Owed owed = Owed.Of(job, plan);
            Assert.Equal(plan.InForce(job).Count(), plan.InForce(job).Count(s => job.IsSettled(s.Key)) + owed.Steps.Count);
            // Every part is in one place: on, or owed, or replaced, or on the bench for good; none is in two baskets, and none in a basket of nothing.
            Assert.Equal(plan.Parts.Count, plan.Parts.Count(p => job.PlaceOf(p.Id) is PartPlace.OnMovement or PartPlace.Replaced || p.Stays && job.PlaceOf(p.Id) is PartPlace.InTray) + owed.Parts.Count);
            Assert.All(job.Parts.Keys, p => Assert.NotNull(plan.Part(p)));
            Assert.All(job.RunningSoaks.SelectMany(s => s.Begun.Parts).GroupBy(p => p), g => Assert.Single(g));
            Assert.Equal(job.Findings.Count, FindingsLedger.Of(job, plan).Count(f => f.IsSettled) + owed.Findings.Count);
            Assert.All(job.Repairs, r => Assert.Contains(job.Findings, f => f.Event.Finding == r.Finding));
            Assert.Equal(plan.Parts.Count, Walk.PlanOf(Fold.All(job.Id, job.Log)!).Parts.Count);
            Job again = Fold.All(job.Id, job.Log)!;
            Assert.Equal(job.Phase.GetType(), again.Phase.GetType());
            Assert.Equal(job.Parts.OrderBy(p => p.Key), again.Parts.OrderBy(p => p.Key));
            Assert.Equal(job.Steps.Where(s => s.Value.End is not null).Select(s => s.Key).Order(Comparer<StepKey>.Create((a, b) => string.CompareOrdinal(a.Step, b.Step))),
                again.Steps.Where(s => s.Value.End is not null).Select(s => s.Key).Order(Comparer<StepKey>.Create((a, b) => string.CompareOrdinal(a.Step, b.Step))));
            Assert.NotNull(walk.Offer);
        }, iter: 3000);
    }
}
