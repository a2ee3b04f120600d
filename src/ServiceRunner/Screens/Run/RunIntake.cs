using ServiceRunner.Core.Jobs;
using ServiceRunner.Core.Procedures;
using ServiceRunner.Files.Sentences;
using ServiceRunner.Screens.Intake;
using ServiceRunner.Screens.Pick;
using ServiceRunner.Session;

namespace ServiceRunner.Screens.Run;

public sealed partial class RunModel
{
    private IEnumerable<ScreenAction> IntakeActions =>
    [
        ScreenAction.Always("i", "the intake", "Shows what was noted as it came in: owner, serial, promised day, limit; each can be changed.", () => Shell.Go(new IntakeModel(Shell, Job)), 21),
        new(["w"], "answers given", "Lists what was answered about the movement and lets an answer be changed; what that does to the steps is said first.",
            () => Over.Length > 0 ? Over : AnsweredFacts.Count == 0 ? "Nothing was asked about this job yet." : "", ChooseAnswer, 65),
        new(["t"], "receipt and label", "Writes receipt and label for a printer, and says where.", () => Session.ReadsOnly ? Slips.Print(Session, State).Sentence : "", PrintSlips, 66),
    ];

    private IReadOnlyList<JobQuestion> AnsweredFacts => [.. State.Facts.Keys.Order(StringComparer.Ordinal).Select(Job.Plan.Question).OfType<JobQuestion>()];

    private void ChooseAnswer() => Shell.Choose("Change which answer?", [.. AnsweredFacts.Select(q => new Choice($"{AskWords.Spoken(q.Fact)}: {State.Facts[q.Fact]}", q.Ask, () => ChooseAnswer(q)))]);

    private void ChooseAnswer(JobQuestion question)
    {
        string now = State.Facts[question.Fact];
        Shell.Choose($"{AskWords.Spoken(question.Fact)}, until now {now}: change to what?", [.. question.Answers.Where(a => a != now).Select(a =>
        {
            string effect = IntakeWords.Sentence(FactChange.Of(State, Job.Plan, question.Fact, a));
            return new Choice(a, effect, () => Act(new JobAction.AnswerFact(question.Fact, a), $"Changed to {a}. {effect}"));
        })]);
    }

    private void PrintSlips()
    {
        (bool done, string sentence) = Slips.Print(Session, State);
        Shell.Say(sentence, refusal: !done);
    }
}
