using ServiceRunner.Core.Procedures;
using ServiceRunner.Core.Quantities;
using ServiceRunner.Files.Checks;
using ServiceRunner.Files.Procedures;

namespace ServiceRunner.Files.Tests.Procedures;

public class ProcedureReaderTests
{
    private const string Whole = """
        procedure: whole
        format: 1
        title: Everything
        revision: 1.2
        covers: A movement that has everything
        sources: common practice
        notes: For the reader
        mends: fork
        asks:
          shellac: Is anything set in shellac?
          luminous: {ask: Is it luminous?, answers: [yes, no, unknown]}
        parts:
          - {part: plate, name: Main plate, kind: plate, stays: yes, jewels: 6, compartment: B1}
          - {part: bridge, name: Bridge, kind: bridge, of: [brass, ruby], finished: gilt, under: [screw]}
          - {part: screw, name: Screw, kind: screw, of: steel, seat: bridge, count: 2}
          - {part: fork, name: Fork, set-with: shellac, delicate: [alcohol, heat], under-power: yes}
        groups: {plates: [plate, bridge], all: [plates, fork]}
        oiling-points:
          - {point: third, name: Third, role: slow-pivot, amount: half the sink, when: after bridge, at: [12.4, '8,1'], side: dial}
          - {point: horns, name: Horns, role: never, why: It drags}
        map: {width: 23.3, height: 23}
        stages:
          - stage: dismantling
            steps:
              - step: let-down
                do: Let it down
                how: Slowly
                why: It flies
                takes: 1 min 30 s
                caution: [stored-energy, eyes]
                power: off
                confirm: {ask: Which way?, choices: [left, right]}
                photo: The click
                witness: The click
              - {step: off, do: Take off, removes: [screw, plates], after: let-down, uses: [screwdriver, tweezers], confirm: How many?}
          - stage: my-own
            title: My own stage
            opens-after: dismantling
            steps:
              - step: wash
                do: Wash
                hands: free
                bath: {solution: water-based-cleaner, parts: [plates, bridge], least: 3 min, aim: 5 min, most: 8 min, jar: J1, at: 40 °C, ultrasonic: yes, agitate: gently}
              - {step: spin, do: Spin, spin: {parts: all, aim: 30 s}}
              - {step: dry, do: Dry, dry: {parts: [plate], by: warm-air, at: 45 °C, aim: 5 min}}
              - {step: wait, do: Wait, wait: {for: it to settle, aim: 1 d}}
              - {step: brush, do: Brush, brush: {parts: bridge, with: a soft brush}, peg: [holes, sinks], coat: {parts: fork, with: barrier-film}}
              - {step: peg, do: Peg, peg: {places: holes, with: pegwood}, demagnetise: yes, replaces: fork}
              - step: look
                do: Look
                examine: [{place: fork, for: [sound, chipped]}, {place: pivots, for: [sound, bent], part: fork}]
                if-found: {chipped: stone, pivots.bent: staff}
                measure: [{what: shake, unit: mm, between: [0.03, '0,05'], or-felt: [right, none]}, {what: lock, or-felt: [right, light]}, {what: gap, unit: mm, at-most: 0.1}]
                count: {what: turns, unit: turns, is: 6}
                only-if: [shellac, {luminous: [no, unknown]}]
              - {step: fit, do: Fit, fits: [plates, screw], tries: fork, oil: [third], power: {set-up: 1.5 turns}, estimate: The work, consent: The price}
              - step: rates
                do: Rates
                rates: {positions: [dial-up, crown-left], settle: 5 min, after-hours: [1, 24], lift-angle: 52, accept: {mean: [-10, 10], greatest-difference: 25, amplitude: [200, 320]}}
                power: on
        """;

    [Fact]
    public void The_head_is_read()
    {
        Procedure procedure = Good(Whole);
        Assert.Equal(("whole", "Everything", "1.2", "A movement that has everything"), (procedure.Id.Value, procedure.Title, procedure.Revision, procedure.Covers));
        Assert.Equal(["common practice"], procedure.Sources);
        Assert.Equal("fork", procedure.Mends!.Value.Value);
        Assert.Equal(new MapSize(23.3m, 23), procedure.Map);
        Assert.Equal([("shellac", "yes no"), ("luminous", "yes no unknown")], procedure.Asks.Select(a => (a.Fact.Value, string.Join(' ', a.Answers))));
        Assert.Equal([("dismantling", "Dismantling", ""), ("my-own", "My own stage", "dismantling")], procedure.Stages.Select(s => (s.Id.Value, s.Title, string.Join(' ', s.OpensAfter))));
        Assert.Equal([("plates", "plate bridge"), ("all", "plate bridge fork")], procedure.Groups.Select(g => (g.Name.Value, string.Join(' ', g.Parts))));
    }

