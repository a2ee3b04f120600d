using System.Globalization;
using ServiceRunner.Core.Jobs;
using ServiceRunner.Core.Procedures;

namespace ServiceRunner.Files.Sentences;

/// <summary>What a step asks, as a question; what an answer looks like.</summary>
public static class AskWords
{
    /// <summary>The question, in one line.</summary>
    public static string Question(Ask ask) => ask switch
    {
        Ask.Confirm x => x.Facet.Ask,
        Ask.Examine x => $"{Spoken(x.Facet.Spot)}?",
        Ask.Measure x => $"{Spoken(x.Facet.What)}{InUnit(x.Facet.Unit)}{Limits(x.Facet.AtLeast, x.Facet.AtMost, x.Facet.Unit)}?",
        Ask.Count x => $"{Spoken(x.Facet.What)}{InUnit(x.Facet.Unit)}{Limits(x.Facet.AtLeast, x.Facet.AtMost, x.Facet.Unit)}?",
        Ask.Rate x => $"Rate {Spoken(x.Position, capital: false)}{(x.AfterHours is { } h ? string.Create(CultureInfo.InvariantCulture, $", {h} h after winding") : "")}?",
        Ask.Oil x => $"{x.Point.Name}: {JobWords.Role(x.Point.Role)}{(x.Point.Amount.Length > 0 ? $", {x.Point.Amount}" : "")}",
        Ask.Renewal x => "Where does the new piece come from?",
        Ask.StaysDry x => $"Stayed dry: {Times.List(x.Points.Select(p => p.Name))}?",
        Ask.Estimate x => $"Estimate: {x.What}",
        Ask.Consent x => $"The owner's answer: {x.What}",
        Ask.Witness x => $"Second person (initials): {x.What}",
        _ => throw new InvalidOperationException($"no question for {ask.GetType().Name}"),
    };

    /// <summary>What an answer looks like, as a sentence.</summary>
    public static string Form(Ask ask) => ask switch
    {
        Ask.Rate => "Type rate, amplitude and beat error, as +4 285 0.2; the last two may be left out.",
        Ask.Measure { Facet.Unit.Length: > 0 } x => $"Type the figure in {x.Facet.Unit}, as 0.04 or 0,04.",
        Ask.Measure x => $"Choose: {Times.List(x.Facet.OrFelt)}.",
        Ask.Count => "Type the figure, as 6 or 6.5.",
        Ask.StaysDry => "Type which one is not, and what is there.",
        _ => "Type what you see.",
    };

    /// <summary>An id as words: <c>balance-hole-jewels</c> → <c>Balance hole jewels</c>.</summary>
    public static string Spoken(string id, bool capital = true)
    {
        string words = id.Replace('-', ' ');
        return capital && words.Length > 0 ? char.ToUpperInvariant(words[0]) + words[1..] : words;
    }

    /// <summary>Limits in brackets, or nothing.</summary>
    public static string Limits(decimal? atLeast, decimal? atMost, string unit) => (atLeast, atMost) switch
    {
        ({ } low, { } high) when low == high => string.Create(CultureInfo.InvariantCulture, $" ({low})"),
        ({ } low, { } high) => string.Create(CultureInfo.InvariantCulture, $" ({low} to {high} {unit}").TrimEnd() + ")",
        ({ } low, null) => string.Create(CultureInfo.InvariantCulture, $" (at least {low} {unit}").TrimEnd() + ")",
        (null, { } high) => string.Create(CultureInfo.InvariantCulture, $" (at most {high} {unit}").TrimEnd() + ")",
        _ => "",
    };

    private static string InUnit(string unit) => unit.Length > 0 ? $", {unit}" : "";
}
