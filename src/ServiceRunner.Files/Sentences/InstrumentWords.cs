using ServiceRunner.Core.Jobs;
using ServiceRunner.Core.Workshops;

namespace ServiceRunner.Files.Sentences;

/// <summary>With what something is measured.</summary>
public static class InstrumentWords
{
    /// <summary>With which instrument a measure is taken, as a sentence; empty if the workshop has none for its unit.</summary>
    public static string With(string unit, Circumstances at) =>
        !at.Workshop.Instruments.Any(i => i.Measures(unit)) ? ""
        : at.InstrumentFor(unit) is { } instrument ? $"With {instrument.Name}{Checked(instrument, at)}; n another one."
        : "With which instrument is not stated; n says it.";

    /// <summary>What an instrument is called; its id if the workshop has it no more.</summary>
    public static string Name(string id, Workshop workshop) => workshop.Instruments.FirstOrDefault(i => i.Id.Value == id)?.Name ?? AskWords.Spoken(id, capital: false);

    private static string Checked(Instrument instrument, Circumstances at) =>
        instrument.Checked is { } day ? $", last checked {Days.Short(day, at.Now.Day)}" : "";
}
