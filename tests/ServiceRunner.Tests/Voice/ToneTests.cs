using System.Buffers.Binary;
using ServiceRunner.Core.Jobs;
using ServiceRunner.Voice;

namespace ServiceRunner.Tests.Voice;

/// <summary>The tones by their samples. Sources as in the facts page; what it has from memory is marked so here too.</summary>
public class ToneTests
{
    public static TheoryData<Urgency> All => [Urgency.Low, Urgency.Medium, Urgency.High];

    // IEC 60601-1-8: medium 3 pulses, high 5 and these repeated, so 10; low 1 or 2.
    [Theory]
    [InlineData(Urgency.Low, 1)]
    [InlineData(Urgency.Medium, 3)]
    [InlineData(Urgency.High, 10)]
    public void Each_urgency_has_its_number_of_pulses(Urgency urgency, int pulses) => Assert.Equal(pulses, Heard(urgency).Count);

    // IEC 60601-1-8: the five pulses come as three and two, told by the longer silence between.
    [Fact]
    public void The_high_one_groups_its_pulses_three_and_two_and_says_them_twice()
    {
        List<(int From, int To)> heard = Heard(Urgency.High);
        double[] gaps = [.. heard.Zip(heard.Skip(1), (a, b) => (b.From - a.To) / (double)Tone.Rate)];
        Assert.All([gaps[0], gaps[1], gaps[3], gaps[5], gaps[6], gaps[8]], g => Assert.InRange(g, 0.07, 0.13));
        Assert.All([gaps[2], gaps[7]], g => Assert.InRange(g, 0.21, 0.27));
        Assert.InRange(gaps[4], 0.69, 0.75);
    }

    // IEC 60601-1-8: fundamental from 150 to 1000 Hz, four harmonics or more from 300 to 4000 Hz, within 15 dB of each other.
    [Theory]
    [MemberData(nameof(All))]
    public void Every_pulse_has_four_harmonics_or_more_that_are_near_in_level(Urgency urgency)
    {
        float[] samples = Tone.Of(urgency).Samples();
        foreach ((int from, int to) in Heard(urgency))
        {
            ReadOnlySpan<float> pulse = samples.AsSpan(from, to - from);
            double hertz = Fundamental(pulse);
            Assert.InRange(hertz, 150, 1000);
            List<double> levels = [];
            for (int k = 2; k * hertz <= 4000; k++)
            {
                double level = 20 * Math.Log10(Level(pulse, k * hertz));
                if (k * hertz >= 300 && level > -40) levels.Add(level);
            }
            Assert.True(levels.Count >= 4, $"{levels.Count} harmonics over a fundamental of {hertz:0} Hz");
            Assert.True(levels.Max() - levels.Min() <= 15, $"harmonics differ by {levels.Max() - levels.Min():0.0} dB");
        }
    }

    // ISO 7731 (from memory): most of the energy from 500 to 2500 Hz.
    [Theory]
    [MemberData(nameof(All))]
    public void Most_of_the_energy_lies_where_the_ear_is_keen(Urgency urgency)
    {
        float[] samples = Tone.Of(urgency).Samples();
        (int from, int to) = Heard(urgency)[0];
        ReadOnlySpan<float> pulse = samples.AsSpan(from, to - from);
        double within = 0, all = 0;
        for (double hertz = 100; hertz <= 8000; hertz += 5)
        {
            double energy = Math.Pow(Level(pulse, hertz), 2);
            all += energy;
            if (hertz is >= 500 and <= 2500) within += energy;
        }
        Assert.True(within > 0.7 * all, $"{within / all:P0} of the energy");
    }

    [Theory]
    [InlineData(Urgency.Low, 0.1, 1)]
    [InlineData(Urgency.Medium, 0.8, 1.5)]
    [InlineData(Urgency.High, 2.5, 4)]
    public void A_tone_is_as_long_as_it_says_and_not_longer_than_it_must(Urgency urgency, double least, double most)
    {
        Tone tone = Tone.Of(urgency);
        Assert.Equal(tone.Length.TotalSeconds, tone.Samples().Length / (double)Tone.Rate, 0.001);
        Assert.InRange(tone.Length.TotalSeconds, least, most);
    }

