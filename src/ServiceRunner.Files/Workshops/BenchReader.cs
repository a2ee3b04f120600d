using ServiceRunner.Core.Workshops;
using ServiceRunner.Files.Yaml;

namespace ServiceRunner.Files.Workshops;

/// <summary>Reads the pedal and the voice.</summary>
internal static class BenchReader
{
    public static Pedal Pedal(ValueReader values, YEntry entry)
    {
        Pedal pedal = new();
        if (values.Map(entry.Value, "pedal") is not { } map) return pedal;
        foreach (YEntry inner in map.Entries)
        {
            switch (inner.Key.Value)
            {
                case "go-on": pedal = pedal with { GoOn = values.Texts(inner) }; break;
                case "back": pedal = pedal with { Back = values.Texts(inner) }; break;
                case "third": pedal = pedal with { Third = values.Texts(inner) }; break;
                case "dead-time": pedal = pedal with { DeadMilliseconds = Milliseconds(values, inner) ?? pedal.DeadMilliseconds }; break;
                default: values.Unknown(inner, "'pedal'", ["go-on", "back", "third", "dead-time"]); break;
            }
        }
        return pedal;
    }

    public static Voice Voice(ValueReader values, YEntry entry)
    {
        Voice voice = new();
        if (values.Map(entry.Value, "voice") is not { } map) return voice;
        foreach (YEntry inner in map.Entries)
        {
            switch (inner.Key.Value)
            {
                case "sound": voice = voice with { Sound = values.Yes(inner) }; break;
                case "speech": voice = voice with { Speech = values.Yes(inner) }; break;
                case "program": voice = voice with { Program = [.. values.Texts(inner).Select(p => p.Value)] }; break;
                default: values.Unknown(inner, "'voice'", ["sound", "speech", "program"]); break;
            }
        }
        return voice;
    }

    private static int? Milliseconds(ValueReader values, YEntry entry)
    {
        if (values.Quantity(entry, "700 ms", "ms") is not { } time) return null;
        if (time is >= 0 and <= 10_000) return (int)time;
        values.Add(Checks.Reading.NotANumber.Range(values.File, entry.Value.At, "dead-time", ((YText)entry.Value).Value, "from 0 to 10000 ms"));
        return null;
    }
}
