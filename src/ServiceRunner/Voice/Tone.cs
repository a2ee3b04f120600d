using ServiceRunner.Core.Jobs;

namespace ServiceRunner.Voice;

/// <summary>
/// The tone of an urgency: pulses of a few harmonics each, as samples. The notes and their order are ours; how urgency
/// is told by pulses follows the principles of IEC 60601-1-8, and where the energy lies those of ISO 7731.
/// </summary>
internal sealed class Tone
{
    /// <summary>Samples a second.</summary>
    public const int Rate = 44_100;

    // Four and more harmonics within 15 dB of each other; the fundamental is a little under the second, where the ear is keener.
    private static readonly double[] Harmonics = [0.7, 1.0, 0.8, 0.6, 0.4, 0.3];

    // A little under full scale: some players resample, and overshoot.
    private const double Loudest = 0.85;

    // Sound servers that wake up swallow the first moments; the end keeps the last pulse whole.
    private static readonly TimeSpan Lead = TimeSpan.FromMilliseconds(60);
    private static readonly TimeSpan Rise = TimeSpan.FromMilliseconds(20);
    private static readonly TimeSpan Fall = TimeSpan.FromMilliseconds(40);

    private Tone(Urgency urgency, IReadOnlyList<Pulse> pulses) => (Urgency, Pulses) = (urgency, pulses);

    /// <summary>A pulse: its fundamental in Hz, its length, and the silence after it.</summary>
    internal sealed record Pulse(double Hertz, TimeSpan Length, TimeSpan Gap);

    /// <summary>How urgent it is.</summary>
    public Urgency Urgency { get; }

    /// <summary>Its pulses.</summary>
    public IReadOnlyList<Pulse> Pulses { get; }

    /// <summary>How long it sounds.</summary>
    public TimeSpan Length => Lead + Lead + TimeSpan.FromTicks(Pulses.Sum(p => (p.Length + p.Gap).Ticks));

    /// <summary>The tone of an urgency.</summary>
    public static Tone Of(Urgency urgency) => urgency switch
    {
        Urgency.Low => Low,
        Urgency.Medium => Medium,
        _ => High,
    };

    private static readonly Tone Low = new(Urgency.Low, [Beat(494, 220, 0)]);

    private static readonly Tone Medium = new(Urgency.Medium, [Beat(440, 180, 180), Beat(554, 180, 180), Beat(440, 180, 0)]);

    private static readonly Tone High = new(Urgency.High, [.. Burst(700), .. Burst(0)]);

    private static Pulse[] Burst(int gap) =>
        [Beat(523, 130, 80), Beat(523, 130, 80), Beat(698, 130, 220), Beat(698, 130, 80), Beat(523, 130, gap)];

    private static Pulse Beat(double hertz, int milliseconds, int gap) =>
        new(hertz, TimeSpan.FromMilliseconds(milliseconds), TimeSpan.FromMilliseconds(gap));

    /// <summary>The samples, from -1 to 1.</summary>
    public float[] Samples()
    {
        float[] samples = new float[Count(Length)];
        int at = Count(Lead);
        foreach (Pulse pulse in Pulses)
        {
            Sound(samples.AsSpan(at, Count(pulse.Length)), pulse.Hertz);
            at += Count(pulse.Length) + Count(pulse.Gap);
        }
        float peak = samples.Max(Math.Abs);
        for (int i = 0; i < samples.Length; i++) samples[i] *= (float)(Loudest / peak);
        return samples;
    }

    private static int Count(TimeSpan length) => (int)(length.TotalSeconds * Rate);

    private static void Sound(Span<float> pulse, double hertz)
    {
        for (int i = 0; i < pulse.Length; i++)
        {
            double value = 0;
            for (int k = 0; k < Harmonics.Length; k++) value += Harmonics[k] * Math.Sin(2 * Math.PI * hertz * (k + 1) * i / Rate + Phase(k));
            pulse[i] = (float)(value * Math.Min(Slope(i, Count(Rise)), Slope(pulse.Length - 1 - i, Count(Fall))));
        }
    }

    // Spread phases keep the crests low, so that the same loudness needs less of the scale.
    private static double Phase(int k) => Math.PI * k * k / Harmonics.Length;

    // A raised cosine: no click at either end.
    private static double Slope(int samples, int over) => samples >= over ? 1 : (1 - Math.Cos(Math.PI * samples / over)) / 2;
}
