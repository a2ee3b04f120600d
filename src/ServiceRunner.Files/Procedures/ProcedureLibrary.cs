using ServiceRunner.Files.Checks;

namespace ServiceRunner.Files.Procedures;

/// <summary>The procedures that can be taken in or chosen: some sources in order, of which the first that has an id gives it.</summary>
public sealed class ProcedureLibrary(params IReadOnlyList<ProcedureSource> sources)
{
    /// <summary>A library with nothing in it.</summary>
    public static readonly ProcedureLibrary Empty = new();

    /// <summary>This library with a folder before all its sources.</summary>
    public ProcedureLibrary Beside(string folder) => new([ProcedureSource.Folder(folder, "beside"), .. sources]);

    internal ProcedureLibrary Before(ProcedureSource source) => new([source, .. sources]);

    /// <summary>Reads the procedure of an id with all that it takes in; null if there is none.</summary>
    public ReadProcedure? Read(string id) => Find(id) is { } file ? ProcedureReader.Read(file, this) : null;

    /// <summary>True if a procedure of this id can be found.</summary>
    public bool Has(string id) => Find(id) is not null;

    /// <summary>Every id once.</summary>
    public IEnumerable<string> Ids => sources.SelectMany(s => s.Ids).Distinct();

    /// <summary>
    /// What there is, for a list to choose from, by title. A file with errors is listed with the first of them, under its
    /// file's name where it has no id, and hides nothing.
    /// </summary>
    public IReadOnlyList<LibraryEntry> List()
    {
        List<LibraryEntry> entries = [];
        HashSet<string> seen = new(StringComparer.Ordinal);
        foreach (ProcedureSource source in sources)
        {
            foreach (LoadedFile file in source.Files)
            {
                if (file.Kind == FileKind.Workshop) continue;
                LibraryEntry entry = Entry(source, file);
                if (seen.Add(entry.Id)) entries.Add(entry);
            }
        }
        return [.. entries.OrderBy(e => e.Title, StringComparer.OrdinalIgnoreCase)];
    }

    internal LoadedFile? Find(string id)
    {
        foreach (ProcedureSource source in sources)
        {
            if (source.Find(id) is { } file) return file;
        }
        return null;
    }

    private LibraryEntry Entry(ProcedureSource source, LoadedFile file)
    {
        ReadProcedure read = ProcedureReader.Read(file, this);
        Diagnostic? fault = read.Diagnostics.FirstOrDefault(d => d.Severity == Severity.Error);
        string stem = Path.GetFileNameWithoutExtension(file.Name);
        string id = read.Procedure?.Id.Value is { Length: > 0 } declared ? declared : stem;
        string title = read.Procedure?.Title is { Length: > 0 } given ? given : stem;
        return new LibraryEntry(id, title, read.Procedure?.Covers ?? "", source.Label, file.ShownAs, read.Procedure?.WantsGroups.Count > 0, fault) { IsRepair = read.Procedure?.Mends is not null };
    }
}

/// <summary>One procedure in the library's list.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Title">What the repairer reads.</param>
/// <param name="Covers">Which movements it is for.</param>
/// <param name="From">The label of its source.</param>
/// <param name="File">The file.</param>
/// <param name="ToBeTakenIn">True if it wants groups from a file that takes it in.</param>
/// <param name="Fault">Its first error; null if it can be used.</param>
public sealed record LibraryEntry(string Id, string Title, string Covers, string From, string File, bool ToBeTakenIn, Diagnostic? Fault)
{
    /// <summary>True if its head says what it mends: a list shows it behind those that go the whole way.</summary>
    public bool IsRepair { get; init; }
}
