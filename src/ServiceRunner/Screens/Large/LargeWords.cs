using ServiceRunner.Core.Jobs;
using ServiceRunner.Core.Quantities;
using ServiceRunner.Files.Sentences;
using ServiceRunner.Screens.Baths;
using ServiceRunner.Screens.Run;

namespace ServiceRunner.Screens.Large;

/// <summary>What the large view of a job says: what stands before the act, the act, what is asked, what going on does.</summary>
/// <param name="Cautions">Codes of the cautions.</param>
/// <param name="Before">Sentences that stand before the act as cautions do: what speaks against it.</param>
/// <param name="Act">The imperative, or the phase.</param>
/// <param name="Asked">The question at hand, or the one sentence; may be empty.</param>
/// <param name="Choices">Its answers by number.</param>
/// <param name="Going">What going on does; empty if it does nothing, or if a choice is marked with it.</param>
internal sealed record LargeWords(IReadOnlyList<string> Cautions, IReadOnlyList<string> Before, string Act, string Asked, IReadOnlyList<string> Choices, string Going)
{
    /// <summary>Stands before what going on does.</summary>
    public const string On = "→ ";

    public static LargeWords Of(RunModel model, Shell shell)
    {
        if (model.Shown is not { } planned) return OfPhase(model, shell);
        if (model.LooksBack) return new([], [], $"Looking back: {planned.Step.Do}", "", [], $"{On}return");
        if (model.Offer is Offer.Fact fact) return new([], [], fact.Question.Ask, "", Numbered(fact.Question.Answers, ""), "");
        IReadOnlyList<string> cautions = [.. planned.Step.Cautions.Select(c => c.Value)];
        IReadOnlyList<string> against = [.. BathsPage.Renewal(model.Offer, shell) is { Length: > 0 } renewal ? [renewal] : (string[])[], .. model.Against.Select(b => $"Not yet: {RejectionWords.Sentence(b, model.Job.Plan)}"),
            .. model.Concerns.Select(c => $"Mind: {OilWords.Concern(c, shell.Session.Circumstances(model.Job).BenchCelsius)}")];
        string going = OnKey(model, shell);
        return model.Offer switch
        {
            Offer.End x => new(cautions, against, OfferWords.TakeOut(x, shell.Session.Workshop), "", [], going),
            Offer.Answer { Ask.Choices.Count: > 0 } x => new(cautions, against, planned.Step.Do, AskWords.Question(x.Ask), Numbered(x.Ask.Choices, Hoped(x)), ""),
            Offer.Answer x => new(cautions, against, planned.Step.Do, AskWords.Question(x.Ask), [], going),
            // What speaks against it is said before the act already.
            Offer.Stuck => new(cautions, against, planned.Step.Do, "", [], "g goes to another step"),
            Offer.Begin x when going.Length > 0 && PartWords.Count(x) is { Length: > 0 } count => new(cautions, against, planned.Step.Do, "", [], $"{On}{count}{(x.Jar.Length > 0 ? $" into {JobWords.Jar(shell.Session.Workshop, x.Jar)}" : "")}: start the clock"),
            _ when going.Length > 0 => new(cautions, against, planned.Step.Do, "", [], going),
            _ => new(cautions, against, planned.Step.Do, Nothing(model, shell), [], ""),
        };
    }

    private static LargeWords OfPhase(RunModel model, Shell shell)
    {
        Phase phase = model.Job.State.Phase;
        string named = JobWords.Of(phase);
        (string act, string sentence) = phase switch
        {
            Phase.Running => ("Every step is settled", Nothing(model, shell)),
            Phase.Idle => (named, model.Job.State.What),
            Phase.Paused => (named, model.Settled is [.., var last] ? $"Done last: {last.Step.Do}. Look at what lies before you." : "Look at what lies before you."),
            Phase.Held x => (named, $"{(x.Detail.Length > 0 ? $"{x.Detail}. " : "")}It lies: {x.Condition}. h ends the wait."),
            Phase.Stopped x => (named, x.Reason),
            Phase.Aborted x => (named, x.Reason),
            _ => (named, ""),
        };
        return new([], [], char.ToUpperInvariant(act[0]) + act[1..], sentence, [], OnKey(model, shell));
    }

    private static string OnKey(RunModel model, Shell shell) =>
        OfferWords.Key(model.Offer, shell.Session.Workshop) is { Length: > 0 } key ? On + key : "";

    private static string Nothing(RunModel model, Shell shell) => OfferWords.WhyNothing(model.Offer, shell.Session.Workshop, model.Job.Plan, shell.Session.Now);

    private static string Hoped(Offer.Answer offer) => offer.Act is JobAction.Answer { Value: AnswerValue.Chosen chosen } ? chosen.Choice : "";

    // The arrow stands before the choice that going on takes. Only nine have a key.
    private static IReadOnlyList<string> Numbered(IReadOnlyList<string> choices, string hoped) =>
        [.. choices.Select((c, i) => $"{(c == hoped ? On : "")}{(i < 9 ? $"{i + 1} " : "")}{c}")];
}
