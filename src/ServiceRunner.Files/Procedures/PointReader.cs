using ServiceRunner.Core.Procedures;
using ServiceRunner.Core.Quantities;
using ServiceRunner.Files.Checks.Reading;
using ServiceRunner.Files.Yaml;

namespace ServiceRunner.Files.Procedures;

/// <summary>Reads the list of oiling points.</summary>
internal static class PointReader
{
    private static readonly string[] Keys = ["point", "name", "role", "amount", "when", "why", "at", "side"];
    private static readonly string[] Sides = ["dial", "train"];

    public static void Read(ValueReader values, YEntry entry, List<OilingPoint> points)
    {
        foreach (YNode item in values.Items(entry))
        {
            if (values.Map(item, "oiling-points") is { } map) points.Add(One(values, map));
        }
    }

    private static OilingPoint One(ValueReader values, YMap map)
    {
        OilingPoint point = new() { Id = new("", map.At), Name = "", Role = new("", map.At) };
        decimal[]? at = null;
        bool dialSide = false;
        foreach (YEntry entry in map.Entries)
        {
            switch (entry.Key.Value)
            {
                case "point": point = point with { Id = values.Name(entry) ?? point.Id }; break;
                case "name": point = point with { Name = values.Text(entry) }; break;
                case "role": point = point with { Role = values.Word(entry, Vocabulary.Roles) ?? point.Role }; break;
                case "amount": point = point with { Amount = values.Text(entry) }; break;
                case "when": point = point with { When = When(values, entry) }; break;
                case "why": point = point with { Why = values.Text(entry) }; break;
                case "at": at = values.Numbers(entry, 2, "like [12.4, 8.1]: mm from the left and from the top"); break;
                case "side": dialSide = values.Word(entry, Sides)?.Value == "dial"; break;
                default: values.Unknown(entry, "an oiling point", Keys); break;
            }
        }
        if (at is not null) point = point with { On = new MapPoint(at[0], at[1], dialSide) };
        Complete(values, map, point);
        return point;
    }

    private static void Complete(ValueReader values, YMap map, OilingPoint point)
    {
        foreach (string key in (ReadOnlySpan<string>)["point", "name", "role"])
        {
            if (map[key] is null) values.Missing(map.At, key, "an oiling point");
        }
        if (point.MustStayDry)
        {
            if (map["why"] is null) values.Missing(map.At, "why", "a place that must stay dry");
            foreach (YEntry entry in map.Entries)
            {
                if (entry.Key.Value is "amount" or "when")
                    values.Add(WrongForm.NotHere(values.File, entry.Key.At, entry.Key.Value, "a place that must stay dry"));
            }
        }
        else if (map["when"] is null)
        {
            values.Missing(map.At, "when", "an oiling point", "Write when: after PART, before PART or with PART.");
        }
    }

    private static ServingOrder? When(ValueReader values, YEntry entry)
    {
        if (values.Single(entry) is not { } text) return null;
        string[] words = text.Value.Split(' ', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        ServingTime? time = words is [var first, _]
            ? first switch { "before" => ServingTime.Before, "with" => ServingTime.With, "after" => ServingTime.After, _ => null }
            : null;
        if (time is { } known) return new ServingOrder(known, new Placed<string>(words[1], text.At));
        values.Add(WrongForm.Of(values.File, text.At, "when", text.Value, "after PART, before PART or with PART"));
        return null;
    }
}
