using System.Text;

namespace ServiceRunner.Tests.EndToEnd;

/// <summary>A wrong file gets one clear sentence: what, where, what to do.</summary>
public class BadFileTests
{
    private static void Checks(string name, byte[] bytes, string expected)
    {
        using TemporaryFolder folder = new();
        string file = folder.File(name, bytes);
        (int exit, string output, string errors) = BuiltProgram.Run(folder.Path, "check", file);
        Assert.Equal((1, ""), (exit, errors));
        Assert.Contains(expected, output, StringComparison.Ordinal);
        Assert.Single(output.Split('\n'), l => l.Contains("error", StringComparison.Ordinal) && l.StartsWith(file, StringComparison.Ordinal));
    }

    [Fact]
    public void A_picture() => Checks("a.yaml", [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0, 0, 13], "picture");

    [Fact]
    public void Latin_1() => Checks("a.yaml", [.. Encoding.Latin1.GetBytes("procedure: x\ntitle: Großuhr\n")], ":2:11");

    [Fact]
    public void An_empty_file() => Checks("a.yaml", [], "empty");

    [Fact]
    public void A_million_brackets() => Checks("a.yaml", Encoding.UTF8.GetBytes("procedure: " + new string('[', 1_000_000)), "deep");

    [Fact]
    public void Two_hundred_megabytes()
    {
        using TemporaryFolder folder = new();
        string file = Path.Combine(folder.Path, "a.yaml");
        using (FileStream stream = File.Create(file)) stream.SetLength(200 << 20);
        (int exit, string output, _) = BuiltProgram.Run(folder.Path, "check", file);
        Assert.Equal(1, exit);
        Assert.Contains("4 MB", output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_bad_file_hides_no_good_one()
    {
        using TemporaryFolder folder = new();
        folder.File("bad.yaml", "procedure: x\nformat: 1\ntitel: y\n");
        folder.File("also.yaml", "- a list\n");
        (int exit, string output, _) = BuiltProgram.Run(folder.Path, "check", folder.Path);
        Assert.Equal(1, exit);
        Assert.Contains("bad.yaml:3:1", output, StringComparison.Ordinal);
        Assert.Contains("Did you mean 'title'?", output, StringComparison.Ordinal);
        Assert.Contains("also.yaml", output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_that_is_not_there()
    {
        using TemporaryFolder folder = new();
        (int exit, string output, string errors) = BuiltProgram.Run(folder.Path, "check", "nowhere.yaml");
        Assert.Equal((3, "", "servicerunner: there is no file or folder nowhere.yaml.\n"), (exit, output, errors));
    }

    [Fact]
    public void What_was_found_as_json()
    {
        using TemporaryFolder folder = new();
        (int exit, string output, _) = BuiltProgram.Run(folder.Path, "check", "--json", folder.File("bad.yaml", "procedure: x\nformat: 1\ntitel: y\n"));
        Assert.Equal(1, exit);
        System.Text.Json.JsonElement unknown = System.Text.Json.JsonDocument.Parse(output).RootElement.GetProperty("diagnostics").EnumerateArray().Single(d => d.GetProperty("code").GetString() == "unknown-key");
        Assert.Equal((3, 1), (unknown.GetProperty("line").GetInt32(), unknown.GetProperty("column").GetInt32()));
    }
}
