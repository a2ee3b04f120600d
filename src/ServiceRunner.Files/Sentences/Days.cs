using System.Globalization;

namespace ServiceRunner.Files.Sentences;

/// <summary>Calendar days as a person types and reads them.</summary>
public static class Days
{
    private static readonly string[] WithYear = ["yyyy-MM-dd", "d MMM yyyy", "d MMMM yyyy"];
    private static readonly string[] WithoutYear = ["d MMM", "d MMMM"];

    /// <summary>What can be typed, as a sentence.</summary>
    public const string Form = "As 2026-03-20, 20 Mar, or +14 for a fortnight from today.";

    /// <summary>
    /// Reads a day; null if the text is none. A day without its year is the next one of that name. Figures with strokes
    /// or points between them are not read: 3/4 is another day here than there.
    /// </summary>
    public static DateOnly? Read(string text, DateOnly today)
    {
        string typed = string.Join(' ', text.Split(' ', StringSplitOptions.RemoveEmptyEntries));
        if (typed.StartsWith('+'))
            return int.TryParse(typed[1..].Trim(), NumberStyles.None, CultureInfo.InvariantCulture, out int days) && days <= 3660 ? today.AddDays(days) : null;
        if (DateOnly.TryParseExact(typed, WithYear, CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly day)) return day;
        // 29 Feb is a day of a leap year only, so the years are tried one by one.
        for (int year = today.Year; year <= today.Year + 4; year++)
            if (DateOnly.TryParseExact(string.Create(CultureInfo.InvariantCulture, $"{typed} {year}"), [.. WithoutYear.Select(f => f + " yyyy")], CultureInfo.InvariantCulture, DateTimeStyles.None, out day) && day >= today)
                return day;
        return null;
    }

    /// <summary>A day on paper: <c>Fri 20 March 2026</c>.</summary>
    public static string Long(DateOnly day) => day.ToString("ddd d MMMM yyyy", CultureInfo.InvariantCulture);

    /// <summary>A day in a list: <c>20 Mar</c>, with the year if it is another one.</summary>
    public static string Short(DateOnly day, DateOnly today) => day.ToString(day.Year == today.Year ? "d MMM" : "d MMM yyyy", CultureInfo.InvariantCulture);
}
