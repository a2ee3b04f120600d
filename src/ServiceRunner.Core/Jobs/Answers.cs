using System.Globalization;
using ServiceRunner.Core.Lubricants;
using ServiceRunner.Core.Procedures;
using ServiceRunner.Core.Quantities;
using ServiceRunner.Core.Workshops;

namespace ServiceRunner.Core.Jobs;

/// <summary>Reads what was answered to a question into events and the deviations that lie in it.</summary>
internal static class Answers
{
    private static readonly HashSet<string> SaysNothing = new(StringComparer.OrdinalIgnoreCase) { "yes", "y", "ok", "okay", "done", "checked", "set", "sure", "yep", "no", "n" };

    /// <summary>Adds to <paramref name="events"/> and <paramref name="deviations"/>, or says why not.</summary>
    public static Rejection? Read(Ask ask, AnswerValue value, string reason, Circumstances at, List<JobEvent> events, List<JobEvent.DeviationNoted> deviations)
    {
        string text = value switch { AnswerValue.Chosen c => c.Choice, AnswerValue.Typed t => t.Text.Trim(), _ => "" };
        if (text.Length == 0 && value is not AnswerValue.Served) return new Rejection.NothingTyped();
        if (value is AnswerValue.Chosen && !ask.Choices.Contains(text)) return new Rejection.NotAChoice(ask, text);
        switch (ask)
        {
            case Ask.Examine examine:
                Examined(examine, text, at, events);
                return null;
            case Ask.Confirm confirm:
                if (confirm.Facet.Choices.Count > 0 && !confirm.Facet.Choices.Contains(text)) return new Rejection.NotAChoice(ask, text);
                if (confirm.Facet.Choices.Count == 0 && SaysNothing.Contains(text.TrimEnd('.', '!'))) return new Rejection.OnlyYes(ask, text);
                events.Add(new JobEvent.Confirmed(ask.Step, confirm.Facet.Ask, text));
                return null;
            case Ask.Measure measure:
                return Measured(measure, value, text, reason, at, events, deviations);
            case Ask.Count count:
                return Counted(count, text, reason, events, deviations);
            case Ask.Rate rate:
                return RateTaken(rate, text, events);
            case Ask.Renewal renewal:
                if (Ask.Renewal.Answers.FirstOrDefault(a => a.Word == text) is not { Word: not null } origin) return new Rejection.NotAChoice(ask, text);
                events.Add(new JobEvent.PartRenewed(ask.Step, renewal.Part, origin.Origin, ""));
                return null;
            case Ask.Oil oil:
                return Served(oil, value, reason, at, events, deviations);
            case Ask.StaysDry dry:
                SeenDry(dry, text, at, events);
                return null;
            case Ask.Estimate:
                events.Add(new JobEvent.EstimateNoted(ask.Step, text));
                return null;
            case Ask.Consent:
                events.Add(new JobEvent.ConsentNoted(ask.Step, text));
                return null;
            case Ask.Witness:
                if (string.Equals(text, at.By, StringComparison.OrdinalIgnoreCase)) return new Rejection.SamePerson(text);
                events.Add(new JobEvent.Witnessed(ask.Step, text));
                return null;
            default:
                throw new InvalidOperationException($"no answer for {ask.GetType().Name}");
        }
    }

    // What is not as one hopes is a finding by itself; nobody has to note it twice.
    private static void Examined(Ask.Examine ask, string seen, Circumstances at, List<JobEvent> events)
    {
        events.Add(new JobEvent.Examined(ask.Step, ask.Facet.Spot, seen));
        if (seen == ask.Facet.Choices[0].Value) return;
        string part = ask.Facet.Part?.Value ?? (at.Plan.Part(ask.Facet.Spot) is null ? "" : ask.Facet.Spot);
        events.Add(new JobEvent.FindingNoted(at.ActionId, ask.Facet.Spot, part, seen, Weight.Service, Sureness.Seen));
    }

    // Whatever is not "all dry" says which one is not, or only that one is not: a finding either way.
    private static void SeenDry(Ask.StaysDry ask, string seen, Circumstances at, List<JobEvent> events)
    {
        bool dry = seen == Ask.StaysDry.AllDry;
        events.Add(new JobEvent.DrynessSeen(ask.Step, [.. ask.Points.Select(p => p.Id.Value)], dry));
        if (!dry) events.Add(new JobEvent.FindingNoted(at.ActionId, "must-stay-dry", "", seen, Weight.Service, Sureness.Seen));
    }

    private static Rejection? Measured(Ask.Measure ask, AnswerValue value, string text, string reason, Circumstances at, List<JobEvent> events, List<JobEvent.DeviationNoted> deviations)
    {
        MeasureFacet facet = ask.Facet;
        if (value is AnswerValue.Chosen || (facet.OrFelt.Contains(text) && value is AnswerValue.Typed))
        {
            events.Add(new JobEvent.Felt(ask.Step, facet.What, text));
            if (text != facet.OrFelt[0]) events.Add(new JobEvent.FindingNoted(at.ActionId, facet.What, "", text, Weight.Service, Sureness.Seen));
            return null;
        }
        if (TypedNumber.Read(WithoutUnit(text, facet.Unit), out TypedNumber number) is not TypedNumber.Fault.None and var fault) return new Rejection.NotANumber(ask, text, fault);
        events.Add(new JobEvent.Measured(ask.Step, facet.What, number, facet.Unit, facet.AtLeast, facet.AtMost) { Instrument = at.InstrumentFor(facet.Unit)?.Id.Value ?? "" });
        if (facet.Accepts(number.Value)) return null;
        string figures = Figures(number, facet.Unit, facet.AtLeast, facet.AtMost);
        deviations.Add(new JobEvent.DeviationNoted(Deviation.MeasureOutside, ask.Step, $"{facet.What.Value}: {figures}", reason));
        events.Add(new JobEvent.FindingNoted(at.ActionId, facet.What, "", figures, Weight.Service, Sureness.Seen));
        return null;
    }

