using ServiceRunner.Core.Jobs;
using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Files.Sentences;

/// <summary>An answer to a question of a step, for the screen and for both reports.</summary>
/// <param name="Asked">What was asked, or looked at, or measured.</param>
/// <param name="Answer">The answer, with its unit.</param>
/// <param name="Limits">Limits in brackets after a space, or nothing.</param>
/// <param name="Kind">What was asked for.</param>
public sealed record AnswerLine(string Asked, string Answer, string Limits, AnswerKind Kind)
{
    /// <summary>True if it is a figure outside its limits.</summary>
    public bool Outside { get; init; }

    /// <summary>With which instrument, after a comma, or nothing.</summary>
    public string With { get; init; } = "";

    /// <summary>Question and answer in one line.</summary>
    public string Sentence => Kind switch
    {
        AnswerKind.Confirmed => $"{Asked} {Answer}",
        AnswerKind.Left => $"Left open: {Asked}",
        _ => $"{Asked}: {Answer}{Limits}{With}",
    };

    /// <summary>The answer that an event is, with its step; null if it is none. Points and rates have lines of their own.</summary>
    public static (StepRef Step, AnswerLine Line)? Of(JobEvent e, Core.Workshops.Workshop workshop) => e switch
    {
        JobEvent.Confirmed x => (x.Step, new AnswerLine(x.Ask, x.Answer, "", AnswerKind.Confirmed)),
        JobEvent.Examined x => (x.Step, Stated(AskWords.Spoken(x.Spot), x.Choice)),
        JobEvent.Measured x => (x.Step, Figure(x.What, x.Value, x.Unit, x.AtLeast, x.AtMost) with { With = x.Instrument.Length > 0 ? $", with {InstrumentWords.Name(x.Instrument, workshop)}" : "" }),
        JobEvent.Felt x => (x.Step, Stated(AskWords.Spoken(x.What), $"felt {x.Choice}")),
        JobEvent.Counted x => (x.Step, Figure(x.What, x.Value, x.Unit, x.AtLeast, x.AtMost)),
        JobEvent.EstimateNoted x => (x.Step, Stated("Estimate", x.Text)),
        JobEvent.ConsentNoted x => (x.Step, Stated("The owner's answer", x.Text)),
        JobEvent.DrynessSeen x => (x.Step, Stated("Must stay dry", x.AllDry ? "all dry" : "one was not")),
        JobEvent.Witnessed x => (x.Step, Stated("Second person", x.Initials)),
        JobEvent.AskLeft x => (x.Step, new AnswerLine(AskWords.Spoken(x.Ask.Split(':')[^1]), "", "", AnswerKind.Left)),
        _ => null,
    };

    private static AnswerLine Stated(string asked, string answer) => new(asked, answer, "", AnswerKind.Stated);

    private static AnswerLine Figure(string what, TypedNumber value, string unit, decimal? atLeast, decimal? atMost) =>
        new(AskWords.Spoken(what), $"{value} {unit}", AskWords.Limits(atLeast, atMost, unit), AnswerKind.Stated) { Outside = value.Value < atLeast || value.Value > atMost };
}

/// <summary>What a question asked for.</summary>
public enum AnswerKind
{
    /// <summary>Something to confirm: the question is a sentence.</summary>
    Confirmed,

    /// <summary>A look, a figure, a feeling, a word.</summary>
    Stated,

    /// <summary>It was left without an answer.</summary>
    Left,
}