    [Fact]
    public void Parts_and_points_are_read()
    {
        Procedure procedure = Good(Whole);
        Part screw = procedure.Parts[2], fork = procedure.Parts[3];
        Assert.Equal(("screw", "screw", 2, "bridge", "steel"), (screw.Id.Value, screw.Kind, screw.Count, screw.Seat!.Value.Value, screw.Of[0].Value));
        Assert.Equal(("other", true, "shellac", "alcohol heat"), (fork.Kind, fork.UnderPower, fork.SetWith[0].Value, string.Join(' ', fork.Delicate)));
        Assert.Equal((6, true, "B1"), (procedure.Parts[0].Jewels, procedure.Parts[0].Stays, procedure.Parts[0].Compartment));
        Assert.Equal(("gilt", "screw"), (procedure.Parts[1].Finished[0].Value, procedure.Parts[1].Under[0].Value));
        OilingPoint third = procedure.OilingPoints[0];
        Assert.Equal((ServingTime.After, "bridge", "half the sink"), (third.When!.Time, third.When.Part.Value, third.Amount));
        Assert.Equal(new MapPoint(12.4m, 8.1m, true), third.On);
        Assert.True(procedure.OilingPoints[1].MustStayDry);
    }

    [Fact]
    public void The_facets_are_read()
    {
        Dictionary<string, Step> steps = Good(Whole).Steps.ToDictionary(s => s.Id.Value);
        Step down = steps["let-down"];
        Assert.Equal((TimeSpan.FromSeconds(90), new PowerFacet.LetsDown(), "The click", "The click"), (down.Takes, down.Power, down.Photo, down.Witness));
        Assert.Equal(("Which way?", "left right"), (down.Confirm!.Ask, string.Join(' ', down.Confirm.Choices)));
        Assert.Equal("screw plate bridge", string.Join(' ', steps["off"].Removes));
        Assert.Equal("screwdriver tweezers", string.Join(' ', steps["off"].Uses));
        ClockFacet.Bath bath = Assert.IsType<ClockFacet.Bath>(steps["wash"].Clock);
        Assert.Equal(("water-based-cleaner", "J1", 40m, true, "gently", "plate bridge"), (bath.Solution.Value, bath.Jar, bath.Celsius, bath.Ultrasonic, bath.Agitate, string.Join(' ', bath.Parts)));
        Assert.Equal(new Window(TimeSpan.FromMinutes(3), TimeSpan.FromMinutes(5), TimeSpan.FromMinutes(8)), bath.Window);
        Assert.True(steps["wash"].HandsFree);
        Assert.Equal(new Window(TimeSpan.FromSeconds(30), TimeSpan.FromSeconds(30), null), steps["spin"].Clock!.Window);
        Assert.Equal("warm-air", Assert.IsType<ClockFacet.Dry>(steps["dry"].Clock).By.Value);
        Assert.Equal("it to settle", Assert.IsType<ClockFacet.Wait>(steps["wait"].Clock).For);
        Assert.Equal(("a soft brush", "holes sinks", "barrier-film"), (steps["brush"].Brush!.With, string.Join(' ', steps["brush"].Peg!.Places), steps["brush"].Coat!.With));
        Assert.Equal(("pegwood", true, "fork"), (steps["peg"].Peg!.With, steps["peg"].Demagnetise, string.Join(' ', steps["peg"].Replaces)));
        Assert.Equal(new PowerFacet.SetUp(1.5m), steps["fit"].Power);
        Assert.Equal(("The work", "The price", "third"), (steps["fit"].Estimate, steps["fit"].Consent, string.Join(' ', steps["fit"].Oil)));
    }

