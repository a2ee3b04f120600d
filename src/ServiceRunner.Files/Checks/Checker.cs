using ServiceRunner.Files.Checks.Reading;
using ServiceRunner.Files.Checks.References;
using ServiceRunner.Files.Procedures;
using ServiceRunner.Files.Workshops;

namespace ServiceRunner.Files.Checks;

/// <summary>What came of looking at some files.</summary>
/// <param name="Files">The files that were looked at.</param>
/// <param name="Diagnostics">What there is to say, file by file, each in the order of the file.</param>
public sealed record CheckReport(IReadOnlyList<string> Files, IReadOnlyList<Diagnostic> Diagnostics)
{
    /// <summary>How many errors.</summary>
    public int Errors => Diagnostics.Count(d => d.Severity == Severity.Error);

    /// <summary>How many warnings.</summary>
    public int Warnings => Diagnostics.Count(d => d.Severity == Severity.Warning);

    /// <summary>True if there is an error.</summary>
    public bool HasErrors => Errors > 0;
}

/// <summary>Looks at files and folders of them. A bad file never hides a good one.</summary>
public static class Checker
{
    /// <summary>Checks files, and the YAML files in folders and the folders in them.</summary>
    /// <param name="paths">Files or folders.</param>
    /// <param name="library">Where files find what they take in, after the folder that they stand in.</param>
    public static CheckReport Check(IEnumerable<string> paths, ProcedureLibrary library)
    {
        List<string> files = [.. paths.SelectMany(Files).Distinct(StringComparer.Ordinal)];
        HashSet<Diagnostic> said = [];
        List<Diagnostic> found = [];
        Dictionary<string, (ProcedureSource Source, ProcedureLibrary Library)> folders = new(StringComparer.Ordinal);
        foreach (string file in files)
        {
            // What is wrong in a file taken in is said once, however many take it in.
            foreach (Diagnostic diagnostic in One(file, library, folders))
            {
                if (said.Add(diagnostic)) found.Add(diagnostic);
            }
        }
        return new CheckReport(files, found);
    }

    private static IEnumerable<string> Files(string path) => Directory.Exists(path) ? ProcedureSource.FilesOf(path, inFoldersToo: true) : [path];

    private static IReadOnlyList<Diagnostic> One(
        string path, ProcedureLibrary library, Dictionary<string, (ProcedureSource Source, ProcedureLibrary Library)> folders)
    {
        string folder = Path.GetDirectoryName(path) is { Length: > 0 } named ? named : ".";
        if (!folders.TryGetValue(folder, out (ProcedureSource Source, ProcedureLibrary Library) beside))
        {
            ProcedureSource source = ProcedureSource.Folder(folder, "beside");
            folders[folder] = beside = (source, library.Before(source));
        }
        // The file is taken from its folder where it is one of its files, so that it is read once.
        LoadedFile file = beside.Source.At(path) ?? LoadedFile.OfPath(path, path);
        IReadOnlyList<Diagnostic> found = One(file, beside.Library);
        if (file.Kind != FileKind.Procedure || file.Procedure is not { Id.Value.Length: > 0 } procedure) return found;
        if (beside.Source.Find(procedure.Id.Value) is not { } first) return found;
        bool same = ReferenceEquals(first, file) || Path.GetFullPath(first.ShownAs) == Path.GetFullPath(path);
        return same ? found : [.. found, SameProcedure.Of(path, procedure.Id.At, procedure.Id.Value, first.ShownAs)];
    }

    private static IReadOnlyList<Diagnostic> One(LoadedFile file, ProcedureLibrary library)
    {
        switch (file.Kind)
        {
            case FileKind.Procedure:
                ReadProcedure procedure = ProcedureReader.Read(file, library);
                return Sorted(file, [.. procedure.Diagnostics, .. ProcedureChecks.Run(procedure, library)]);
            case FileKind.Workshop:
                ReadWorkshop workshop = WorkshopReader.Read(file);
                return Sorted(file, [.. workshop.Diagnostics, .. workshop.Workshop is { } whole ? WorkshopChecks.Run(file.ShownAs, whole) : []]);
            case FileKind.Both: return [.. file.Found, NeitherKind.Both(file.ShownAs, file.Begin)];
            case FileKind.Neither: return [.. file.Found, NeitherKind.Of(file.ShownAs, file.Begin)];
            case FileKind.NotKeys: file.TakeRoot(); break;
        }
        return [.. file.Found];
    }

    // The file's own first, then what is said of those that it takes in.
    private static List<Diagnostic> Sorted(LoadedFile file, IEnumerable<Diagnostic> diagnostics) =>
        [.. diagnostics.OrderBy(d => d.File != file.ShownAs).ThenBy(d => d.File, StringComparer.Ordinal).ThenBy(d => d.Place.Line).ThenBy(d => d.Place.Column)];
}
