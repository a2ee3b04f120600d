using System.Buffers.Binary;
using ServiceRunner.Core.Jobs;
using ServiceRunner.Tests.Shared;
using ServiceRunner.Voice;
using VoiceSettings = ServiceRunner.Core.Workshops.Voice;

namespace ServiceRunner.Tests.Voice;

/// <summary>A real speech program, which writes a sound file instead of sounding.</summary>
public sealed class EspeakTests : IDisposable
{
    private readonly MadePrograms _made = new();

    public void Dispose() => _made.Dispose();

    [FactNeeding("espeak-ng")]
    public void It_speaks_as_long_as_the_text_is()
    {
        double one = Spoken("short", "Done.").Seconds;
        (double seconds, double loudness) = Spoken("long", "▲ Flying parts. Lift the third bridge by 0.03 mm and put it into A1.");
        Assert.InRange(one, 0.2, 1.5);
        // Some 100 letters when said in full, at 12 to 24 letters a second.
        Assert.InRange(seconds, 4, 9);
        Assert.True(loudness > 0.02, $"a mean level of {loudness:0.000}");
    }

    [FactNeeding("espeak-ng")]
    public void It_speaks_at_the_speed_that_is_wanted()
    {
        double slow = Spoken("slow", "Let the mainspring down under control", 100).Seconds, fast = Spoken("fast", "Let the mainspring down under control", 250).Seconds;
        Assert.InRange(slow / fast, 1.7, 3.5);
    }

    [FactNeeding("espeak-ng")]
    public void A_text_that_looks_like_an_option_is_spoken() => Assert.InRange(Spoken("option", "--version -q [[ ]]").Seconds, 0.5, 3);

    private (double Seconds, double Loudness) Spoken(string name, string text, int? speed = null)
    {
        string file = Path.Combine(_made.Folder, name + ".wav");
        using Speaker speaker = _made.Start(new VoiceSettings { Speech = true, Sound = false, Program = ["espeak-ng", "-w", file, "--stdin"], WordsAMinute = speed });
        speaker.Alarm(Urgency.Medium, text);
        _made.Until(() => speaker.IsIdle);
        Assert.EndsWith("Speech: espeak-ng.", speaker.Status, StringComparison.Ordinal);
        speaker.Dispose();
        byte[] bytes = File.ReadAllBytes(file);
        int rate = BinaryPrimitives.ReadInt32LittleEndian(bytes.AsSpan(24));
        double sum = 0;
        int count = (bytes.Length - 44) / 2;
        for (int i = 0; i < count; i++) sum += Math.Pow(BinaryPrimitives.ReadInt16LittleEndian(bytes.AsSpan(44 + 2 * i)) / 32768.0, 2);
        return (count / (double)rate, Math.Sqrt(sum / count));
    }
}
