using System.Globalization;
using Humanizer;
using ServiceRunner.Core.Quantities;
using ServiceRunner.Files.Yaml;

namespace ServiceRunner.Files.Sentences;

/// <summary>Dates, lengths of time and counts as a person writes them.</summary>
public static class Times
{
    /// <summary>A running clock: <c>4:07</c>, from an hour on <c>1:04:07</c>, from two days on <c>3 d 4:07 h</c>.</summary>
    public static string Clock(TimeSpan length)
    {
        string sign = length < TimeSpan.Zero ? "-" : "";
        TimeSpan t = length.Duration();
        return t.TotalDays >= 2 ? string.Create(CultureInfo.InvariantCulture, $"{sign}{(int)t.TotalDays} d {t.Hours}:{t.Minutes:00} h")
            : t.TotalHours >= 1 ? string.Create(CultureInfo.InvariantCulture, $"{sign}{(int)t.TotalHours}:{t.Minutes:00}:{t.Seconds:00}")
            : string.Create(CultureInfo.InvariantCulture, $"{sign}{(int)t.TotalMinutes}:{t.Seconds:00}");
    }

    /// <summary>A length in a sentence: <c>8 min</c>, <c>1 h 30 min</c>, <c>45 s</c>, <c>2 d</c>, as procedures write it.</summary>
    public static string Length(TimeSpan length) =>
        DurationText.Write(length.TotalHours >= 1 ? TimeSpan.FromMinutes(Math.Floor(length.TotalMinutes)) : length);

    /// <summary>How long it has been so, roughly: <c>for 3 weeks</c>, <c>for 2 hours</c>, <c>just now</c>.</summary>
    public static string For(TimeSpan age) => age < TimeSpan.FromMinutes(1) ? "just now" : $"for {Age(age)}";

    private static string Age(TimeSpan age) => age.Humanize(maxUnit: TimeUnit.Year, minUnit: TimeUnit.Minute, culture: CultureInfo.InvariantCulture);

    /// <summary>A day and time: <c>today 14:05</c>, <c>yesterday 9:30</c>, <c>Tue 17 Nov 14:05</c>, with the year if it is another one.</summary>
    public static string When(DateTimeOffset at, DateTimeOffset now)
    {
        string time = at.ToString("H:mm", CultureInfo.InvariantCulture);
        int days = (now.Date - at.Date).Days;
        return days switch
        {
            0 => $"today {time}",
            1 => $"yesterday {time}",
            _ => at.ToString(at.Year == now.Year ? "ddd d MMM H:mm" : "d MMM yyyy H:mm", CultureInfo.InvariantCulture),
        };
    }

    /// <summary>A window: <c>least 3 min, aim 5 min, most 8 min</c>.</summary>
    public static string Window(Window window)
    {
        List<string> parts = [];
        if (window.Least != window.Aim && window.Least > TimeSpan.Zero) parts.Add($"least {Length(window.Least)}");
        parts.Add($"aim {Length(window.Aim)}");
        if (window.Most is { } most) parts.Add($"most {Length(most)}");
        return string.Join(", ", parts);
    }

    /// <summary>A count with its noun: <c>1 step</c>, <c>3 steps</c>.</summary>
    public static string Count(int count, string noun) => noun.ToQuantity(count, formatProvider: CultureInfo.InvariantCulture);

    /// <summary>A list: <c>a, b and c</c>.</summary>
    public static string List(IEnumerable<string> items) => items.Humanize(x => x, "and");
}
