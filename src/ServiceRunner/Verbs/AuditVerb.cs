using System.Globalization;
using ServiceRunner.Files.Data;
using ServiceRunner.Files.Journal;
using ServiceRunner.Files.Sentences;

namespace ServiceRunner.Verbs;

/// <summary>Reads the whole journal, verifies both chains, names every damage; copies what is whole where asked to.</summary>
internal static class AuditVerb
{
    public static int Run(string path, string? recoverTo)
    {
        if (DataFolder.Open(path) is FolderRefused refused) return Refuse(refused.Fault, path);
        DataFolder folder = ((FolderReady)DataFolder.Open(path)).Folder;
        long lines = 0, damages = 0;
        HashSet<string> subjects = [];
        foreach (ScanItem item in JobLog.Scan(path))
        {
            switch (item)
            {
                case ScannedLine line:
                    lines++;
                    subjects.Add(line.Line.Subject);
                    break;
                case ScannedDamage damage:
                    damages++;
                    Console.Out.WriteLine(FaultWords.Place(item.File, item.Offset, damage.What));
                    break;
            }
        }
        Console.Out.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{lines} lines of {subjects.Count} logs verified; {(damages == 0 ? "no damage" : Times.Count((int)damages, "damage"))}."));
        if (recoverTo is not null)
            switch (JobLog.Recover(folder, recoverTo))
            {
                case RecoverRefused no: return Refuse(no.Fault, recoverTo);
                case Recovered done: Console.Out.WriteLine($"{done.Lines} lines copied to {recoverTo}; the damaged folder was not touched."); break;
            }
        return damages == 0 ? ExitCodes.Done : ExitCodes.Found;
    }

    private static int Refuse(DataFault fault, string path)
    {
        Console.Error.WriteLine($"servicerunner: {FaultWords.Sentence(fault, path)}");
        return ExitCodes.Folder;
    }
}