    [Fact]
    public void Findings_measures_and_rates_are_read()
    {
        Dictionary<string, Step> steps = Good(Whole).Steps.ToDictionary(s => s.Id.Value);
        Step look = steps["look"];
        Assert.Equal(["fork", "fork"], look.Examine.Select(e => e.Part!.Value.Value));
        Assert.Equal([("", "chipped", "stone"), ("pivots", "bent", "staff")], look.IfFound.Select(f => (f.Spot, f.Choice.Value, f.Procedure.Value)));
        Assert.Equal([("shake", 0.03m, 0.05m, "right none"), ("lock", null, null, "right light"), ("gap", null, 0.1m, "")], look.Measure.Select(m => (m.What.Value, m.AtLeast, m.AtMost, string.Join(' ', m.OrFelt))));
        Assert.True(look.Count!.Accepts(6));
        Assert.False(look.Count.Accepts(5));
        Assert.Equal([("shellac", "yes"), ("luminous", "no unknown")], look.OnlyIf.Select(c => (c.Fact.Value, string.Join(' ', c.Answers))));
        RatesFacet rates = steps["rates"].Rates!;
        Assert.Equal((TimeSpan.FromMinutes(5), 52m, (-10m, 10m), 25m, (200m, 320m)), (rates.Settle, rates.LiftAngle, rates.Mean, rates.GreatestDifference, rates.Amplitude));
        Assert.Equal([1m, 24m], rates.AfterHours);
        Assert.Equal("dial-up crown-left", string.Join(' ', rates.Positions));
    }

    [Fact]
    public void A_part_out_of_a_group_keeps_the_place_of_the_mention()
    {
        Step off = Good(Whole).Steps.Single(s => s.Id.Value == "off");
        Assert.Equal(off.Removes[1].At, off.Removes[2].At);
        Assert.Equal(new Place(35, 52), off.Removes[1].At);
    }

    [Fact]
    public void A_fault_in_one_step_hides_none_in_the_next()
    {
        ReadProcedure read = Read("""
            procedure: faults
            format: 1
            title: Faults
            revision: 1
            stages:
              - stage: cleaning
                steps:
                  - {step: a, do: A, takes: long}
                  - {step: b, do: B, hands: both}
                  - {step: c, do: C, power: half}
                  - {step: d, do: D, wait: 5 min}
                  - {step: e, do: E, rates: {positions: [face-up], accept: {mean: 3}}}
            """);
        Assert.Equal(
            """
            faults.yaml:8:33: error bad-duration: 'takes' wants a length of time, and 'long' is none
                Write it like 45 s, 8 min, 1 h 30 min, 24 h or 2 d.
            faults.yaml:9:33: error unknown-word: 'both' is no word for 'hands'
                Known here: needed and free.
            faults.yaml:10:33: error unknown-word: 'half' is no word for 'power'
                Known here: off and on.
            faults.yaml:11:32: error wrong-kind: 'wait' wants keys with values, and this is a single value
            faults.yaml:12:46: error unknown-word: 'face-up' is no word for 'positions'
                Known here: dial-up, dial-down, crown-up, crown-down, crown-left, crown-right, pendant-up, pendant-down, pendant-left and pendant-right.
            faults.yaml:12:71: error wrong-form: 'mean' wants 2 numbers, and here is 1
                Write it like [0.03, 0.05].

            """.ReplaceLineEndings("\n"), Said(read));
        Assert.Equal(5, read.Procedure!.Steps.Count());
        Assert.True(read.HasErrors);
    }

    [Fact]
    public void Nothing_is_read_from_what_is_no_map()
    {
        ReadProcedure read = Read("- a\n");
        Assert.Null(read.Procedure);
        Assert.True(read.HasErrors);
        Assert.Single(read.Sources);
    }

    [Fact]
    public void The_source_is_given_with_its_hash()
    {
        SourceText source = Assert.Single(Read("procedure: a\n").Sources);
        Assert.Equal(("faults.yaml", "procedure: a\n"), (source.Name, source.Text));
        // printf 'procedure: a\n' | sha256sum
        Assert.Equal("ce2ae72aa129adf848e8811459f487a6ca54d5e27ac8b942fde82e68491cba5c", source.Sha256);
    }

    [Fact]
    public void A_procedure_in_the_form_of_the_page_is_read_the_same_with_Windows_line_ends() =>
        Assert.Equal(Good(Whole).Steps.Select(s => s.Do), Good(Whole.ReplaceLineEndings("\r\n")).Steps.Select(s => s.Do));

    private static Procedure Good(string text)
    {
        ReadProcedure read = Read(text);
        Assert.Equal("", Said(read));
        return read.Procedure!;
    }

    private static ReadProcedure Read(string text) => ProcedureReader.Read("faults.yaml", text, ProcedureLibrary.Empty);

    private static string Said(ReadProcedure read) => string.Concat(read.Diagnostics.Select(DiagnosticText.Line));
}
