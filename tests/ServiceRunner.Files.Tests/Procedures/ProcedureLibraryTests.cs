using ServiceRunner.Files.Checks;
using ServiceRunner.Files.Procedures;

namespace ServiceRunner.Files.Tests.Procedures;

public sealed class ProcedureLibraryTests : IDisposable
{
    private readonly string _own = Directory.CreateTempSubdirectory("own-").FullName;
    private readonly string _beside = Directory.CreateTempSubdirectory("beside-").FullName;

    public void Dispose()
    {
        Directory.Delete(_own, recursive: true);
        Directory.Delete(_beside, recursive: true);
    }

    [Fact]
    public void The_first_source_that_has_an_id_gives_it()
    {
        Write(_own, "a.yaml", Text("a", "Own A"));
        ProcedureLibrary library = Library(("a.yaml", Text("a", "Shipped A")), ("b.yaml", Text("b", "Shipped B")));
        Assert.Equal(["Own A own", "Shipped B shipped"], library.List().Select(e => $"{e.Title} {e.From}"));
        Assert.Equal("Own A", library.Read("a")!.Procedure!.Title);
        Assert.Null(library.Read("c"));
        Assert.True(library.Has("b"));
    }

    [Fact]
    public void What_stands_beside_a_file_comes_before_the_workshops_own()
    {
        Write(_own, "inner.yaml", Text("inner", "Own", "own-step"));
        Write(_beside, "inner.yaml", Text("inner", "Beside", "beside-step"));
        Write(_beside, "outer.yaml", "procedure: outer\nformat: 1\ntitle: O\nrevision: 1\nstages: [{stage: final, steps: [{take-in: inner}]}]\n");
        ReadProcedure read = ProcedureReader.ReadFile(Path.Combine(_beside, "outer.yaml"), Library());
        Assert.Equal("inner/beside-step", Assert.Single(read.Procedure!.Steps).Id.Value);
        Assert.Equal(["outer.yaml", "inner.yaml"], read.Sources.Select(s => s.Name));
    }

    [Fact]
    public void A_bad_file_is_listed_with_its_first_fault_and_hides_no_good_one()
    {
        Write(_own, "bad.yaml", "procedure: bad\ntitle: Bad one\nstages: [\n");
        Write(_own, "picture.yaml", "\0\0\0");
        Write(_own, "good.yaml", Text("good", "Good one"));
        Write(_own, "workshop.yaml", "workshop: w\nformat: 1\nname: W\npeople: []\n");
        Assert.Equal(
            ["bad bad a bracket or brace is opened here and not closed", "good Good one ", "picture picture this is a binary file and not a text"],
            Library().List().Select(e => $"{e.Id} {e.Title} {e.Fault?.Message}"));
    }

    [Fact]
    public void A_file_need_not_be_called_after_its_id()
    {
        Write(_own, "called-otherwise.yml", "# a comment first\n" + Text("a", "A").Replace("procedure: a", "procedure: 'a'  # its id", StringComparison.Ordinal));
        Assert.Equal("A", Library().Read("a")!.Procedure!.Title);
    }

    [Fact]
    public void A_missing_folder_is_an_empty_one() =>
        Assert.Empty(new ProcedureLibrary(ProcedureSource.Folder(Path.Combine(_own, "gone"))).List());

    [Fact]
    public void A_file_to_be_taken_in_is_marked()
    {
        Write(_own, "line.yaml", Text("line", "Line") + "wants-groups: [plates]\n");
        LibraryEntry entry = Assert.Single(Library().List());
        Assert.True(entry.ToBeTakenIn);
        Assert.Null(entry.Fault);
    }

    [Fact]
    public void A_finding_may_bring_in_a_repair_that_the_library_has()
    {
        string text = Text("a", "A").Replace("do: Look", "do: Look, examine: {place: p, for: [good, bad]}, if-found: {bad: b}", StringComparison.Ordinal);
        ProcedureLibrary library = Library(("b.yaml", Text("b", "B") + "mends: wheel\nparts: [{part: wheel, name: Wheel, stays: yes}]\n"));
        Assert.Empty(ProcedureChecks.Run(ProcedureReader.Read("a.yaml", text, library), library));
        Assert.Equal("unknown-procedure", Assert.Single(ProcedureChecks.Run(ProcedureReader.Read("a.yaml", text, ProcedureLibrary.Empty), ProcedureLibrary.Empty)).Code);
    }

    private ProcedureLibrary Library(params (string, string)[] shipped) => new(ProcedureSource.Folder(_own), ProcedureSource.Texts(shipped));

    private static string Text(string id, string title, string step = "look") =>
        $"procedure: {id}\nformat: 1\ntitle: {title}\nrevision: 1\nstages: [{{stage: final, steps: [{{step: {step}, do: Look}}]}}]\n";

    private static void Write(string folder, string name, string text) => File.WriteAllText(Path.Combine(folder, name), text);
}
