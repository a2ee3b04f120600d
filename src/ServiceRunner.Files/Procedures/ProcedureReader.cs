using ServiceRunner.Core.Procedures;
using ServiceRunner.Files.Checks;

namespace ServiceRunner.Files.Procedures;

/// <summary>What came of reading a procedure.</summary>
/// <param name="Procedure">As much of it as could be read; null if nothing could. Ask <see cref="HasErrors"/> before a job uses it.</param>
/// <param name="Sources">Every text that went into it: the file itself first, then what it takes in.</param>
/// <param name="Diagnostics">What is wrong with how it is written, in the order of the file.</param>
public sealed record ReadProcedure(Procedure? Procedure, IReadOnlyList<SourceText> Sources, IReadOnlyList<Diagnostic> Diagnostics)
{
    /// <summary>How diagnostics name the file itself.</summary>
    public required string File { get; init; }

    /// <summary>True if it cannot be used for a job.</summary>
    public bool HasErrors => Procedure is null || Diagnostics.Any(d => d.Severity == Severity.Error);
}

/// <summary>Reads procedures. See docs/procedure-format.md.</summary>
public static class ProcedureReader
{
    /// <summary>Reads a text. It depends on nothing but its arguments.</summary>
    /// <param name="name">How diagnostics and the pinned source name it.</param>
    /// <param name="text">The text.</param>
    /// <param name="library">Where it finds what it takes in.</param>
    public static ReadProcedure Read(string name, string text, ProcedureLibrary library) => Read(LoadedFile.OfText(name, name, text), library);

    /// <summary>Reads a file; what it takes in is looked for beside it first.</summary>
    public static ReadProcedure ReadFile(string path, ProcedureLibrary library) =>
        Read(LoadedFile.OfPath(path, path), library.Beside(Path.GetDirectoryName(Path.GetFullPath(path))!));

    internal static ReadProcedure Read(LoadedFile file, ProcedureLibrary library)
    {
        ProcedureFile? written = file.Procedure;
        List<Diagnostic> found = [.. file.Found];
        if (written is null) return new ReadProcedure(null, Sources(file, []), found) { File = file.ShownAs };
        List<LoadedFile> takenIn = [];
        Procedure procedure = new Assembly(library, takenIn).Whole(written, found);
        found.Sort((a, b) => (a.Place.Line, a.Place.Column).CompareTo((b.Place.Line, b.Place.Column)));
        return new ReadProcedure(procedure, Sources(file, takenIn), found) { File = file.ShownAs };
    }

    private static List<SourceText> Sources(LoadedFile file, List<LoadedFile> takenIn)
    {
        List<SourceText> sources = [];
        foreach (LoadedFile each in (IEnumerable<LoadedFile>)[file, .. takenIn])
        {
            if (each.Source is { } source && !sources.Contains(source)) sources.Add(source);
        }
        return sources;
    }
}
