using ServiceRunner.Core.Workshops;
using ServiceRunner.Files.Checks;
using ServiceRunner.Files.Tests.Checks;
using ServiceRunner.Files.Workshops;

using ServiceRunner.Tests.Shared;

namespace ServiceRunner.Files.Tests.Workshops;

public class WorkshopReaderTests
{
    private const string Head = "workshop: w\nformat: 1\nname: W\npeople: [{initials: IS, name: I. Sample}]\n";

    [Fact]
    public void The_example_of_the_page_is_read_whole()
    {
        ReadWorkshop read = WorkshopReader.Read("workshop-file.md", PageExample());
        Assert.Empty(read.Diagnostics);
        Workshop workshop = read.Workshop!;
        Assert.Empty(WorkshopChecks.Run("workshop-file.md", workshop));
        Assert.Equal(("by-the-mill", "Workshop by the mill", "M-"), (workshop.Id.Value, workshop.Name, workshop.NumberPrefix));
        Assert.Equal([("AB", true), ("CD", false)], workshop.People.Select(p => (p.Initials.Value, p.Reviews)));
        Assert.Equal("EUR", workshop.Currency);
        Assert.Equal(new Room(38, 3, 21), workshop.Room);
        Assert.Equal([(true, false), (false, true)], workshop.Liquids.Select(l => (l.Water, l.Flammable)));
        Share share = Assert.Single(workshop.Liquids[1].Contains);
        Assert.Equal(("isopropanol", 99m), (share.Substance.Value, share.Percent));
        Assert.Equal(["H225", "H319", "H336"], workshop.Liquids[1].Hazards.Select(h => h.Value));
        Assert.Equal((250m, 80m, 20, 30), (workshop.Jars[0].Millilitres, workshop.Jars[0].OpeningMillimetres, workshop.Jars[0].LifeBaskets, workshop.Jars[0].LifeDays));
        Assert.Equal([("rotating", false), ("dryer", true)], workshop.Machines.Select(m => (m.Kind.Value, m.Heated)));
        Assert.Equal(new ViscosityAt(120, 20), workshop.Lubricants[0].Viscosity);
        Assert.Equal((68, 730), (workshop.Lubricants[1].IsoGrade, workshop.Lubricants[1].GoodForDays));
        Assert.Equal((true, 730), (workshop.Lubricants[2].Grease, workshop.Lubricants[0].GoodForDays));
        Assert.Equal(["PageDown", "Enter"], workshop.Pedal.GoOn.Select(k => k.Value));
        Assert.Equal(700, workshop.Pedal.DeadMilliseconds);
        Assert.Equal((true, false), (workshop.Voice.Sound, workshop.Voice.Speech));
        Assert.Equal(["skipped", "soak-long", "point-other-lubricant", "power-on"], workshop.ReasonsFor.Select(r => r.Value));
        Assert.Equal("no", workshop.Prefers["barrier-film"]);
        Assert.Equal(64, read.Source!.Sha256.Length);
    }

