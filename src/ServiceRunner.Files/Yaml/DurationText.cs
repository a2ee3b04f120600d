using System.Globalization;
using System.Text;
using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Files.Yaml;

/// <summary>Lengths of time as people write them: <c>45 s</c>, <c>8 min</c>, <c>1 h 30 min</c>, <c>24 h</c>, <c>2 d</c>.</summary>
public static class DurationText
{
    private static readonly TimeSpan Longest = TimeSpan.FromDays(3650);

    /// <summary>Reads a length of time; false if it is none, is zero or less, or is longer than ten years.</summary>
    public static bool TryRead(string text, out TimeSpan length)
    {
        length = TimeSpan.Zero;
        ReadOnlySpan<char> rest = text.AsSpan().Trim();
        int lastUnit = int.MaxValue;
        bool any = false;
        while (!rest.IsEmpty)
        {
            int digits = 0;
            while (digits < rest.Length && (char.IsAsciiDigit(rest[digits]) || rest[digits] is '.' or ',')) digits++;
            int unitStart = digits;
            while (unitStart < rest.Length && rest[unitStart] == ' ') unitStart++;
            int unitEnd = unitStart;
            while (unitEnd < rest.Length && char.IsAsciiLetter(rest[unitEnd])) unitEnd++;
            int unit = Seconds(rest[unitStart..unitEnd]);
            // Units go from long to short, each once: 30 min 1 h is a slip.
            if (unit == 0 || unit >= lastUnit || digits is 0 or > 9) return false;
            if (TypedNumber.Read(rest[..digits].ToString(), out TypedNumber number) != TypedNumber.Fault.None) return false;
            if (number.Value * unit > (decimal)Longest.TotalSeconds) return false;
            length += TimeSpan.FromTicks((long)(number.Value * unit * TimeSpan.TicksPerSecond));
            lastUnit = unit;
            any = true;
            rest = rest[unitEnd..].TrimStart();
        }
        return any && length > TimeSpan.Zero && length <= Longest;
    }

    /// <summary>Writes a length of time so that <see cref="TryRead"/> reads it again, to the second.</summary>
    public static string Write(TimeSpan length)
    {
        StringBuilder text = new();
        long seconds = (long)Math.Round(length.TotalSeconds);
        long hours = seconds / 3600, minutes = seconds / 60 % 60;
        if (hours >= 48 && seconds % 86400 == 0) return string.Create(CultureInfo.InvariantCulture, $"{seconds / 86400} d");
        Append(hours, "h");
        Append(minutes, "min");
        Append(seconds % 60, "s");
        return text.Length == 0 ? "0 s" : text.ToString();

        void Append(long count, string unit)
        {
            if (count == 0) return;
            if (text.Length > 0) text.Append(' ');
            text.Append(CultureInfo.InvariantCulture, $"{count} {unit}");
        }
    }

    private static int Seconds(ReadOnlySpan<char> unit) => unit switch
    {
        "s" => 1,
        "min" => 60,
        "h" => 3600,
        "d" => 86400,
        _ => 0,
    };
}