    private static Rejection? Counted(Ask.Count ask, string text, string reason, List<JobEvent> events, List<JobEvent.DeviationNoted> deviations)
    {
        CountFacet facet = ask.Facet;
        if (TypedNumber.Read(WithoutUnit(text, facet.Unit), out TypedNumber number) is not TypedNumber.Fault.None and var fault) return new Rejection.NotANumber(ask, text, fault);
        if (number.Value < 0) return new Rejection.NumberOutOfSense(ask, text);
        events.Add(new JobEvent.Counted(ask.Step, facet.What, number, facet.Unit, facet.AtLeast, facet.AtMost));
        if (!facet.Accepts(number.Value))
            deviations.Add(new JobEvent.DeviationNoted(Deviation.MeasureOutside, ask.Step, $"{facet.What.Value}: {Figures(number, facet.Unit, facet.AtLeast, facet.AtMost)}", reason));
        return null;
    }

    // "+4", "+4 285", "+4 285 0.2": rate in s/d, amplitude in degrees, beat error in ms.
    private static Rejection? RateTaken(Ask.Rate ask, string text, List<JobEvent> events)
    {
        string[] words = text.Split([' ', ';', '/', '\t'], StringSplitOptions.RemoveEmptyEntries);
        if (words.Length is 0 or > 3) return new Rejection.NotANumber(ask, text, TypedNumber.Fault.NotANumber);
        TypedNumber?[] numbers = new TypedNumber?[3];
        for (int i = 0; i < words.Length; i++)
        {
            if (TypedNumber.Read(words[i], out TypedNumber number) is not TypedNumber.Fault.None and var fault) return new Rejection.NotANumber(ask, words[i], fault);
            if (i > 0 && number.Value < 0 || i == 1 && number.Value > 360) return new Rejection.NumberOutOfSense(ask, words[i]);
            numbers[i] = number;
        }
        events.Add(new JobEvent.RateTaken(ask.Step, ask.AfterHours, ask.Position, numbers[0]!.Value, numbers[1], numbers[2]));
        return null;
    }

    private static Rejection? Served(Ask.Oil ask, AnswerValue value, string reason, Circumstances at, List<JobEvent> events, List<JobEvent.DeviationNoted> deviations)
    {
        if (value is not AnswerValue.Served served) return new Rejection.NothingTyped();
        // A shelf that is not written down yet must not stop the work: the role itself stands for the lubricant.
        if (at.Workshop.Lubricants.FirstOrDefault(l => l.Id.Value == served.Lubricant) is { } lubricant)
            deviations.AddRange(PointConcern.Of(ask.Point, lubricant, served.Batch, at).Select(c => new JobEvent.DeviationNoted(c.Kind, ask.Step, c.Brief(ask.Point), reason)));
        else if (served.Lubricant != ask.Point.Role.Value) return new Rejection.NoSuchLubricant(served.Lubricant);
        events.Add(new JobEvent.PointServed(ask.Step, ask.Point.Id, ask.Point.Role, served.Lubricant, served.Batch));
        return null;
    }

    /// <summary>A point entered afterwards: with what the bench has for its role, and what spoke against that on the day.</summary>
    public static IEnumerable<JobEvent> ServedAfterwards(Ask.Oil ask, Lubricant lubricant, DateTimeOffset when, Circumstances at)
    {
        string batch = at.BatchOf(lubricant.Id);
        return [
            .. PointConcern.Of(ask.Point, lubricant, batch, at, DateOnly.FromDateTime(when.Date)).Select(c => new JobEvent.DeviationNoted(c.Kind, ask.Step, c.Brief(ask.Point), "")),
            new JobEvent.PointServed(ask.Step, ask.Point.Id, ask.Point.Role, lubricant.Id, batch)];
    }

    private static string WithoutUnit(string text, string unit) =>
        unit.Length > 0 && text.EndsWith(unit, StringComparison.Ordinal) ? text[..^unit.Length] : text;

    private static string Figures(TypedNumber number, string unit, decimal? atLeast, decimal? atMost)
    {
        string limits = (atLeast, atMost) switch
        {
            ({ } low, { } high) when low == high => string.Create(CultureInfo.InvariantCulture, $"expected {low}"),
            ({ } low, { } high) => string.Create(CultureInfo.InvariantCulture, $"limits {low} to {high}"),
            ({ } low, null) => string.Create(CultureInfo.InvariantCulture, $"at least {low}"),
            (null, { } high) => string.Create(CultureInfo.InvariantCulture, $"at most {high}"),
            _ => "no limits",
        };
        return $"{number.AsTyped} {unit}".TrimEnd() + $", {limits}";
    }
}