    [Theory]
    [MemberData(nameof(All))]
    public void Nothing_clips_and_nothing_clicks(Urgency urgency)
    {
        float[] samples = Tone.Of(urgency).Samples();
        Assert.InRange(samples.Max(Math.Abs), 0.8f, 0.9f);
        foreach ((int from, int to) in Heard(urgency))
        {
            // Loudness climbs and falls over some milliseconds: the first and last three are faint.
            int edge = 3 * Tone.Rate / 1000;
            float loudest = samples.AsSpan(from, to - from).ToArray().Max(Math.Abs);
            Assert.All(samples[(from - edge)..(from + edge)], s => Assert.True(Math.Abs(s) < 0.25f * loudest));
            Assert.All(samples[(to - edge)..(to + edge)], s => Assert.True(Math.Abs(s) < 0.25f * loudest));
        }
        Assert.Equal(0, samples[0]);
        Assert.Equal(0, samples[^1]);
    }

    [Fact]
    public void Urgencies_sound_apart()
    {
        Assert.Equal(3, Enum.GetValues<Urgency>().Select(u => string.Join(' ', Tone.Of(u).Pulses.Select(p => $"{p.Hertz} {p.Length}"))).Distinct().Count());
        double High(Urgency u) => Tone.Of(u).Pulses.Max(p => p.Hertz);
        Assert.True(High(Urgency.High) > High(Urgency.Medium) && High(Urgency.Medium) > High(Urgency.Low));
    }

    [Fact]
    public void A_wave_file_has_its_head_and_its_samples()
    {
        byte[] bytes = Wave.Bytes([0, 1, -1, 0.5f, 2], 44_100);
        Assert.Equal("RIFF", System.Text.Encoding.ASCII.GetString(bytes, 0, 4));
        Assert.Equal("WAVEfmt ", System.Text.Encoding.ASCII.GetString(bytes, 8, 8));
        Assert.Equal((bytes.Length - 8, 16, (short)1, (short)1), (Int(bytes, 4), Int(bytes, 16), Short(bytes, 20), Short(bytes, 22)));
        Assert.Equal((44_100, 88_200, (short)2, (short)16, 10), (Int(bytes, 24), Int(bytes, 28), Short(bytes, 32), Short(bytes, 34), Int(bytes, 40)));
        Assert.Equal([0, 32767, -32767, 16384, 32767], Enumerable.Range(0, 5).Select(i => (int)Short(bytes, 44 + 2 * i)));
    }

    private static int Int(byte[] bytes, int at) => BinaryPrimitives.ReadInt32LittleEndian(bytes.AsSpan(at));

    private static short Short(byte[] bytes, int at) => BinaryPrimitives.ReadInt16LittleEndian(bytes.AsSpan(at));

    // Pulses by the envelope: the greatest sample within 5 ms, over a twentieth of the greatest of all.
    private static List<(int From, int To)> Heard(Urgency urgency)
    {
        float[] samples = Tone.Of(urgency).Samples();
        float threshold = samples.Max(Math.Abs) / 20;
        const int Window = Tone.Rate / 200;
        List<(int, int)> pulses = [];
        int? from = null;
        for (int i = 0; i < samples.Length; i += Window)
        {
            bool sounds = samples.AsSpan(i, Math.Min(Window, samples.Length - i)).ToArray().Max(Math.Abs) > threshold;
            if (sounds) from ??= i;
            else if (from is { } begun)
            {
                pulses.Add((begun, i));
                from = null;
            }
        }
        Assert.Null(from);
        return pulses;
    }

    // The greatest common step of the strong lines: the lowest frequency whose level is near the strongest.
    private static double Fundamental(ReadOnlySpan<float> pulse)
    {
        double[] levels = new double[1400];
        for (int hertz = 100; hertz < levels.Length; hertz++) levels[hertz] = Level(pulse, hertz);
        double strongest = levels.Max();
        for (int hertz = 101; hertz < levels.Length - 1; hertz++)
        {
            if (levels[hertz] > strongest / 4 && levels[hertz] >= levels[hertz - 1] && levels[hertz] >= levels[hertz + 1]) return hertz;
        }
        return 0;
    }

    // Goertzel's way to one line of the spectrum, under a Hann window that keeps neighbours out.
    private static double Level(ReadOnlySpan<float> samples, double hertz)
    {
        double turn = 2 * Math.Cos(2 * Math.PI * hertz / Tone.Rate), one = 0, two = 0;
        for (int i = 0; i < samples.Length; i++)
        {
            double window = (1 - Math.Cos(2 * Math.PI * i / (samples.Length - 1))) / 2;
            (two, one) = (one, samples[i] * window + turn * one - two);
        }
        return 4 * Math.Sqrt(Math.Max(0, one * one + two * two - turn * one * two)) / samples.Length;
    }
}
