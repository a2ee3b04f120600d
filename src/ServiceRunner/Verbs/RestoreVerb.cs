using System.Globalization;
using ServiceRunner.Files.Data;
using ServiceRunner.Files.Journal;
using ServiceRunner.Files.Sentences;
using ServiceRunner.Session;

namespace ServiceRunner.Verbs;

/// <summary>Makes a data folder from a backup, with an index of its own.</summary>
internal static class RestoreVerb
{
    // A file that is not ours may hold any number of anything.
    private const int MostNamed = 5, LongestName = 100;

    public static int Run(string path, string file)
    {
        switch (Restore.Read(file, path))
        {
            case RestoreRefused refused:
                Console.Error.WriteLine($"servicerunner: {FaultWords.Sentence(refused.Fault, refused.Fault is FormatFromTheFuture ? file : path)}");
                return refused.Fault switch { BackupMissing => ExitCodes.NotThere, BackupDamaged => ExitCodes.Damaged, _ => ExitCodes.Folder };
            case Restored done:
                foreach (string name in done.Ignored.Take(MostNamed)) Console.Error.WriteLine($"servicerunner: '{PlainText.Of(name.Length > LongestName ? name[..LongestName] : name)}' is no part of a data folder and was not restored.");
                if (done.Ignored.Count > MostNamed) Console.Error.WriteLine(string.Create(CultureInfo.InvariantCulture, $"servicerunner: nor were {done.Ignored.Count - MostNamed} others."));
                Console.Out.WriteLine(string.Create(CultureInfo.InvariantCulture, $"restored {done.Lines} lines of {done.Logs} logs to {path}."));
                return MakeIndex(done.Folder);
            default:
                throw new InvalidOperationException("an outcome of no kind");
        }
    }

    /// <summary>Opened once, so that the first bench on it need not wait. Nothing is appended.</summary>
    private static int MakeIndex(DataFolder folder)
    {
        switch (JobLog.Open(folder, OpenMode.Own, new JobReader(folder).RowOf))
        {
            case Opened opened:
                opened.Log.Dispose();
                return ExitCodes.Done;
            case OpenRefused refused:
                Console.Error.WriteLine($"servicerunner: {FaultWords.Sentence(refused.Fault, folder.Path)}");
                return ExitCodes.Folder;
            default:
                throw new InvalidOperationException("an outcome of no kind");
        }
    }
}
