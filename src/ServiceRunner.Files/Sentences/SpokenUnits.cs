namespace ServiceRunner.Files.Sentences;

/// <summary>Units as they are said. A length of one is singular; everything else, and every fraction, is plural.</summary>
internal static class SpokenUnits
{
    /// <summary>A unit: what is said of one, and of several.</summary>
    internal sealed record Unit(string One, string Many);

    private static readonly Dictionary<string, Unit> Said = new(StringComparer.Ordinal)
    {
        ["mm²/s"] = new("square millimetre a second", "square millimetres a second"),
        ["mg/m³"] = new("milligram per cubic metre", "milligrams per cubic metre"),
        ["s/d"] = new("second a day", "seconds a day"),
        ["m/s"] = new("metre a second", "metres a second"),
        ["vph"] = new("vibration an hour", "vibrations an hour"),
        ["rpm"] = new("turn a minute", "turns a minute"),
        ["ppm"] = new("part per million", "parts per million"),
        ["min"] = new("minute", "minutes"),
        ["mm²"] = new("square millimetre", "square millimetres"),
        ["mm"] = new("millimetre", "millimetres"),
        ["µm"] = new("micrometre", "micrometres"),
        ["cm"] = new("centimetre", "centimetres"),
        ["m³"] = new("cubic metre", "cubic metres"),
        ["ms"] = new("millisecond", "milliseconds"),
        ["mL"] = new("millilitre", "millilitres"),
        ["mg"] = new("milligram", "milligrams"),
        ["kg"] = new("kilogram", "kilograms"),
        ["Hz"] = new("hertz", "hertz"),
        ["°C"] = new("degree Celsius", "degrees Celsius"),
        ["°"] = new("degree", "degrees"),
        ["%"] = new("per cent", "per cent"),
        ["m"] = new("metre", "metres"),
        ["L"] = new("litre", "litres"),
        ["g"] = new("gram", "grams"),
        ["d"] = new("day", "days"),
        ["h"] = new("hour", "hours"),
        ["s"] = new("second", "seconds"),
    };

    /// <summary>Every way in which a unit is written, the longer first, as an alternative of a pattern.</summary>
    internal const string Written =
        @"mm[²2]/s|mg/m[³3]|s/d|m/s|vph|rpm|ppm|min|mm[²2]|mm|[µμu]m|cm|m[³3]|ms|m[Ll]|mg|kg|Hz|° ?C|℃|°|%|m|[Ll]|g|d|h|s";

    /// <summary>The unit that is written so.</summary>
    internal static Unit Of(string written) => Said[written.Replace(" ", "", StringComparison.Ordinal) switch
    {
        "mm2/s" => "mm²/s",
        "mg/m3" => "mg/m³",
        "mm2" => "mm²",
        "m3" => "m³",
        "μm" or "um" => "µm",
        "ml" => "mL",
        "l" => "L",
        "℃" => "°C",
        string same => same,
    }];

    /// <summary>A number with its unit.</summary>
    internal static string Of(string number, string written) => $"{number} {(number == "1" ? Of(written).One : Of(written).Many)}";

    /// <summary>A or an, by how the next word sounds.</summary>
    internal static string Article(string word) => word.StartsWith("hour", StringComparison.Ordinal) ? "an" : "a";
}
