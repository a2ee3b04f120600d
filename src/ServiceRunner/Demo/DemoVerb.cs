using ServiceRunner.Diagnosis;
using ServiceRunner.Files.Data;
using ServiceRunner.Files.Journal;
using ServiceRunner.Files.Machine;
using ServiceRunner.Files.Sentences;
using ServiceRunner.Lines;
using ServiceRunner.Verbs;

namespace ServiceRunner.Demo;

/// <summary>Opens the bench on the invented workshop, and makes it first if it is not there.</summary>
internal static class DemoVerb
{
    public static int Run(string path, bool reset, bool monochrome, LineMode mode, DiagnosticLog diagnosis)
    {
        if (reset && Reset(path) is { } refusal)
        {
            Console.Error.WriteLine($"servicerunner: {refusal}");
            return ExitCodes.Folder;
        }
        if (FirstStart.IsDue(path))
        {
            Console.Error.WriteLine($"Making an invented workshop in {path} …");
            if (DemoWorkshop.Make(path, new MachineClock()) is { } fault)
            {
                Console.Error.WriteLine($"servicerunner: {fault}");
                return ExitCodes.Folder;
            }
        }
        return BenchVerb.Run(path, readOnly: false, monochrome, mode, diagnosis);
    }

    // Only a folder that this verb made is thrown away: its workshop file says so.
    private static string? Reset(string path)
    {
        if (FirstStart.IsDue(path)) return null;
        string workshop = Path.Combine(path, House.WorkshopFile);
        if (!File.Exists(workshop) || !File.ReadAllText(workshop).Contains("workshop: quay-lane", StringComparison.Ordinal))
            return $"{path} is not the invented workshop, so it is not thrown away.";
        if (DataFolder.Open(path) is FolderReady ready && JobLog.Open(ready.Folder, OpenMode.Own, (_, _) => null) is var outcome)
        {
            if (outcome is OpenRefused { Fault: InUse fault }) return FaultWords.Sentence(fault, path);
            (outcome as Opened)?.Log.Dispose();
        }
        Directory.Delete(path, recursive: true);
        return null;
    }
}
