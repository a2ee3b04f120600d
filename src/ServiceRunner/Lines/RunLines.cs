using ServiceRunner.Core.Jobs;
using ServiceRunner.Core.Procedures;
using ServiceRunner.Files.Sentences;
using ServiceRunner.Screens;
using ServiceRunner.Screens.Large;
using ServiceRunner.Screens.Run;
using ServiceRunner.Session;

namespace ServiceRunner.Lines;

/// <summary>
/// A job as sentences: the stage, the cautions, the act, what is asked with its answers by number, what an empty line
/// does. While the step stays the same, only the question is told anew.
/// </summary>
internal static class RunLines
{
    public static IEnumerable<Telling> Of(RunModel model, Shell shell)
    {
        LargeWords words = LargeWords.Of(model, shell);
        string step = $"{model.Shown?.Key} {model.LooksBack} {words.Act}";
        if (model.Shown is { } shown && !model.LooksBack) yield return new(RunPage.Along(model).Text, model.RepairShown is { } repair ? repair.Title : shown.Stage.Title);
        foreach (string caution in words.Cautions) yield return new($"Caution: {Cautions.Sentence(caution)}", $"{step} {caution}");
        if (words.Cautions.Count > 0) yield return new(Cautions.Defer, step);
        foreach (string against in words.Before) yield return new(against, $"{step} {against}");
        if (model.Against.Count > 0 && model.Offer is not Offer.Stuck) yield return new(RunPage.AllTheSame, $"{step} all the same");
        if (model.Offer is Offer.Fact fact && !model.LooksBack)
        {
            yield return new($"{fact.Question.Ask} {Numbered(fact.Question.Answers)}", step);
            yield break;
        }
        // The head has said the rest of a job that is not begun.
        bool idle = model.Job.State.Phase is Phase.Idle;
        if (!idle) yield return new(words.Act, step);
        if (model.LooksBack)
            foreach (string done in RunPage.DoneWords(model.Shown!, model.Job.State, model.Job.Plan, shell)) yield return new(done, $"{step} {done}");
        if (!idle)
            foreach (Telling asked in Asked(model, words, shell)) yield return asked;
        if (Going(model, words) is { Length: > 0 } going) yield return new(going, $"{model.Topic} {going}");
    }

    private static IEnumerable<Telling> Asked(RunModel model, LargeWords words, Shell shell)
    {
        if (words.Asked.Length == 0) yield break;
        IReadOnlyList<string> choices = model.Offer is Offer.Answer x ? x.Ask.Choices : [];
        yield return new($"{words.Asked} {Numbered(choices)}".Trim(), $"{model.Topic} {(model.Offer is Offer.Answer ? words.Asked : "")}");
        if (model.Offer is Offer.Answer { Ask: Ask.Oil oil }) yield return OilWords.Serving(oil.Point, model.Job.Plan, shell.Session.Circumstances(model.Job));
    }

    private static string Going(RunModel model, LargeWords words) => model switch
    {
        { LooksBack: true } => "Enter: return",
        { Offer: Offer.Answer { Ask.Choices: { Count: > 0 } choices, Act: JobAction.Answer { Value: AnswerValue.Chosen chosen } } }
            when choices.ToList().IndexOf(chosen.Choice) is >= 0 and var at => $"Enter: {at + 1}, {chosen.Choice}",
        { Offer: Offer.Answer { Ask.Choices.Count: > 0 } } => "",
        _ => words.Going.StartsWith(LargeWords.On, StringComparison.Ordinal) ? $"Enter: {words.Going[LargeWords.On.Length..]}" : words.Going,
    };

    /// <summary>Answers by their numbers.</summary>
    public static string Numbered(IReadOnlyList<string> choices) => choices.Count == 0 ? "" : $"{string.Join(", ", choices.Select((c, i) => $"{i + 1} {c}"))}.";

    /// <summary>How and why, what the step moves and needs, what else it asks, the clocks, and what comes then.</summary>
    public static IEnumerable<Telling> More(RunModel model, Shell shell)
    {
        if (model.Shown is not { } planned)
        {
            foreach (string row in SheetWords.Rows(model)) yield return row;
            yield break;
        }
        Step step = planned.Step;
        if (step.How.Length > 0) yield return step.How;
        if (step.Why.Length > 0) yield return $"Why: {step.Why}";
        foreach ((string name, string text) in RunPage.Facts(planned, model.Job.State, model.Job.Plan, shell)) yield return $"{name}: {text}";
        if (!model.LooksBack)
            foreach (Ask ask in Ask.Open(model.Job.State, planned, model.Job.Plan).Skip(model.Offer is Offer.Answer ? 1 : 0)) yield return $"Asked later: {AskWords.Question(ask)}";
        if (model.Offer is Offer.Answer { Ask: Ask.Measure measure } && !model.LooksBack && InstrumentWords.With(measure.Facet.Unit, shell.Session.Circumstances(model.Job)) is { Length: > 0 } with) yield return with;
        if (model.Offer is Offer.Answer { Ask: { Typable: true } at } && !model.LooksBack) yield return $"v types it. {AskWords.Form(at)}";
        foreach (Telling clock in ClockLines.Of(shell)) yield return clock;
        if (model.Then is { } then) yield return $"Then: {then.Step.Do}";
    }
}
