using System.Globalization;
using ServiceRunner.Core.Jobs;
using ServiceRunner.Session;

namespace ServiceRunner.Benchmarks.Logs;

/// <summary>
/// Walks a job by its offers, one action at a time, for as long as one likes: when all steps are settled, they are taken
/// up once more. Every so often a finding is noted or a part moved, as at a bench.
/// </summary>
internal sealed class Repairer(MadeBench bench, OpenJob job)
{
    private readonly Queue<StepKey> _again = [];
    private int _acts;

    /// <summary>True when every step is settled and nothing was taken up again.</summary>
    public bool IsThrough => _again.Count == 0 && Offer.Of(job.State, bench.Session.Circumstances(job)) is Offer.Close;

    /// <summary>The next action, which the real rules will take.</summary>
    public JobAction Next()
    {
        bench.Time.Now += TimeSpan.FromSeconds(20);
        if (++_acts % 40 == 0) return new JobAction.NoteFinding("fourth-wheel", "fourth-wheel", "a little wear, as an earlier hand left it", Weight.Service, Sureness.Seen);
        if (_acts % 40 == 20 && job.State.Phase is Phase.Running) return new JobAction.NoteDeviation(null, "another tool was at hand");
        while (true)
        {
            if (_again.TryDequeue(out StepKey key)) return new JobAction.Again(key);
            Offer offer = Offer.Of(job.State, bench.Session.Circumstances(job));
            if (offer is Offer.Wait wait) bench.Time.Now += wait.Soak.Begun.Window.Aim - wait.Soak.Length(bench.Session.Now).Length + TimeSpan.FromSeconds(1);
            else if (offer is Offer.Close) TakeUpAgain();
            else return ActionOf(offer);
        }
    }

    private void TakeUpAgain()
    {
        foreach (PlannedStep step in job.Plan.InForce(job.State)) _again.Enqueue(step.Key);
    }

    private JobAction ActionOf(Offer offer) => offer switch
    {
        Offer.Fact x => new JobAction.AnswerFact(x.Question.Fact, x.Question.Answers[0]),
        Offer.Stuck x => new JobAction.Skip(job.State.At(x.Step.Key), "something stands against it"),
        { Act: { } act } => act,
        Offer.Answer { Ask: var ask } => new JobAction.Answer(ask.Step, ask.Key, ask.Choices is [var first, ..] ? new AnswerValue.Chosen(first) : new AnswerValue.Typed(Typed(ask))),
        _ => throw new InvalidOperationException($"nothing to do at {offer}"),
    };

    private static string Typed(Ask ask) => ask switch
    {
        Ask.Measure { Facet: var f } => Middle(f.AtLeast, f.AtMost),
        Ask.Count { Facet: var f } => Middle(f.AtLeast, f.AtMost),
        Ask.Rate => "+4 280 0.2",
        Ask.Witness => "TB",
        _ => "two, scratched; one with a year",
    };

    private static string Middle(decimal? low, decimal? high) =>
        ((low, high) is ({ } l, { } h) ? (l + h) / 2 : low + 2 ?? high / 2 ?? 1m).ToString(CultureInfo.InvariantCulture);
}
