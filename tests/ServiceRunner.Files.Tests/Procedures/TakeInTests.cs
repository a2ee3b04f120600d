using ServiceRunner.Core.Procedures;
using ServiceRunner.Files.Checks;
using ServiceRunner.Files.Procedures;

namespace ServiceRunner.Files.Tests.Procedures;

public class TakeInTests
{
    private const string Head = "format: 1\ntitle: T\nrevision: 1\n";

    private const string Line = "procedure: line\n" + Head + """
        wants-groups: [plates]
        asks: {hard-water: Is the water hard?}
        parts: [{part: basket, name: Basket, stays: yes}]
        groups: {all: [plates, basket]}
        stages:
          - stage: cleaning
            steps:
              - {step: wash, do: Wash, bath: {solution: tap-water, parts: plates, aim: 1 min}}
              - {step: rinse, do: Rinse, after: wash, only-if: hard-water, bath: {solution: tap-water, parts: all, aim: 1 min}}
          - stage: drying
            title: Drying
            opens-after: cleaning
            steps:
              - {step: dry, do: Dry, dry: {parts: all, by: air, aim: 1 min}}
        """;

    private const string Outer = "procedure: outer\n" + Head + """
        asks: {dirty: Is it dirty?}
        parts: [{part: plate, name: Plate}, {part: bridge, name: Bridge}]
        groups: {both: [plate, bridge]}
        stages:
          - stage: cleaning
            steps:
              - {step: before, do: Before, removes: both}
              - {take-in: line, as: wash, with: {plates: both}, after: before, only-if: {dirty: yes}}
              - {step: after, do: After, after: wash/dry, fits: both}
        """;

    [Fact]
    public void Steps_come_in_under_the_name_with_what_stands_beside()
    {
        ReadProcedure read = Good(Outer, Line);
        Procedure procedure = read.Procedure!;
        Assert.Equal(["before", "wash/wash", "wash/rinse", "wash/dry", "after"], procedure.Steps.Select(s => s.Id.Value));
        Dictionary<string, Step> steps = procedure.Steps.ToDictionary(s => s.Id.Value);
        Assert.Equal("before", string.Join(' ', steps["wash/wash"].After));
        Assert.Equal("wash/wash before", string.Join(' ', steps["wash/rinse"].After));
        Assert.Equal("wash/wash wash/rinse before", string.Join(' ', steps["wash/dry"].After));
        Assert.Equal([("hard-water", "yes"), ("dirty", "yes")], steps["wash/rinse"].OnlyIf.Select(c => (c.Fact.Value, string.Join(' ', c.Answers))));
        Assert.Equal("plate bridge basket", string.Join(' ', steps["wash/rinse"].Clock!.Parts));
        Assert.Equal(("line.yaml", ""), (steps["wash/wash"].TakenFrom, steps["after"].TakenFrom));
    }

    [Fact]
    public void Parts_and_questions_come_along_and_the_sources_are_listed()
    {
        ReadProcedure read = Good(Outer, Line);
        Assert.Equal(["plate", "bridge", "basket"], read.Procedure!.Parts.Select(p => p.Id.Value));
        Assert.Equal(["dirty", "hard-water"], read.Procedure.Asks.Select(a => a.Fact.Value));
        Assert.Equal(["outer.yaml", "line.yaml"], read.Sources.Select(s => s.Name));
        Assert.Equal([Outer, Line], read.Sources.Select(s => s.Text));
    }

    [Fact]
    public void What_a_job_has_pinned_is_read_again_without_any_file()
    {
        ReadProcedure first = Good(Outer, Line);
        ReadProcedure again = ProcedureReader.Read(first.Sources[0].Name, first.Sources[0].Text, new ProcedureLibrary(ProcedureSource.Pinned(first.Sources)));
        Assert.Empty(again.Diagnostics);
        Assert.Equal(first.Procedure!.Steps.Select(s => (s.Id, s.Do, string.Join(' ', s.After))), again.Procedure!.Steps.Select(s => (s.Id, s.Do, string.Join(' ', s.After))));
        Assert.Equal(first.Sources, again.Sources);
    }

    [Fact]
    public void The_name_is_the_id_where_no_other_is_given() =>
        Assert.Contains("line/wash", Read(Outer.Replace(", as: wash", "", StringComparison.Ordinal), Line).Procedure!.Steps.Select(s => s.Id.Value));

