using System.Globalization;

namespace ServiceRunner.Files.Sentences;

/// <summary>
/// Days as people write them: <c>2026-03-02</c>, <c>2 Mar 2026</c>, <c>2.3.2026</c>, <c>2 Mar</c>; ahead also <c>Mar 2028</c>,
/// <c>Monday</c> and <c>+3 weeks</c>. What could be the day or the month first is refused.
/// </summary>
public static class DayText
{
    private static readonly string[] Whole = ["yyyy-M-d", "d MMM yyyy", "d MMMM yyyy", "MMM d yyyy", "MMMM d yyyy", "d.M.yyyy", "d. M. yyyy", "d.M.yy"];
    private static readonly string[] WithoutYear = ["d MMM", "d MMMM", "MMM d", "MMMM d"];
    private static readonly string[] MonthOnly = ["MMM yyyy", "MMMM yyyy", "M/yyyy", "yyyy-M"];

    /// <summary>What can be typed for a day that lies ahead, as a sentence.</summary>
    public const string Ahead = "As 2026-03-20, 20 Mar, Monday, +14 days or +3 weeks.";

    /// <summary>What can be typed for a day that is past, as a sentence.</summary>
    public const string Past = "As 2026-03-02, or 2 Mar 2026.";

    /// <summary>Reads a day; a sentence if it cannot be read, else empty.</summary>
    /// <param name="text">What was typed.</param>
    /// <param name="today">Today, for a day without its year.</param>
    /// <param name="ahead">True if the day lies ahead, as a bottle's last one does: a month alone then means its last day.</param>
    /// <param name="day">The day; null if nothing was typed.</param>
    public static string Read(string text, DateOnly today, bool ahead, out DateOnly? day)
    {
        day = null;
        string typed = string.Join(' ', text.Replace(',', ' ').Split(' ', StringSplitOptions.RemoveEmptyEntries));
        if (typed.Length == 0) return "";
        if ((Parse(typed, Whole) ?? (ahead ? FromToday(typed, today) : null)) is { } whole)
        {
            day = whole;
            return "";
        }
        if (Parse($"{typed} 2000", [.. WithoutYear.Select(f => f + " yyyy")]) is { } part)
        {
            day = Nearest(part, today, ahead);
            if (day is not null) return "";
        }
        if (Parse(typed, MonthOnly) is { } month)
        {
            if (!ahead) return $"'{text.Trim()}' names a month; name the day too, as 2 Mar 2026.";
            day = month.AddMonths(1).AddDays(-1);
            return "";
        }
        return Slashed(text.Trim(), typed, ahead ? Ahead : Past, out day);
    }

    private static DateOnly? FromToday(string typed, DateOnly today)
    {
        if (typed.StartsWith('+')) return Later(typed[1..].Trim().Split(' '), today);
        // Of a day of the week, the next one that is not today.
        foreach (DayOfWeek weekday in Enum.GetValues<DayOfWeek>())
            if (typed.Equals($"{weekday}", StringComparison.OrdinalIgnoreCase) || typed.Equals($"{weekday}"[..3], StringComparison.OrdinalIgnoreCase))
                return today.AddDays(((int)weekday - (int)today.DayOfWeek + 6) % 7 + 1);
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

    private static DateOnly? Parse(string text, string[] forms) =>
        DateOnly.TryParseExact(text, forms, CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly day) && day.Year is >= 1950 and <= 2199 ? day : null;

    private static DateOnly? Nearest(DateOnly part, DateOnly today, bool ahead)
    {
        // Eight years hold a leap year, also across one that is a century.
        for (int year = today.Year, i = 0; i <= 8; year += ahead ? 1 : -1, i++)
        {
            if (part.Day > DateTime.DaysInMonth(year, part.Month)) continue;
            DateOnly day = new(year, part.Month, part.Day);
            if (ahead ? day >= today : day <= today) return day;
        }
        return null;
    }

    // 13/3/2026 and 3/13/2026 can only be one day; 3/4/2026 can be two.
    private static string Slashed(string shown, string typed, string form, out DateOnly? day)
    {
        day = null;
        string[] parts = typed.Split('/', '-');
        if (parts is [var a, var b, { Length: 4 } c] && int.TryParse(a, NumberStyles.None, CultureInfo.InvariantCulture, out int first)
            && int.TryParse(b, NumberStyles.None, CultureInfo.InvariantCulture, out int second) && int.TryParse(c, NumberStyles.None, CultureInfo.InvariantCulture, out int year) && year is >= 1950 and <= 2199)
        {
            if (first is >= 1 and <= 12 && second is >= 1 and <= 12 && first != second) return $"'{shown}' can be read as two days; type {year}-{second:00}-{first:00} or {year}-{first:00}-{second:00}.";
            (int d, int m) = second > 12 ? (second, first) : (first, second);
            if (m is >= 1 and <= 12 && d >= 1 && d <= DateTime.DaysInMonth(year, m))
            {
                day = new DateOnly(year, m, d);
                return "";
            }
        }
        return $"'{shown}' is not a day. {form}";
    }
}
