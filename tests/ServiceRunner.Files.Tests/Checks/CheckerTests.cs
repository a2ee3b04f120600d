using System.Text;
using ServiceRunner.Files.Checks;
using ServiceRunner.Files.Procedures;

namespace ServiceRunner.Files.Tests.Checks;

public sealed class CheckerTests : IDisposable
{
    private const string Good = "procedure: good\nformat: 1\ntitle: Good\nrevision: 1\nstages: [{stage: final, steps: [{step: look, do: Look}]}]\n";
    private readonly string _folder = Directory.CreateTempSubdirectory("checker-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void A_folder_is_looked_through_and_a_bad_file_hides_no_good_one()
    {
        Write("a.yaml", "procedure: a\nstages: [\n");
        Write("inner/b.yml", Good);
        Write("inner/c.yaml", "recipe: soup\n");
        Write("notes.txt", "not looked at");
        Write("workshop.yaml", "workshop: w\nformat: 1\nname: W\npeople: [{initials: IS, name: I. Sample}]\n");
        CheckReport report = Checker.Check([_folder], ProcedureLibrary.Empty);
        Assert.Equal(["a.yaml", "inner/b.yml", "inner/c.yaml", "workshop.yaml"], report.Files.Select(f => f[(_folder.Length + 1)..].Replace('\\', '/')).Order());
        Assert.Equal(["a.yaml yaml-syntax", "c.yaml neither-kind"], report.Diagnostics.Select(d => $"{Path.GetFileName(d.File)} {d.Code}").Order());
        Assert.Equal((2, 0, true), (report.Errors, report.Warnings, report.HasErrors));
    }

    [Fact]
    public void Two_files_of_one_id_are_named()
    {
        Write("a.yaml", Good);
        Write("b.yaml", Good);
        Assert.Equal("b.yaml:1:12: warning same-procedure: the procedure 'good' is also in a.yaml, which is the one that counts\n    Give one of them another id, or move it away.\n", Said());
    }

    [Fact]
    public void A_file_that_calls_itself_both_is_refused()
    {
        Write("a.yaml", "procedure: a\nworkshop: b\n");
        Assert.Equal("a.yaml:1:1: error neither-kind: the file calls itself a procedure and a workshop\n    Part it into two files.\n", Said());
    }

    [Fact]
    public void A_list_at_the_top_is_refused()
    {
        Write("a.yaml", "- a\n- b\n");
        Assert.Equal("a.yaml:1:1: error neither-kind: the file should begin with keys such as 'procedure:' or 'workshop:', and begins with a list\n", Said());
    }

    [Fact]
    public void A_path_that_is_not_there_is_said_so()
    {
        CheckReport report = Checker.Check([Path.Combine(_folder, "gone.yaml")], ProcedureLibrary.Empty);
        Assert.Equal("there is no such file", Assert.Single(report.Diagnostics).Message);
    }

    [Fact]
    public void A_fault_in_a_step_taken_in_names_the_file_that_it_stands_in()
    {
        Write("outer.yaml", "procedure: outer\nformat: 1\ntitle: O\nrevision: 1\nstages: [{stage: final, steps: [{take-in: inner, as: in}]}]\n");
        Write("inner.yaml", "procedure: inner\nformat: 1\ntitle: I\nrevision: 1\nstages:\n  - {stage: final, steps: [{step: a, do: A, after: b}]}\n");
        CheckReport report = Checker.Check([Path.Combine(_folder, "outer.yaml")], ProcedureLibrary.Empty);
        Assert.Equal("inner.yaml:6:52: error unknown-step: there is no step 'in/b'\n    Did you mean 'in/a'?\n", Lines(report));
    }

    [Fact]
    public void A_stage_that_opens_after_one_that_waits_for_it_is_a_circle()
    {
        Write("a.yaml", "procedure: a\nformat: 1\ntitle: A\nrevision: 1\nstages:\n" +
            "  - {stage: cleaning, opens-after: dismantling, steps: [{step: wash, do: Wash}]}\n" +
            "  - {stage: dismantling, steps: [{step: lift, do: Lift, after: wash}]}\n");
        Assert.Equal("a.yaml:6:64: error waiting-circle: these steps wait for each other: wash → lift → wash\n    Each waits for the one after it.\n", Said());
    }

    [Fact]
    public void The_text_ends_with_a_sentence_that_counts()
    {
        Diagnostic error = new("some-code", Severity.Error, "a.yaml", new(3, 4), "it is wrong", "Do it right.");
        Diagnostic note = new("other-code", Severity.Note, "b\u001b[2J.yaml", default, "it is so", "");
        using StringWriter text = new();
        DiagnosticText.Write([error, note], 2, text);
        Assert.Equal("a.yaml:3:4: error some-code: it is wrong\n    Do it right.\nb\uFFFD[2J.yaml: note other-code: it is so\n2 files looked at: 1 error, 1 note.\n", text.ToString());
        Assert.Equal("1 file looked at: nothing to say.", DiagnosticText.Summary([], 1));
        Assert.Equal("No procedure or workshop file was found.", DiagnosticText.Summary([], 0));
    }

    [Fact]
    public void The_json_has_the_shape_that_the_page_tells()
    {
        Diagnostic error = new("some-code", Severity.Error, "a.yaml", new(3, 4), "it is 'wrong'", "Do it right.");
        Diagnostic note = new("other-code", Severity.Note, "b.yaml", default, "it is so", "");
        using MemoryStream json = new();
        DiagnosticJson.Write([error, note], 2, json);
        Assert.Equal(
            """
            {
              "format": 1,
              "files": 2,
              "errors": 1,
              "warnings": 0,
              "notes": 1,
              "diagnostics": [
                {
                  "code": "some-code",
                  "severity": "error",
                  "file": "a.yaml",
                  "line": 3,
                  "column": 4,
                  "message": "it is 'wrong'",
                  "hint": "Do it right."
                },
                {
                  "code": "other-code",
                  "severity": "note",
                  "file": "b.yaml",
                  "message": "it is so"
                }
              ]
            }
            """.ReplaceLineEndings("\n"), Encoding.UTF8.GetString(json.ToArray()));
    }

    private string Said() => Lines(Checker.Check([_folder], ProcedureLibrary.Empty));

    private string Lines(CheckReport report) =>
        string.Concat(report.Diagnostics.Select(DiagnosticText.Line)).Replace(_folder + Path.DirectorySeparatorChar, "", StringComparison.Ordinal);

    private void Write(string name, string text)
    {
        string path = Path.Combine(_folder, name);
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        File.WriteAllText(path, text);
    }
}
