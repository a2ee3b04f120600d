using ServiceRunner.Files.Checks;

namespace ServiceRunner.Verbs;

/// <summary>Reads procedures and workshop files as a careful colleague would.</summary>
internal static class CheckVerb
{
    public static int Run(IReadOnlyList<string> paths, string dataFolder, bool json)
    {
        foreach (string path in paths)
        {
            if (File.Exists(path) || Directory.Exists(path)) continue;
            Console.Error.WriteLine($"servicerunner: there is no file or folder {path}.");
            return ExitCodes.NotThere;
        }
        CheckReport report = Checker.Check(paths, House.LibraryOf(Directory.Exists(dataFolder) ? dataFolder : null));
        if (json)
        {
            using Stream output = Console.OpenStandardOutput();
            DiagnosticJson.Write(report.Diagnostics, report.Files.Count, output);
        }
        else
        {
            DiagnosticText.Write(report.Diagnostics, report.Files.Count, Console.Out);
        }
        return report.HasErrors ? ExitCodes.Found : ExitCodes.Done;
    }
}
