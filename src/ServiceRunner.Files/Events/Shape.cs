using System.Globalization;
using System.Text.Json;
using ServiceRunner.Core.Jobs;
using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Files.Events;

/// <summary>
/// Writing and reading the values that stored shapes are made of. A field that is empty or null is not written, and
/// reads as empty or null.
/// </summary>
internal static class Shape
{
    public static void Text(this Utf8JsonWriter w, string key, string value)
    {
        if (value.Length > 0) w.WriteString(key, value);
    }

    public static void Texts(this Utf8JsonWriter w, string key, IReadOnlyList<string> values)
    {
        if (values.Count == 0) return;
        w.WriteStartArray(key);
        foreach (string value in values) w.WriteStringValue(value);
        w.WriteEndArray();
    }

    public static void Number(this Utf8JsonWriter w, string key, decimal? value)
    {
        if (value is { } v) w.WriteNumber(key, v);
    }

    public static void Typed(this Utf8JsonWriter w, string key, TypedNumber? value)
    {
        if (value is { } v) w.WriteString(key, v.AsTyped);
    }

    public static void Day(this Utf8JsonWriter w, string key, DateOnly? value)
    {
        if (value is { } v) w.WriteString(key, v.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture));
    }

    public static void Time(this Utf8JsonWriter w, string key, DateTimeOffset? value)
    {
        if (value is { } v) w.WriteString(key, v.ToString("O", CultureInfo.InvariantCulture));
    }

    public static void Seconds(this Utf8JsonWriter w, string key, TimeSpan? value)
    {
        if (value is { } v) w.WriteNumber(key, v.Ticks / (decimal)TimeSpan.TicksPerSecond);
    }

    public static void Step(this Utf8JsonWriter w, StepRef? step)
    {
        if (step is { } s) w.WriteString("step", s.ToString());
    }

    public static string Text(this JsonElement e, string key) => e.TryGetProperty(key, out JsonElement v) ? v.GetString() ?? "" : "";

    public static IReadOnlyList<string> Texts(this JsonElement e, string key) =>
        e.TryGetProperty(key, out JsonElement v) ? [.. v.EnumerateArray().Select(x => x.GetString() ?? "")] : [];

    public static decimal? Number(this JsonElement e, string key) => e.TryGetProperty(key, out JsonElement v) ? v.GetDecimal() : null;

    public static TypedNumber? Typed(this JsonElement e, string key) =>
        !e.TryGetProperty(key, out JsonElement v) ? null
        : TypedNumber.Read(v.GetString() ?? "", out TypedNumber number) == TypedNumber.Fault.None ? number
        : throw new FormatException($"'{v.GetString()}' is no number");

    public static DateOnly? Day(this JsonElement e, string key) =>
        e.TryGetProperty(key, out JsonElement v) ? DateOnly.ParseExact(v.GetString() ?? "", "yyyy-MM-dd", CultureInfo.InvariantCulture) : null;

    public static DateTimeOffset? Time(this JsonElement e, string key) =>
        e.TryGetProperty(key, out JsonElement v) ? DateTimeOffset.Parse(v.GetString() ?? "", CultureInfo.InvariantCulture) : null;

    public static TimeSpan? Seconds(this JsonElement e, string key) =>
        e.TryGetProperty(key, out JsonElement v) ? TimeSpan.FromTicks((long)(v.GetDecimal() * TimeSpan.TicksPerSecond)) : null;

    public static StepRef Step(this JsonElement e) => StepRef.Parse(e.Text("step"));

    public static StepRef? StepOrNone(this JsonElement e) => e.TryGetProperty("step", out JsonElement v) ? StepRef.Parse(v.GetString() ?? "") : null;
}

/// <summary>An event of a kind or a version that this program does not know: it was written by a later one.</summary>
public sealed class UnknownEventException(string kind) : Exception($"event kind '{kind}'")
{
    /// <summary>The kind and version as stored.</summary>
    public string Kind { get; } = kind;
}
