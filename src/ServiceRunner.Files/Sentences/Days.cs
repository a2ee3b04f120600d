using System.Globalization;

namespace ServiceRunner.Files.Sentences;

/// <summary>Calendar days as a person reads them; <see cref="DayText"/> reads what a person types.</summary>
public static class Days
{
    /// <summary>A day on paper: <c>Fri 20 March 2026</c>.</summary>
    public static string Long(DateOnly day) => day.ToString("ddd d MMMM yyyy", CultureInfo.InvariantCulture);

    /// <summary>A day in a list: <c>20 Mar</c>, with the year if it is another one.</summary>
    public static string Short(DateOnly day, DateOnly today) => day.ToString(day.Year == today.Year ? "d MMM" : "d MMM yyyy", CultureInfo.InvariantCulture);
}