    [Fact]
    public void A_file_that_wants_groups_can_be_read_alone()
    {
        ReadProcedure read = Read(Line);
        Assert.Empty(read.Diagnostics);
        Assert.Equal("plates basket", string.Join(' ', read.Procedure!.Steps.Last().Clock!.Parts));
        Assert.Equal(["plates", "basket"], read.Procedure.Parts.Select(p => p.Id.Value));
    }

    [Fact]
    public void Files_are_taken_in_through_others()
    {
        string middle = "procedure: middle\n" + Head + "wants-groups: [plates]\nstages: [{stage: cleaning, steps: [{take-in: line, as: first, with: {plates: plates}}]}]\n";
        ReadProcedure read = Good(Outer.Replace("take-in: line", "take-in: middle", StringComparison.Ordinal).Replace("wash/dry", "wash/first/dry", StringComparison.Ordinal), middle, Line);
        Step rinse = read.Procedure!.Steps.Single(s => s.Id.Value == "wash/first/rinse");
        Assert.Equal("wash/first/wash before", string.Join(' ', rinse.After));
        Assert.Equal("line.yaml", rinse.TakenFrom);
        Assert.Equal(["outer.yaml", "middle.yaml", "line.yaml"], read.Sources.Select(s => s.Name));
        Assert.Contains("basket", read.Procedure.Parts.Select(p => p.Id.Value));
    }

    [Fact]
    public void A_circle_of_two_files_is_named()
    {
        string one = "procedure: one\n" + Head + "stages: [{stage: final, steps: [{take-in: two}]}]\n";
        string two = "procedure: two\n" + Head + "stages: [{stage: final, steps: [{take-in: one}]}]\n";
        Assert.Equal(
            "outer.yaml:5:43: error take-in-faulty: 'two' has 1 error and cannot be taken in as it is\n" +
            "    It is two.yaml:5:43: these files take each other in: one → two → one.\n", Said(Read(one, two)));
    }

    [Fact]
    public void What_stands_beside_a_taking_in_is_looked_up_there()
    {
        string text = Outer.Replace("after: before", "after: befor", StringComparison.Ordinal).Replace("{dirty: yes}", "{dirt: yes}", StringComparison.Ordinal);
        Assert.Equal(
            "outer.yaml:12:64: error unknown-step: there is no step 'befor'\n    Did you mean 'before'?\n" +
            "outer.yaml:12:81: error unknown-fact: there is no fact 'dirt'\n    Did you mean 'dirty'?\n", Said(Read(text, Line)));
    }

    [Fact]
    public void Files_that_double_each_other_do_not_grow_without_end()
    {
        string[] files = [.. Enumerable.Range(0, 30).Select(i =>
            $"procedure: f{i}\n{Head}stages: [{{stage: final, steps: [{{take-in: f{i + 1}, as: a}}, {{take-in: f{i + 1}, as: b}}]}}]\n"),
            $"procedure: f30\n{Head}stages: [{{stage: final, steps: [{{step: s, do: S}}]}}]\n"];
        ReadProcedure read = Read(files[0], files[1..]);
        Assert.True(read.HasErrors);
        Assert.True(read.Procedure!.Steps.Count() < 1000);
    }

    [Fact]
    public void The_same_part_in_both_files_is_one_if_both_say_the_same()
    {
        string text = Outer.Replace("parts: [", "parts: [{part: basket, name: Basket, stays: yes}, ", StringComparison.Ordinal);
        Assert.Equal("", Said(Read(text, Line)));
        Assert.Contains("take-in-conflict", Said(Read(text.Replace("name: Basket", "name: Tub", StringComparison.Ordinal), Line)), StringComparison.Ordinal);
    }

    private static ReadProcedure Good(string text, params string[] others)
    {
        ReadProcedure read = Read(text, others);
        Assert.Equal("", Said(read));
        return read;
    }

    private static ReadProcedure Read(string text, params string[] others) =>
        ProcedureReader.Read("outer.yaml", text, new ProcedureLibrary(ProcedureSource.Texts(others.Select(o => (o.Split('\n')[0]["procedure: ".Length..] + ".yaml", o)))));

    private static string Said(ReadProcedure read) => string.Concat(read.Diagnostics.Select(DiagnosticText.Line));
}
