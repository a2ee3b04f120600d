using ServiceRunner.Core.Workshops;
using ServiceRunner.Files.Yaml;

namespace ServiceRunner.Files.Workshops;

/// <summary>Reads the pedal and the voice.</summary>
internal static class BenchReader
{
    private static readonly string[] VoiceKeys = ["sound", "speech", "program", "player", "least-sounds", "quiet", "steps", "words-a-minute"];

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
                case "program": voice = voice with { Program = Command(values, inner) }; break;
                case "player": voice = voice with { Player = Command(values, inner) }; break;
                case "least-sounds": voice = voice with { LeastSounds = values.Yes(inner) }; break;
                case "quiet": voice = voice with { Quiet = values.Yes(inner) }; break;
                case "steps": voice = voice with { Steps = values.Yes(inner) }; break;
                case "words-a-minute": voice = voice with { WordsAMinute = Speed(values, inner) }; break;
                default: values.Unknown(inner, "'voice'", VoiceKeys); break;
            }
        }
        return voice;
    }

    private static List<string> Command(ValueReader values, YEntry entry) => [.. values.Texts(entry).Select(p => p.Value)];

    private static int? Speed(ValueReader values, YEntry entry)
    {
        if (values.Whole(entry) is not { } speed) return null;
        (int slowest, int fastest) = Core.Workshops.Voice.Speeds;
        if (speed >= slowest && speed <= fastest) return speed;
        values.Add(Checks.Reading.NotANumber.Range(values.File, entry.Value.At, "words-a-minute", ((YText)entry.Value).Value, $"from {slowest} to {fastest}"));
        return null;
    }

    private static int? Milliseconds(ValueReader values, YEntry entry)
    {
        if (values.Quantity(entry, "700 ms", "ms") is not { } time) return null;
        if (time is >= 0 and <= 10_000) return (int)time;
        values.Add(Checks.Reading.NotANumber.Range(values.File, entry.Value.At, "dead-time", ((YText)entry.Value).Value, "from 0 to 10000 ms"));
        return null;
    }
}
