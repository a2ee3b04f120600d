using System.Diagnostics;
using CsCheck;
using ServiceRunner.Files.Sentences;
using ServiceRunner.Tests.Shared;

namespace ServiceRunner.Files.Tests.Sentences;

public class SpokenWordsTests
{
    [Theory]
    // Units, one and several.
    [InlineData("1 mm", "1 millimetre")]
    [InlineData("0.03 mm", "0.03 millimetres")]
    [InlineData("0,03 mm", "0.03 millimetres")]
    [InlineData("Lift by 3mm.", "Lift by 3 millimetres.")]
    [InlineData("12 µm", "12 micrometres")]
    [InlineData("12 μm", "12 micrometres")]
    [InlineData("40 °C", "40 degrees Celsius")]
    [InlineData("1 °C", "1 degree Celsius")]
    [InlineData("21°C", "21 degrees Celsius")]
    [InlineData("52°", "52 degrees")]
    [InlineData("0.4 ms", "0.4 milliseconds")]
    [InlineData("1 s", "1 second")]
    [InlineData("45 s", "45 seconds")]
    [InlineData("1 min", "1 minute")]
    [InlineData("8 min", "8 minutes")]
    [InlineData("1 h 30 min", "1 hour 30 minutes")]
    [InlineData("after 24 h", "after 24 hours")]
    [InlineData("2 d", "2 days")]
    [InlineData("250 mL", "250 millilitres")]
    [InlineData("1 L of it", "1 litre of it")]
    [InlineData("60 mm2/s at 20 °C", "60 square millimetres a second at 20 degrees Celsius")]
    [InlineData("60 mm²/s", "60 square millimetres a second")]
    [InlineData("18000 vph", "18000 vibrations an hour")]
    [InlineData("18\u202F000 vph", "18000 vibrations an hour")]
    [InlineData("18,000 vph", "18,000 vibrations an hour")]
    [InlineData("70 %", "70 per cent")]
    [InlineData("5 ppm", "5 parts per million")]
    [InlineData("room of 38 m3", "room of 38 cubic metres")]
    [InlineData("Third wheel end shake, mm (0.03 to 0.05 mm)?", "Third wheel end shake, in millimetres (0.03 to 0.05 millimetres)?")]
    [InlineData("Drop, °?", "Drop, in degrees?")]
    // A letter that is no unit, and a number that has none.
    [InlineData("5 screws", "5 screws")]
    [InlineData("3 heavy springs", "3 heavy springs")]
    [InlineData("Count 6 teeth", "Count 6 teeth")]
    // Signs and spans.
    [InlineData("+4 s/d", "plus 4 seconds a day")]
    [InlineData("-10 to +10 s/d", "minus 10 to plus 10 seconds a day")]
    [InlineData("−1 s/d", "minus 1 second a day")]
    [InlineData("±5 s/d", "plus or minus 5 seconds a day")]
    [InlineData("10 ±2 mm", "10 plus or minus 2 millimetres")]
    [InlineData("0.03 to 0.05 mm", "0.03 to 0.05 millimetres")]
    [InlineData("3–5 min", "3 to 5 minutes")]
    [InlineData("3-5 min", "3 to 5 minutes")]
    [InlineData("~5 min", "about 5 minutes")]
    [InlineData("≥ 200°", "at least 200 degrees")]
    [InlineData("< 0.2 ms", "less than 0.2 milliseconds")]
    [InlineData("3 × 5 min", "3 times 5 minutes")]
    // Fractions.
    [InlineData("½ mm", "half a millimetre")]
    [InlineData("½ h", "half an hour")]
    [InlineData("¼ h", "a quarter of an hour")]
    [InlineData("1½ h", "1 and a half hours")]
    [InlineData("2 ½ turns", "2 and a half turns")]
    [InlineData("½ turn", "half turn")]
    [InlineData("⅔ of the jar", "two thirds of the jar")]
    [InlineData("fill it ¾ full", "fill it three quarters full")]
    [InlineData("1/2 turn back", "half turn back")]
    [InlineData("1/2500 inch", "1 over 2500 inch")]
    // Clocks, and times of a day that are none.
    [InlineData("3:12", "3 minutes 12 seconds")]
    [InlineData("1:01", "1 minute 1 second")]
    [InlineData("5:00 more", "5 minutes more")]
    [InlineData("0:45", "45 seconds")]
    [InlineData("0:00", "0 seconds")]
    [InlineData("1:04:07", "1 hour 4 minutes 7 seconds")]
    [InlineData("3 d 4:07 h", "3 days 4 hours 7 minutes")]
    [InlineData("0:09 past its longest", "9 seconds past its longest")]
    [InlineData("since yesterday 9:30", "since yesterday 9:30")]
    [InlineData("Tue 17 Nov 14:05", "Tue 17 Nov 14:05")]
    [InlineData("2026-10-05 14:05", "2026-10-05 14:05")]
    // Ids, labels, codes.
    [InlineData("balance-hole-jewels", "balance hole jewels")]
    [InlineData("a 15-minute soak", "a 15 minute soak")]
    [InlineData("Off: balance to A1.", "Off: balance to A1.")]
    [InlineData("Job Q12, jar J5", "Job Q12, jar J5")]
    [InlineData("M-0042", "M0042")]
    [InlineData("grade: ISO VG 68", "grade: ISO viscosity grade 68")]
    [InlineData("Eyes: wear eye protection (P280).", "Eyes: wear eye protection.")]
    [InlineData("Flammable: no flame; keep the jar covered (P210, P233).", "Flammable: no flame; keep the jar covered.")]
    [InlineData("Rinse at once with water (P280, P305+P351+P338).", "Rinse at once with water.")]
    [InlineData("P210 Keep away from heat", "Keep away from heat")]
    // Drawing.
    [InlineData("▲ Stored energy", "Stored energy")]
    [InlineData("Jar 1 → Jar 2", "Jar 1, Jar 2")]
    [InlineData("Cleaning › Rinse", "Cleaning, Rinse")]
    [InlineData("'Fit the train' cannot be done yet", "Fit the train cannot be done yet")]
    [InlineData("the owner's watch", "the owner's watch")]
    [InlineData("oil, e.g. light oil", "oil, for example light oil")]
    [InlineData("cap jewel/endstone", "cap jewel or endstone")]
    [InlineData("", "")]
    [InlineData("   ", "")]
    // What would be a command to a shell, a terminal or a speech program is words or nothing.
    [InlineData("-w /tmp/x --stdin", "w /tmp or x stdin")]
    [InlineData("$(touch x) `touch y`", "(touch x) touch y")]
    [InlineData("a\nb\u001b[2Jc\u0007\u202Ed\u0000", "a b 2Jc d")]
    [InlineData("[[volm 0]] <break time='9s'/> {x}", "volm 0 break time is 9 seconds / x")]
    public void Words_are_said_in_full(string text, string words) => Assert.Equal(words, SpokenWords.Of(text));

    [Fact]
    public void No_text_breaks_it_and_nothing_hidden_comes_out() =>
        Gen.String.Sample(text =>
        {
            string words = SpokenWords.Of(text);
            return words.All(c => !char.IsControl(c) && !char.IsSurrogate(c) && "[]<>{}$`\\\"|".IndexOf(c, StringComparison.Ordinal) < 0)
                && !words.StartsWith('-');
        }, iter: 20_000);

    // Told by its sound signs: "A 1" would be said as the article, a# w'0n.
    [FactNeeding("espeak-ng")]
    public void A_compartment_is_heard_as_letter_and_number()
    {
        using Process espeak = Process.Start(new ProcessStartInfo("espeak-ng", ["-q", "-x", "--", SpokenWords.Of("Balance to A1.")]) { RedirectStandardOutput = true })!;
        Assert.Contains("eI w'0n", espeak.StandardOutput.ReadToEnd(), StringComparison.Ordinal);
    }

    [Fact]
    public void Every_caution_is_said_without_its_codes() =>
        Assert.All(Core.Procedures.Vocabulary.Cautions, code => Assert.DoesNotMatch(@"[HP]\d{3}|\(|\+", SpokenWords.Of(Cautions.Sentence(code))));
}
