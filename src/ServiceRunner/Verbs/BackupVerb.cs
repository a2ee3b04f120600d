using System.Globalization;
using ServiceRunner.Files.Data;
using ServiceRunner.Files.Sentences;

namespace ServiceRunner.Verbs;

/// <summary>Copies the data folder into one file, also while another run has it open.</summary>
internal static class BackupVerb
{
    public static int Run(string path, string file, bool replace)
    {
        if (DataFolder.Open(path) is not FolderReady { Folder: var folder })
            return Refuse(((FolderRefused)DataFolder.Open(path)).Fault, path, []);
        switch (Backup.Write(folder, file, replace))
        {
            case BackupRefused refused:
                return Refuse(refused.Fault, FolderOf(refused.Fault, path, file), refused.Damage.Select(d => Sentence(d, path)));
            case BackedUp done:
                string what = string.Create(CultureInfo.InvariantCulture, $"backed up {done.Lines} lines of {done.Logs} logs to {file}");
                foreach (string name in done.LeftOut) Console.Error.WriteLine($"servicerunner: {name} was left out, as not every system takes its name; rename it.");
                if (done.Damage.Count == 0)
                {
                    Console.Out.WriteLine(what + ".");
                    return ExitCodes.Done;
                }
                foreach (DataFault damage in done.Damage) Console.Error.WriteLine($"servicerunner: {Sentence(damage, path)}");
                Console.Out.WriteLine($"{what}: what is whole. The data folder is damaged ({Times.Count(done.Damage.Count, "damage")} named above) and was not touched; keep earlier backups.");
                return ExitCodes.Damaged;
            default:
                throw new InvalidOperationException("an outcome of no kind");
        }
    }

    private static string Sentence(DataFault damage, string path) =>
        damage is Damaged x ? FaultWords.Place(Path.Combine(path, x.File), x.Offset, x.What) : FaultWords.Sentence(damage, path);

    /// <summary>Where the writing went, for faults of the writing.</summary>
    private static string FolderOf(DataFault fault, string path, string file) =>
        fault is DiskFull or WriteFailed or SyncFailed ? Path.GetDirectoryName(Path.GetFullPath(file)) ?? file : path;

    private static int Refuse(DataFault fault, string folder, IEnumerable<string> damage)
    {
        foreach (string sentence in (IEnumerable<string>)[.. damage, FaultWords.Sentence(fault, folder)]) Console.Error.WriteLine($"servicerunner: {sentence}");
        return fault is Damaged or BackupNotReplaced ? ExitCodes.Damaged : ExitCodes.Folder;
    }
}
