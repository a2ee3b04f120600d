using ServiceRunner.Core.Jobs;
using ServiceRunner.Core.Procedures;
using ServiceRunner.Files.Procedures;
using ServiceRunner.Session;

namespace ServiceRunner.Tests.Screens;

/// <summary>Everything shipped is exercised: each procedure is walked to its end on the screen and owes nothing.</summary>
public class ShippedProceduresTests
{
    public static TheoryData<string> Procedures
    {
        get
        {
            TheoryData<string> ids = [];
            foreach (LibraryEntry entry in ServiceRunner.Verbs.House.LibraryOf(null).List().Where(e => !e.ToBeTakenIn)) ids.Add(entry.Id);
            return ids;
        }
    }

    [Theory]
    [MemberData(nameof(Procedures))]
    public void Walked_to_its_end_it_owes_nothing_and_makes_no_deviation(string procedure)
    {
        using PaperBench bench = new PaperBench().WithJob(procedure: procedure);
        bench.ToEnd();
        Offer.Close close = Assert.IsType<Offer.Close>(bench.Run.Offer);
        Assert.True(close.Owed.IsNothing, close.Owed.ToString());
        Assert.Empty(bench.Job.Deviations);
        bench.Keys("c");
        Assert.IsType<Phase.Complete>(bench.Job.Phase);
    }

    [Theory]
    [MemberData(nameof(Procedures))]
    public void Whatever_is_answered_about_it_it_owes_nothing_and_makes_no_deviation(string procedure)
    {
        foreach (JobQuestion question in ServiceRunner.Verbs.House.LibraryOf(null).Read(procedure)!.Procedure!.Asks)
        {
            foreach (string answer in question.Answers.Skip(1))
            {
                using PaperBench bench = new PaperBench().WithJob(procedure: procedure);
                Assert.True(bench.Session.Act(bench.Run.Job, new JobAction.AnswerFact(question.Fact, answer)).IsDone);
                bench.ToEnd();
                Offer.Close close = Assert.IsType<Offer.Close>(bench.Run.Offer);
                Assert.True(close.Owed.IsNothing, $"{question.Ask} {answer}: {close.Owed}");
                Assert.Empty(bench.Job.Deviations);
            }
        }
    }

    [Fact]
    public void The_service_of_a_wrist_movement_is_what_was_promised()
    {
        Procedure procedure = ServiceRunner.Verbs.House.LibraryOf(null).Read("wrist-hand-wound-17-jewels")!.Procedure!;
        Assert.Equal(17, procedure.Parts.Sum(p => p.Jewels * p.Count));
        Assert.True(procedure.Steps.Count() >= 80);
        Assert.True(procedure.OilingPoints.Count(p => !p.MustStayDry) >= 25);
        Assert.All(procedure.OilingPoints.Where(p => !p.MustStayDry), p => Assert.True(p.On is not null && p.When is not null && p.Amount.Length > 0, p.Name));
        Assert.Contains(procedure.Steps, s => s.Rates is { Positions.Count: >= 5 });
    }

    [Fact]
    public void Every_word_of_the_closed_lists_has_a_sentence()
    {
        foreach (string caution in Vocabulary.Cautions) Assert.NotEqual(caution, Files.Sentences.Cautions.Sentence(caution));
        foreach (string kind in Deviation.Kinds) Assert.NotEqual(kind, Files.Sentences.JobWords.DeviationKind(kind));
    }
}
