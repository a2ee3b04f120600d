using System.Globalization;

namespace ServiceRunner.Files.Sentences;

/// <summary>Calendar days as a person types and reads them.</summary>
public static class Days
{
    private static readonly string[] WithYear = ["yyyy-MM-dd", "d MMM yyyy", "d MMMM yyyy"];
    private static readonly string[] WithoutYear = ["d MMM", "d MMMM"];

    /// <summary>What can be typed, as a sentence.</summary>
    public const string Form = "As 2026-03-20, 20 Mar, Monday, +14 days or +3 weeks.";

    /// <summary>
    /// Reads a day; null if the text is none. A day without its year is the next one of that name. Figures with strokes
    /// or points between them are not read: 3/4 is another day here than there.
    /// </summary>
    public static DateOnly? Read(string text, DateOnly today)
    {
        string typed = string.Join(' ', text.Split(' ', StringSplitOptions.RemoveEmptyEntries));
        if (typed.StartsWith('+')) return Later(typed[1..].Trim().Split(' '), today);
        // Of a day of the week, the next one that is not today.
        foreach (DayOfWeek weekday in Enum.GetValues<DayOfWeek>())
            if (typed.Equals($"{weekday}", StringComparison.OrdinalIgnoreCase) || typed.Equals($"{weekday}"[..3], StringComparison.OrdinalIgnoreCase))
                return today.AddDays(((int)weekday - (int)today.DayOfWeek + 6) % 7 + 1);
        if (DateOnly.TryParseExact(typed, WithYear, CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly day)) return day;
        // 29 Feb is a day of a leap year only, so the years are tried one by one.
        for (int year = today.Year; year <= today.Year + 4; year++)
            if (DateOnly.TryParseExact(string.Create(CultureInfo.InvariantCulture, $"{typed} {year}"), [.. WithoutYear.Select(f => f + " yyyy")], CultureInfo.InvariantCulture, DateTimeStyles.None, out day) && day >= today)
                return day;
        return null;
    }

    private static DateOnly? Later(string[] words, DateOnly today)
    {
        if (words is not ([_] or [_, _]) || !int.TryParse(words[0], NumberStyles.None, CultureInfo.InvariantCulture, out int count) || count > 3660) return null;
        return (words.Length == 1 ? "days" : words[1].ToLowerInvariant()) switch
        {
            "day" or "days" => today.AddDays(count),
            "week" or "weeks" when count <= 520 => today.AddDays(7 * count),
            "month" or "months" when count <= 120 => today.AddMonths(count),
            _ => null,
        };
    }

    /// <summary>A day on paper: <c>Fri 20 March 2026</c>.</summary>
    public static string Long(DateOnly day) => day.ToString("ddd d MMMM yyyy", CultureInfo.InvariantCulture);

    /// <summary>A day in a list: <c>20 Mar</c>, with the year if it is another one.</summary>
    public static string Short(DateOnly day, DateOnly today) => day.ToString(day.Year == today.Year ? "d MMM" : "d MMM yyyy", CultureInfo.InvariantCulture);
}