    [Fact]
    public void Instruments_are_read_whole_and_what_is_wrong_with_them_is_named()
    {
        Workshop workshop = WorkshopReader.Read("w.yaml", Head + "instruments: [{instrument: timer, name: Timing machine, unit: [s/d, ms]}, {instrument: micrometer, name: Micrometer, unit: mm, checked: 2026-01-15}]\n").Workshop!;
        Assert.Equal([("timer", "Timing machine", "s/d ms", null), ("micrometer", "Micrometer", "mm", new DateOnly(2026, 1, 15))],
            workshop.Instruments.Select(i => (i.Id.Value, i.Name, string.Join(' ', i.Units.Select(u => u.Value)), i.Checked)));
        Assert.Equal(["'checked' cannot be read from '15 January'", "an instrument has no key 'made'", "an instrument needs 'unit'"],
            WorkshopReader.Read("w.yaml", Head + "instruments: {instrument: timer, name: T, made: here, checked: 15 January}\n").Diagnostics.Select(d => d.Message).Order(StringComparer.Ordinal));
        Workshop twice = WorkshopReader.Read("w.yaml", Head + "instruments: [{instrument: a, name: A, unit: mm}, {instrument: a, name: B, unit: mm}]\n").Workshop!;
        Assert.Contains("'a'", Assert.Single(WorkshopChecks.Run("w.yaml", twice)).Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("", WitnessWish.Optional)]
    [InlineData("witness: optional\n", WitnessWish.Optional)]
    [InlineData("witness: wanted\n", WitnessWish.Wanted)]
    [InlineData("witness: never\n", WitnessWish.Never)]
    public void The_wish_for_a_witness_is_one_of_three_words(string line, WitnessWish wish)
    {
        ReadWorkshop read = WorkshopReader.Read("w.yaml", Head + line);
        Assert.Empty(read.Diagnostics);
        Assert.Equal(wish, read.Workshop!.Witness);
        Assert.True(WorkshopReader.Read("w.yaml", Head + "witness: sometimes\n").HasErrors);
    }

    [Fact]
    public void The_voice_is_read_whole()
    {
        Voice voice = WorkshopReader.Read("w.yaml", Head + "voice: {sound: no, speech: yes, steps: no, least-sounds: yes, quiet: yes, words-a-minute: 150, program: [espeak-ng, -v, en-gb], player: paplay}\n").Workshop!.Voice;
        Assert.Equal((false, true, false, true, true, 150), (voice.Sound, voice.Speech, voice.Steps, voice.LeastSounds, voice.Quiet, voice.WordsAMinute));
        Assert.Equal(["espeak-ng", "-v", "en-gb"], voice.Program);
        Assert.Equal(["paplay"], voice.Player);
        Voice usual = WorkshopReader.Read("w.yaml", Head).Workshop!.Voice;
        Assert.Equal((true, false, true, false, false, null), (usual.Sound, usual.Speech, usual.Steps, usual.LeastSounds, usual.Quiet, usual.WordsAMinute));
    }

    [Theory]
    [InlineData("workshop-file.md")]
    [InlineData("sound-and-speech.md")]
    public void Examples_of_a_voice_are_read_without_complaint(string page)
    {
        string[] examples = [.. File.ReadAllText(Path.Combine(Repository.Root, "docs", page)).ReplaceLineEndings("\n").Split("```yaml\n").Skip(1).Select(e => e.Split("```")[0]).Where(e => e.StartsWith("voice:", StringComparison.Ordinal))];
        Assert.NotEmpty(examples);
        Assert.All(examples, e => Assert.Empty(WorkshopReader.Read("w.yaml", Head + e).Diagnostics));
    }

    [Fact]
    public void The_page_names_every_deviation_that_may_ask_for_a_reason()
    {
        string page = File.ReadAllText(Page);
        Assert.All(Core.Jobs.Deviation.Kinds, kind => Assert.Contains($"`{kind}`", page, StringComparison.Ordinal));
    }

    [Fact]
    public void What_is_not_said_has_its_usual_value()
    {
        Workshop workshop = WorkshopReader.Read("w.yaml", Head).Workshop!;
        Assert.Null(workshop.Room);
        Assert.Equal(["PageDown", "Enter"], workshop.Pedal.GoOn.Select(k => k.Value));
        Assert.True(workshop.Voice.Sound);
        Assert.Empty(workshop.ReasonsFor);
    }

    [Theory]
    [InlineData("peeple: []", "w.yaml:5:1: error unknown-key: a workshop has no key 'peeple'\n    Did you mean 'people'?\n")]
    [InlineData("reasons-for: [skiped]", "w.yaml:5:15: error unknown-word: 'skiped' is no word for 'reasons-for'\n    Did you mean 'skipped'?\n")]
    [InlineData("room: {volume: 38}", "w.yaml:5:16: error bad-unit: 'volume' '38' has not the unit that is wanted\n    Write it like 38 m3.\n")]
    [InlineData("room: {volume: '1,234 m3'}", "w.yaml:5:16: error ambiguous-number: 'volume' '1,234' can be read in two ways\n    Write 1.234 for one and a bit, 1234 for more than a thousand.\n")]
    [InlineData("lubricants: [{lubricant: a, name: A, roles: never}]", "w.yaml:5:45: error unknown-word: 'never' is no word for 'roles'\n    Known here: fast-pivot, slow-pivot, escapement, keyless, mainspring, barrel-wall, friction, endstone and strike.\n")]
    [InlineData("lubricants: [{lubricant: a, name: A, roles: keyless, grade: ISO VG 33}]", "w.yaml:5:61: error wrong-form: 'grade' cannot be read from 'ISO VG 33'\n    Write it like ISO VG 32; the grades are 2, 3, 5, 7, 10, 15, 22, 32, 46, 68, 100, 150, 220, 320, 460, 680, 1000, 1500, 2200, 3200.\n")]
    [InlineData("lubricants: [{lubricant: a, name: A, roles: keyless, viscosity: 120 mm2/s}]", "w.yaml:5:65: error bad-unit: 'viscosity' '120 mm2/s' has not the unit that is wanted\n    Write it like 120 mm2/s at 20 °C.\n")]
    [InlineData("liquids: [{liquid: a, name: A, solution: b, hazards: [225]}]", "w.yaml:5:55: error wrong-form: 'hazards' cannot be read from '225'\n    Write it with the codes of the safety data sheet: H225, EUH066.\n")]
    [InlineData("liquids: [{liquid: a, name: A, solution: b, contains: [{substance: c, share: 101 %}]}]", "w.yaml:5:78: error not-a-number: 'share' is more than 0 % and at most 100 %, and '101 %' is not\n")]
    [InlineData("machines: [{machine: a, name: A, kind: rotary}]", "w.yaml:5:40: error unknown-word: 'rotary' is no word for 'kind'\n    Known here: rotating, ultrasonic and dryer.\n")]
    [InlineData("pedal: {dead-time: 1 h}", "w.yaml:5:20: error bad-unit: 'dead-time' '1 h' has not the unit that is wanted\n    Write it like 700 ms.\n")]
    [InlineData("voice: {words-a-minute: 1000}", "w.yaml:5:25: error not-a-number: 'words-a-minute' is from 80 to 450, and '1000' is not\n")]
    [InlineData("voice: {words-a-minute: 150.5}", "w.yaml:5:25: error not-a-number: 'words-a-minute' wants a whole number, and '150.5' is none\n")]
    [InlineData("voice: {spech: yes}", "w.yaml:5:9: error unknown-key: 'voice' has no key 'spech'\n    Did you mean 'speech'?\n")]
    [InlineData("jars: [{jar: J1, name: One}]", "w.yaml:5:8: error missing-key: a jar needs 'holds'\n")]
    public void A_fault_is_named_with_its_place(string line, string said) =>
        Assert.Equal(said, string.Concat(WorkshopReader.Read("w.yaml", Head + line + "\n").Diagnostics.Select(DiagnosticText.Line)));

    [Fact]
    public void One_fault_hides_no_other()
    {
        ReadWorkshop read = WorkshopReader.Read("w.yaml", "workshop: W!\nformat: 3\npeople: [{initials: too-long-by-far}]\nroom: {hight: 3 m}\n");
        Assert.Equal(["missing-key", "bad-name", "unknown-format", "missing-key", "wrong-form", "unknown-key"], read.Diagnostics.Select(d => d.Code));
        Assert.NotNull(read.Workshop);
        Assert.True(read.HasErrors);
    }

    private static string Page => Path.Combine(Repository.Root, "docs", "workshop-file.md");

    private static string PageExample() => File.ReadAllText(Page).ReplaceLineEndings("\n").Split("```yaml\n")[1].Split("```")[0];
}
