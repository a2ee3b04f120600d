using System.Globalization;
using ServiceRunner.Core.Jobs;
using ServiceRunner.Core.Lubricants;
using ServiceRunner.Core.Procedures;
using ServiceRunner.Core.Workshops;

namespace ServiceRunner.Files.Sentences;

/// <summary>Lubricants, bottles and points as a repairer reads them.</summary>
public static class OilWords
{
    /// <summary>A day in a sentence: <c>2 Mar 2026</c>.</summary>
    public static string Day(DateOnly day) => day.ToString("d MMM yyyy", CultureInfo.InvariantCulture);

    /// <summary>A viscosity: <c>120 mm²/s at 20 °C</c>.</summary>
    public static string Of(ViscosityAt viscosity) => string.Create(CultureInfo.InvariantCulture, $"{viscosity.SquareMillimetresPerSecond} mm²/s at {viscosity.Celsius} °C");

    /// <summary>What the workshop file states of a lubricant's class.</summary>
    public static string Class(Lubricant lubricant)
    {
        List<string> stated = [];
        if (lubricant.IsoGrade is { } grade) stated.Add(string.Create(CultureInfo.InvariantCulture, $"ISO VG {grade}"));
        if (lubricant.Viscosity is { } first) stated.Add(Of(first));
        if (lubricant.SecondViscosity is { } second) stated.Add(Of(second));
        if (lubricant.ViscosityIndex is { } index) stated.Add(string.Create(CultureInfo.InvariantCulture, $"viscosity index {index}"));
        if (lubricant.Grease) stated.Insert(0, "grease");
        return stated.Count > 0 ? string.Join(", ", stated) : "viscosity not stated";
    }

    /// <summary>What is known of an oil's viscosity at the bench's temperature; empty for a grease, or where nothing is stated.</summary>
    public static string AtBench(Lubricant lubricant, decimal? bench)
    {
        if (lubricant.Grease || bench is not { } celsius || LubricantViscosity.Points(lubricant).Count == 0) return "";
        return LubricantViscosity.At(lubricant, celsius) is { } figure
            ? string.Create(CultureInfo.InvariantCulture, $"{Figure(figure)} here, {From(figure.From)}")
            : string.Create(CultureInfo.InvariantCulture, $"at the bench's {celsius} °C not known: state a second viscosity, or its index");
    }

    /// <summary>A bottle's dates: <c>opened 2 Mar 2025, good until 2 Mar 2027 (from opening)</c>.</summary>
    public static string Dates(Bottle bottle, Lubricant? lubricant)
    {
        List<string> dates = [];
        if (bottle.OpenedOn is { } opened) dates.Add($"opened {Day(opened)}");
        if (bottle.LastDay(lubricant) is { } last) dates.Add($"good until {Day(last)}{(bottle.GoodUntil is null ? " (from opening)" : "")}");
        return dates.Count > 0 ? string.Join(", ", dates) : "no dates stated";
    }

    /// <summary>How a bottle stands against its date, in words because not every screen has colour; empty while it is good.</summary>
    public static string Standing(Bottle bottle, Lubricant? lubricant, DateOnly today)
    {
        int left = bottle.LastDay(lubricant) is { } last ? last.DayNumber - today.DayNumber : 0;
        return bottle.Standing(lubricant, today) switch
        {
            BottleStanding.Past => $"past its date for {Times.Count(-left, "day")}",
            BottleStanding.SoonPast => left == 0 ? "its last day" : $"past in {Times.Count(left + 1, "day")}",
            _ => "",
        };
    }

    /// <summary>What speaks against a bottle at a point, as a sentence without its stop.</summary>
    public static string Concern(PointConcern concern, decimal? bench) => concern switch
    {
        PointConcern.OtherRole x => $"{x.Lubricant.Name} is not for this role ({JobWords.Role(x.Role)})",
        PointConcern.PastDate x => $"bottle {x.Batch} of {x.Lubricant.Name} was good until {Day(x.LastDay)}",
        PointConcern.OtherViscosity x => string.Create(CultureInfo.InvariantCulture, $"{x.Lubricant.Name} has {Figure(x.Figure)}, {From(x.Figure.From)}; {JobWords.Role(x.Role)} takes {x.Range.Least} to {x.Range.Most} mm²/s by common practice{Elsewhere(x.Figure, bench)}"),
        _ => throw new InvalidOperationException($"no words for {concern.GetType().Name}"),
    };

    /// <summary>With what going on would serve a point.</summary>
    public static string Serving(OilingPoint point, Plan plan, Circumstances at)
    {
        string when = point.When is { } order ? $" ({order.Time.ToString().ToLowerInvariant()} {plan.NameOf(order.Part)})" : "";
        if (at.LubricantFor(point.Role) is not { } lubricant) return $"The workshop file names no lubricant for this role{when}.";
        string batch = at.BatchOf(lubricant.Id);
        return $"{lubricant.Name}, {(batch.Length > 0 ? $"bottle {batch}" : "bottle not stated: b names it")}{when}";
    }

    private static string Figure(ViscosityFigure figure) => Of(new ViscosityAt(figure.SquareMillimetresPerSecond, figure.Celsius));

    private static string From(ViscosityFrom from) => from switch
    {
        ViscosityFrom.TwoPoints => "computed from its two viscosities",
        ViscosityFrom.Index => "computed from its viscosity index",
        _ => "as stated",
    };

    private static string Elsewhere(ViscosityFigure figure, decimal? bench) =>
        bench is { } celsius && celsius != figure.Celsius ? string.Create(CultureInfo.InvariantCulture, $"; at the bench's {celsius} °C it is not known") : "";
}
