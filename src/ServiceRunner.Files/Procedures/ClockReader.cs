using ServiceRunner.Core.Procedures;
using ServiceRunner.Core.Quantities;
using ServiceRunner.Files.Checks.Reading;
using ServiceRunner.Files.Yaml;

namespace ServiceRunner.Files.Procedures;

/// <summary>Reads a step's clock: a bath, a spin-off, a drying or a wait.</summary>
internal static class ClockReader
{
    private static readonly string[] BathKeys = ["solution", "parts", "least", "aim", "most", "jar", "at", "ultrasonic", "agitate"];
    private static readonly string[] SpinKeys = ["parts", "least", "aim", "most"];
    private static readonly string[] DryKeys = ["parts", "by", "at", "least", "aim", "most"];
    private static readonly string[] WaitKeys = ["for", "least", "aim", "most"];

    public static ClockFacet? Read(ValueReader values, YEntry entry)
    {
        string kind = entry.Key.Value;
        if (values.Map(entry.Value, kind) is not { } map) return null;
        Draft draft = new();
        string[] keys = kind switch { "bath" => BathKeys, "spin" => SpinKeys, "dry" => DryKeys, _ => WaitKeys };
        foreach (YEntry inner in map.Entries)
        {
            if (Array.IndexOf(keys, inner.Key.Value) < 0) values.Unknown(inner, $"'{kind}'", keys);
            else draft.Take(values, inner);
        }
        if (kind != "wait" && map["parts"] is null) values.Missing(entry.Key.At, "parts", $"'{kind}'");
        if (kind == "bath" && map["solution"] is null) values.Missing(entry.Key.At, "solution", "'bath'");
        if (kind == "dry" && map["by"] is null) values.Missing(entry.Key.At, "by", "'dry'");
        if (map["aim"] is null) values.Missing(entry.Key.At, "aim", $"'{kind}'");
        Window window = draft.Window(values);
        return kind switch
        {
            "bath" => new ClockFacet.Bath(entry.Key.At, draft.Parts, window, draft.Solution)
            {
                Jar = draft.Jar, Celsius = draft.Celsius, Ultrasonic = draft.Ultrasonic, Agitate = draft.Agitate,
            },
            "spin" => new ClockFacet.Spin(entry.Key.At, draft.Parts, window),
            "dry" => new ClockFacet.Dry(entry.Key.At, draft.Parts, window, draft.By, draft.Celsius),
            _ => new ClockFacet.Wait(entry.Key.At, window, draft.For),
        };
    }

    // What has been read of a clock so far.
    private sealed class Draft
    {
        private YEntry? _least, _aim, _most;
        private TimeSpan? _leastLength, _aimLength, _mostLength;

        public List<Placed<string>> Parts { get; private set; } = [];
        public Placed<string> Solution { get; private set; } = new("", default);
        public Placed<string> By { get; private set; } = new("air", default);
        public string Jar { get; private set; } = "";
        public string Agitate { get; private set; } = "";
        public string For { get; private set; } = "";
        public bool Ultrasonic { get; private set; }
        public decimal? Celsius { get; private set; }

        public void Take(ValueReader values, YEntry entry)
        {
            switch (entry.Key.Value)
            {
                case "solution": Solution = values.Name(entry) ?? Solution; break;
                case "parts": Parts = values.Texts(entry); break;
                case "jar": Jar = values.Text(entry); break;
                case "at": Celsius = values.Celsius(entry); break;
                case "ultrasonic": Ultrasonic = values.Yes(entry); break;
                case "agitate": Agitate = values.Text(entry); break;
                case "by": By = values.Word(entry, Vocabulary.DryingMeans) ?? By; break;
                case "for": For = values.Text(entry); break;
                case "least": (_least, _leastLength) = (entry, values.Duration(entry)); break;
                case "aim": (_aim, _aimLength) = (entry, values.Duration(entry)); break;
                default: (_most, _mostLength) = (entry, values.Duration(entry)); break;
            }
        }

        public Window Window(ValueReader values)
        {
            if (!Ordered(values, _least, _leastLength, _aim, _aimLength) || !Ordered(values, _aim, _aimLength, _most, _mostLength))
                return new Window(TimeSpan.Zero, _aimLength ?? TimeSpan.Zero, null);
            if (_aimLength is null) Ordered(values, _least, _leastLength, _most, _mostLength);
            TimeSpan aim = _aimLength ?? _leastLength ?? _mostLength ?? TimeSpan.Zero;
            return new Window(_leastLength ?? aim, aim, _mostLength);
        }

        private static bool Ordered(ValueReader values, YEntry? lower, TimeSpan? low, YEntry? upper, TimeSpan? high)
        {
            if (lower is null || upper is null || !(low > high)) return true;
            values.Add(WindowOrder.Of(values.File, lower.Value.At, lower.Key.Value, Text(lower), upper.Key.Value, Text(upper)));
            return false;
        }

        private static string Text(YEntry entry) => ((YText)entry.Value).Value;
    }
}
