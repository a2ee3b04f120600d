using System.Globalization;
using ServiceRunner.Core.Jobs;
using ServiceRunner.Core.Procedures;
using ServiceRunner.Session;

namespace ServiceRunner.Demo;

/// <summary>
/// Somebody who walks a job by the same offers as a person at the bench, and answers as a plain watch in fair order
/// would have it answered. It invents nothing that the real program would not take.
/// </summary>
internal sealed class DemoRepairer(BenchSession session, DemoTime time, OpenJob job, DemoIntake intake)
{
    // What one would write down, by the step's id. A step that is not here and wants words stops the making.
    private static readonly Dictionary<string, string> Said = new(StringComparer.Ordinal)
    {
        ["luminous-stop"] = "no bag was needed",
        ["open-back"] = "two, scratched; one with a year, 1987",
        ["consent-first"] = "the whole service, by telephone, the day it came in",
        ["let-down"] = "5.5 turns",
        ["stud-free"] = "a little before the second arm, as drawn on the card",
        ["yoke-off"] = "the one with the bevelled teeth",
        ["wind-full"] = "9.5 turns",
        ["crown-seal-new"] = "a new ring of the old one's size",
        ["back-on"] = "27.5 by 0.6",
        ["set-date"] = "the day of hand-over",
        ["hand-over"] = "the owner in person; nothing was replaced",
    };

    /// <summary>Answers that this watch has in store for some questions; a step's id and the answer.</summary>
    public Dictionary<string, string> Sees { get; } = new(StringComparer.Ordinal);

    /// <summary>Goes on until the step is at hand; with null, until every step is settled.</summary>
    public void WalkTo(string? step)
    {
        for (int i = 0; i < 2000; i++)
        {
            Offer offer = Offer.Of(job.State, session.Circumstances(job));
            if (step is not null && offer.About is { } at && at.Step.Id.Value == step) return;
            if (GoOn(offer)) continue;
            if (step is null) return;
            break;
        }
        throw new InvalidOperationException($"the walk did not come to '{step}'");
    }

    /// <summary>Acts, and fails loudly: the invented workshop must never be made up of refusals.</summary>
    public void Act(JobAction action)
    {
        ActOutcome outcome = session.Act(job, action);
        if (!outcome.IsDone) throw new InvalidOperationException($"{action}: {outcome.Sentence(job.Plan, session.Folder.Path)}");
    }

    private bool GoOn(Offer offer)
    {
        switch (offer)
        {
            case Offer.Close or Offer.Over or Offer.Restart or Offer.Stuck:
                return false;
            case Offer.Fact fact:
                Act(new JobAction.AnswerFact(fact.Question.Fact, Sees.GetValueOrDefault(fact.Question.Fact) ?? fact.Question.Answers[0]));
                return true;
            case Offer.Wait wait:
                time.Now += wait.Soak.Window.Aim - wait.Soak.Length(session.Now).Length + TimeSpan.FromSeconds(4);
                return true;
            case Offer.Begin { JarIsTaken: true }:
                throw new InvalidOperationException("a jar is taken");
            case Offer.Answer answer when Sees.TryGetValue(answer.Ask.Key, out string? seen):
                if (Passes(Time(answer.Step.Step, answer.Left)))
                    Act(new JobAction.Answer(answer.Ask.Step, answer.Ask.Key, answer.Ask.Choices.Contains(seen) ? new AnswerValue.Chosen(seen) : new AnswerValue.Typed(seen)));
                return true;
            case Offer.Answer { Act: null } answer:
                if (Passes(Time(answer.Step.Step, answer.Left)))
                    Act(new JobAction.Answer(answer.Ask.Step, answer.Ask.Key, answer.Ask.Choices is [var first, ..] ? new AnswerValue.Chosen(first) : new AnswerValue.Typed(Typed(answer.Ask))));
                return true;
            default:
                if (offer is Offer.End || Passes(offer.About is { } step ? Time(step.Step, 1) : TimeSpan.FromSeconds(10))) Act(offer.Act!);
                return true;
        }
    }

    // Time passes; false if a clock reaches its aim meanwhile, which then comes first.
    private bool Passes(TimeSpan length)
    {
        TimeSpan soonest = job.State.RunningSoaks.Select(s => s.Window.Aim - s.Length(session.Now).Length).DefaultIfEmpty(TimeSpan.MaxValue).Min();
        time.Now += soonest <= length ? soonest + TimeSpan.FromSeconds(4) : length;
        return soonest > length;
    }

    // A step's time is shared out among what it asks.
    private static TimeSpan Time(Step step, int left) => (step.Takes ?? TimeSpan.FromMinutes(1)) / Math.Max(1, left + 1);

    private string Typed(Ask ask) => ask switch
    {
        Ask.Measure { Facet: var f } => Middle(f.AtLeast, f.AtMost),
        Ask.Count { Facet: var f } => Middle(f.AtLeast, f.AtMost),
        Ask.Rate rate => Rate(rate),
        Ask.Witness => session.Workshop.People.First(p => p.Initials.Value != session.Bench.Repairer).Initials,
        Ask.Estimate => "Full service 310; new parts, if any, by a second call",
        Ask.Consent => intake.Limit is { } limit ? string.Create(CultureInfo.InvariantCulture, $"Agreed to all of it by telephone; limit {limit}") : "Agreed to all of it by telephone",
        Ask.Confirm when ask.Step.Step == "hear-owner" => intake.Complaint,
        Ask.Confirm confirm => Said.GetValueOrDefault(ask.Step.Step) ?? throw new InvalidOperationException($"nothing to say to '{confirm.Facet.Ask}' ({ask.Step.Step})"),
        _ => "seen",
    };

    private static string Middle(decimal? low, decimal? high) => ((low, high) switch
    {
        ({ } l, { } h) => (l + h) / 2,
        ({ } l, null) => l + 2,
        (null, { } h) => h / 2,
        _ => 1m,
    }).ToString(CultureInfo.InvariantCulture);

    private static string Rate(Ask.Rate rate)
    {
        int place = rate.Facet.Positions.Select(p => p.Value).ToList().IndexOf(rate.Position);
        decimal later = rate.AfterHours is > 12 ? 1 : 0;
        return string.Create(CultureInfo.InvariantCulture, $"{4 - 2 * place + 3 * later} {(rate.Position.StartsWith("dial", StringComparison.Ordinal) ? 288 : 262) - 22 * later} 0.2");
    }
}
