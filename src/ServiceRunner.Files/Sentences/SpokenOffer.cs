using ServiceRunner.Core.Jobs;
using ServiceRunner.Core.Procedures;
using ServiceRunner.Core.Quantities;
using ServiceRunner.Core.Workshops;

namespace ServiceRunner.Files.Sentences;

/// <summary>What is said aloud when something else comes to hand: for eyes at the loupe, so the caution comes first and all is short.</summary>
public static class SpokenOffer
{
    /// <summary>Names what is at hand; while it stays the same, nothing is said again.</summary>
    public static string Key(Offer offer) => $"{offer.GetType().Name} {offer.About?.Key} {(offer as Offer.Answer)?.Ask.Key} {(offer as Offer.Fact)?.Question.Fact}";

    /// <summary>The text; empty if there is nothing to say.</summary>
    /// <param name="offer">What is at hand.</param>
    /// <param name="job">The job.</param>
    /// <param name="workshop">The workshop, for the names of jars and lubricants.</param>
    /// <param name="now">The moment.</param>
    public static string Text(Offer offer, Job job, Workshop workshop, Moment now) => offer switch
    {
        Offer.Start => $"Job {job.Number}. Go on to begin.",
        Offer.Resume => "Interrupted. Look at what lies before you, then go on.",
        Offer.Restart x => $"{JobWords.Of(x.Phase)}.",
        Offer.Fact x => $"{x.Question.Ask} {Times.List(x.Question.Answers)}.",
        Offer.Answer x when job.Steps.GetValueOrDefault(x.Step.Key) is { End: null, Answered.Count: > 0 } => Question(x.Ask),
        Offer.Answer x => $"{Act(x.Step.Step)} {Question(x.Ask)}",
        Offer.Begin { JarIsTaken: true } x => $"{Act(x.Step.Step)} {JobWords.Jar(workshop, x.Jar)} has a basket in it.",
        Offer.Begin x => $"{Act(x.Step.Step)} {(x.Jar.Length > 0 ? $"{JobWords.Jar(workshop, x.Jar)}, " : "")}{Times.Length(x.Facet.Window.Aim)}. {(PartWords.Count(x) is { Length: > 0 } count ? $"{count}. " : "")}Go on to start the clock.",
        Offer.End x => $"{OfferWords.Ready(x, workshop)}. Go on when it is out.",
        Offer.Wait x => $"Wait for {JobWords.Clock(x.Soak.Begun, workshop)}: {Times.Clock(x.Soak.Window.Aim - x.Soak.Length(now).Length)} more.",
        Offer.Do x => Act(x.Step.Step),
        Offer.Stuck x => $"{x.Step.Step.Do} cannot be done yet.",
        Offer.Close => "Every step is settled.",
        _ => "",
    };

    private static string Act(Step step) => string.Concat(step.Cautions.Select(c => $"Caution: {Cautions.Short(c)}. ")) + step.Do + ".";

    private static string Question(Ask ask) => ask switch
    {
        Ask.Examine x => $"{AskWords.Question(ask)} Go on if {x.Facet.Choices[0].Value}.",
        Ask.Measure { Facet.OrFelt: [var felt, ..] } => $"{AskWords.Question(ask)} Go on if it feels {felt}.",
        Ask.Oil => $"{AskWords.Question(ask)}.",
        Ask.StaysDry => $"{AskWords.Question(ask)} {Times.List(ask.Choices)}.",
        Ask.Confirm { Facet.Choices.Count: > 0 } => $"{AskWords.Question(ask)} {Times.List(ask.Choices)}.",
        _ => $"{AskWords.Question(ask)} It wants an answer.",
    };
}
