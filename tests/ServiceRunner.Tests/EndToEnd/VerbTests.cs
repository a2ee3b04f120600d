using ServiceRunner.Files.Machine;

namespace ServiceRunner.Tests.EndToEnd;

public class VerbTests
{
    [Fact]
    public void Help_names_every_verb()
    {
        using TemporaryFolder folder = new();
        (int exit, string output, _) = BuiltProgram.Run(folder.Path, "--help");
        Assert.Equal(0, exit);
        foreach (string verb in new[] { "demo", "check", "jobs", "report", "receipt", "label", "estimate", "trace", "audit", "pedal", "backup", "restore", "erase-person", "completion", "--data" }) Assert.Contains(verb, output, StringComparison.Ordinal);
    }

    [Fact]
    public void An_unknown_verb_is_refused()
    {
        using TemporaryFolder folder = new();
        (int exit, _, string errors) = BuiltProgram.Run(folder.Path, "reprot", "1");
        Assert.NotEqual(0, exit);
        Assert.Contains("reprot", errors, StringComparison.Ordinal);
    }

    [Fact]
    public void Without_a_terminal_it_tells_the_bench_line_by_line_and_ends_with_its_input()
    {
        using TemporaryFolder folder = new();
        string data = Path.Combine(folder.Path, "data");
        Assert.Null(ServiceRunner.Demo.DemoWorkshop.Make(data, new MachineClock()));
        (int exit, string output, string errors) = BuiltProgram.Run(folder.Path, "--data", data);
        Assert.Equal((0, ""), (exit, errors));
        Assert.StartsWith("Standard output is no terminal, so the bench is told line by line.\n", output, StringComparison.Ordinal);
        Assert.Contains("Q26-110", output, StringComparison.Ordinal);
        Assert.EndsWith("The bench is left. 1 clock goes on counting.\n", output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_first_start_without_a_terminal_says_what_to_do()
    {
        using TemporaryFolder folder = new();
        (int exit, _, string errors) = BuiltProgram.Run(folder.Path);
        Assert.Equal(4, exit);
        Assert.Contains("start 'servicerunner' in a terminal once", errors, StringComparison.Ordinal);
    }

    [Fact]
    public void A_batch_is_traced_as_text_and_as_json_and_nothing_found_is_said()
    {
        using TemporaryFolder folder = new();
        string data = Path.Combine(folder.Path, "data");
        Assert.Null(ServiceRunner.Demo.DemoWorkshop.Make(data, new MachineClock()));
        (int exit, string text, string errors) = BuiltProgram.Run(folder.Path, "trace", "S-0318", "--data", data);
        Assert.Equal((0, ""), (exit, errors));
        string[] lines = text.TrimEnd().Split('\n');
        Assert.Equal("S-0318: 2 points in 1 job.", lines[0]);
        Assert.Equal("Q26-101  Wrist watch, silvered dial, steel case", lines[2]);
        Assert.EndsWith("  IV  Exit stone, impulse face: escapement, Stone grease", lines[3], StringComparison.Ordinal);
        (exit, string json, _) = BuiltProgram.Run(folder.Path, "trace", "S-0318", "--json", "--data", data);
        Assert.Equal(0, exit);
        System.Text.Json.JsonElement root = System.Text.Json.JsonDocument.Parse(json).RootElement;
        Assert.Equal(["exit-stone", "entry-stone"], root.GetProperty("jobs")[0].GetProperty("points").EnumerateArray().Select(p => p.GetProperty("point").GetString()));
        (exit, text, errors) = BuiltProgram.Run(folder.Path, "trace", "S-031", "--data", data);
        Assert.Equal((3, "", $"servicerunner: no job in {data} had anything from a bottle 'S-031'; the name must be as it was written down, the whole of it.\n"), (exit, text, errors));
    }

    [Fact]
    public void Jobs_are_columns_with_tabs_in_a_pipe_and_a_report_is_plain_text()
    {
        using TemporaryFolder folder = new();
        string data = Path.Combine(folder.Path, "data");
        Assert.Null(ServiceRunner.Demo.DemoWorkshop.Make(data, new MachineClock()));
        (int exit, string jobs, _) = BuiltProgram.Run(folder.Path, "jobs", "--data", data);
        Assert.Equal(0, exit);
        string[][] rows = [.. jobs.Trim().Split('\n').Select(l => l.Split('\t'))];
        Assert.Equal(["number", "stands", "since", "steps", "what", "owner", "promised"], rows[0]);
        Assert.All(rows, r => Assert.Equal(7, r.Length));
        Assert.Equal("ready", rows.Single(r => r[0] == "Q26-101")[1]);
        (_, string report, _) = BuiltProgram.Run(folder.Path, "report", "Q26-101", "--data", data);
        Assert.Contains("Centre wheel, train side: Heavy oil, bottle H-1140", report, StringComparison.Ordinal);
        Assert.Contains("Head of the journal:", report, StringComparison.Ordinal);
        Assert.DoesNotContain("\e", report, StringComparison.Ordinal);
        Assert.DoesNotContain("Deviations", report, StringComparison.Ordinal);
        (int audit, string found, _) = BuiltProgram.Run(folder.Path, "audit", "--data", data);
        Assert.Equal(0, audit);
        Assert.Contains("no damage", found, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("bash")]
    [InlineData("zsh")]
    [InlineData("fish")]
    public void A_shell_can_complete_verbs(string shell)
    {
        using TemporaryFolder folder = new();
        (int exit, string script, _) = BuiltProgram.Run(folder.Path, "completion", shell);
        Assert.Equal(0, exit);
        Assert.Contains("suggest", script, StringComparison.Ordinal);
        (_, string suggested, _) = BuiltProgram.Run(folder.Path, "[suggest:15]", "servicerunner r");
        Assert.Contains("report", suggested, StringComparison.Ordinal);
        Assert.Equal(2, BuiltProgram.Run(folder.Path, "completion", "abacus").Exit);
    }
}
