using ServiceRunner.Core.Jobs;
using ServiceRunner.Core.Procedures;
using ServiceRunner.Core.Quantities;
using ServiceRunner.Core.Workshops;

namespace ServiceRunner.Files.Sentences;

/// <summary>What going on would do, in a few words: for the footer, the board and the voice.</summary>
public static class OfferWords
{
    /// <summary>What comes next in the job.</summary>
    public static string Next(Offer offer) => offer switch
    {
        Offer.Fact x => x.Question.Ask,
        Offer.Close => "all steps are settled; to be closed",
        _ => offer.About?.Step.Do ?? "",
    };

    /// <summary>What the going-on key does now; empty if it does nothing.</summary>
    public static string Key(Offer offer, Workshop workshop) => offer switch
    {
        Offer.Start => "begin this job",
        Offer.Resume => "come back to it",
        Offer.Answer { Act: JobAction.Answer { Value: AnswerValue.Chosen c } } x => $"{AskWords.Question(x.Ask).TrimEnd('?')}: {c.Choice}",
        Offer.Answer { Act: JobAction.Answer { Value: AnswerValue.Served s }, Ask: Ask.Oil oil } => $"served: {oil.Point.Name}, {JobWords.Lubricant(workshop, s.Lubricant)}",
        Offer.Answer { Act: JobAction.Leave } => "go on alone",
        Offer.Answer { Ask.Choices.Count: > 0 } => "",
        Offer.Answer => "type the answer",
        Offer.Begin { Act: not null } x => x.Facet is ClockFacet.Wait ? "start the clock" : $"in it goes: start the clock{(x.Jar.Length > 0 ? $" of {JobWords.Jar(workshop, x.Jar)}" : "")}",
        Offer.End x => $"{(x.Soak.Begun.Kind == SoakKind.Wait ? "end" : "out it comes: end")} {JobWords.Clock(x.Soak.Begun, workshop)}",
        Offer.Do => "done",
        _ => "",
    };

    /// <summary>The act when a clock came due: to take out what is in it, not to put it in.</summary>
    public static string TakeOut(Offer.End offer, Workshop workshop) => offer.Soak.Begun.Kind == SoakKind.Wait
        ? $"The time is up: {offer.Step.Step.Do}"
        : $"Take it out: {Ready(offer, workshop)}";

    /// <summary>That a clock came due, or ran longer than it may.</summary>
    public static string Ready(Offer.End offer, Workshop workshop) =>
        $"{JobWords.Clock(offer.Soak.Begun, workshop)} is {(offer.Standing == Standing.Over ? "past its longest" : "ready")}";

    /// <summary>Why going on does nothing now, as a sentence.</summary>
    public static string WhyNothing(Offer offer, Workshop workshop, Plan plan, Moment now) => offer switch
    {
        Offer.Restart x => $"This job is {JobWords.Of(x.Phase)}: h ends the wait.",
        Offer.Fact x => $"{x.Question.Ask} Choose by its number.",
        Offer.Answer x => $"{AskWords.Question(x.Ask)} Choose by its number.",
        Offer.Begin { JarIsTaken: true } x => $"There is a basket in {JobWords.Jar(workshop, x.Jar)} already; end that soak first.",
        Offer.Wait x => $"{JobWords.Clock(x.Soak.Begun, workshop)}: {JobWords.Of(x.Soak.Standing(now), x.Soak.Window, x.Soak.Length(now).Length)}; e ends it now.",
        Offer.Close { Owed.IsNothing: true } => "Every step is settled and nothing is owed: c closes the job.",
        Offer.Close x => $"Every step is settled, but something is owed ({OwedWords(x.Owed, plan)}): c closes it with a reason.",
        Offer.Stuck x => $"'{x.Step.Step.Do}' cannot be done yet: {RejectionWords.Sentence(x.Blockers[0], plan)}. g goes to another step.",
        Offer.Over x => $"This job is {JobWords.Of(x.Phase)}.",
        _ => "",
    };

    /// <summary>What is owed, in words.</summary>
    public static string OwedWords(Owed owed, Plan plan)
    {
        List<string> parts = [];
        if (owed.Steps.Count > 0) parts.Add(Times.Count(owed.Steps.Count, "step"));
        if (owed.Parts.Count > 0) parts.Add(owed.Parts.Count <= 3 ? Times.List(owed.Parts.Select(plan.NameOf)) : Times.Count(owed.Parts.Count, "part"));
        if (owed.Points.Count > 0) parts.Add(Times.Count(owed.Points.Count, "oiling point"));
        if (owed.Soaks.Count > 0) parts.Add(Times.Count(owed.Soaks.Count, "running clock"));
        if (owed.Findings.Count > 0) parts.Add(Times.Count(owed.Findings.Count, "finding"));
        return parts.Count == 0 ? "nothing" : Times.List(parts);
    }
}
