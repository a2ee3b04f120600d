using ServiceRunner.Core.Workshops;
using ServiceRunner.Files.Checks;
using ServiceRunner.Files.Data;
using ServiceRunner.Files.Journal;
using ServiceRunner.Files.Machine;
using ServiceRunner.Files.Procedures;
using ServiceRunner.Files.Sentences;
using ServiceRunner.Files.Workshops;
using ServiceRunner.Session;

namespace ServiceRunner.Verbs;

/// <summary>Opens the data folder with its workshop file and procedures, or says in one sentence why not.</summary>
internal static class House
{
    public const string WorkshopFile = "workshop.yaml";

    public static string DefaultFolder => Path.Combine(
        Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData, Environment.SpecialFolderOption.DoNotVerify), "servicerunner");

    public static string DemoFolder => DefaultFolder + "-demo";

    /// <summary>Opens a session, if need be in the other mode; or null, with the sentence written to the error stream.</summary>
    public static BenchSession? Open(string path, OpenMode mode, MachineClock clock, out int exit, OpenMode? otherwise = null)
    {
        switch (DataFolder.Open(path))
        {
            case FolderRefused refused:
                return Refuse(refused.Fault, path, out exit);
            case FolderReady ready:
                if (ReadWorkshop(path, out exit) is not { } workshop) return null;
                JobReader reader = new(ready.Folder) { AsksWitness = workshop.Witness != WitnessWish.Never };
                OpenOutcome outcome = JobLog.Open(ready.Folder, mode, reader.RowOf);
                if (outcome is OpenRefused && otherwise is { } second) outcome = JobLog.Open(ready.Folder, second, reader.RowOf);
                switch (outcome)
                {
                    case OpenRefused refused: return Refuse(refused.Fault, path, out exit);
                    case Opened opened:
                        BenchSession session = new(ready.Folder, opened.Log, reader, workshop, LibraryOf(path), clock);
                        if (opened.Log.Mode == OpenMode.Own && session.BenchFault is { } fault)
                        {
                            // What would be written on such a bench would rest on half of what is known.
                            session.Dispose();
                            return Refuse(fault, path, out exit);
                        }
                        exit = ExitCodes.Done;
                        session.CarryForwardIfDue();
                        return session;
                }
                break;
        }
        throw new InvalidOperationException("an outcome of no kind");
    }

    /// <summary>The workshop's own procedures first, then those shipped.</summary>
    public static ProcedureLibrary LibraryOf(string? dataFolder) => dataFolder is null
        ? new ProcedureLibrary(Shipped)
        : new ProcedureLibrary(ProcedureSource.Folder(Path.Combine(dataFolder, "procedures")), Shipped);

    private static ProcedureSource Shipped => ProcedureSource.Texts(Embedded("procedures/"));

    /// <summary>Texts embedded in the program whose name begins so.</summary>
    public static IEnumerable<(string Name, string Text)> Embedded(string prefix)
    {
        foreach (string name in typeof(House).Assembly.GetManifestResourceNames().Where(n => n.StartsWith(prefix, StringComparison.Ordinal)).Order(StringComparer.Ordinal))
        {
            using StreamReader reader = new(typeof(House).Assembly.GetManifestResourceStream(name)!);
            yield return (name[prefix.Length..], reader.ReadToEnd());
        }
    }

    private static BenchSession? Refuse(DataFault fault, string path, out int exit)
    {
        Console.Error.WriteLine($"servicerunner: {FaultWords.Sentence(fault, path)}");
        exit = fault switch { InUse => ExitCodes.InUse, Damaged or BenchMakesNoSense => ExitCodes.Damaged, _ => ExitCodes.Folder };
        return null;
    }

    private static Workshop? ReadWorkshop(string path, out int exit)
    {
        exit = ExitCodes.Folder;
        ReadWorkshop read = WorkshopReader.ReadFile(Path.Combine(path, WorkshopFile));
        foreach (Diagnostic d in read.Diagnostics.Where(d => d.Severity == Severity.Error).Take(5)) Console.Error.WriteLine($"servicerunner: {DiagnosticText.Line(d)}");
        return read.HasErrors ? null : read.Workshop;
    }
}
