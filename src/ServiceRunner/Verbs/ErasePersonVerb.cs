using ServiceRunner.Files.Data;
using ServiceRunner.Files.Index;
using ServiceRunner.Files.Journal;
using ServiceRunner.Files.Sentences;
using ServiceRunner.Session;

namespace ServiceRunner.Verbs;

/// <summary>Lists owners by name with their jobs, and erases one. The job log is not touched.</summary>
internal static class ErasePersonVerb
{
    public static int Run(string path, string person, bool yes)
    {
        if (DataFolder.Open(path) is not FolderReady { Folder: var folder }) return Refuse(((FolderRefused)DataFolder.Open(path)).Fault, path);
        // The bench must be closed: a page of it may hold the name, and would save it again.
        OpenOutcome outcome = JobLog.Open(folder, OpenMode.Own, new JobReader(folder).RowOf);
        if (outcome is not Opened { Log: var log }) return Refuse(((OpenRefused)outcome).Fault, path);
        using (log)
        {
            foreach (LogNote note in log.Notes) Console.Error.WriteLine($"servicerunner: {NoteWords.Sentence(note, path)}");
            Owners owners = new(folder);
            List<(string Id, string Name)> found = Matching(owners, person);
            if (found.Count == 0) return Say(ExitCodes.NotThere, $"there is nobody named '{PlainText.Of(person)}' in {path}, nor with that id.");
            foreach ((string id, string name) in found) Console.Out.WriteLine(string.Join('\t', id, PlainText.Of(name), JobsOf(log, id)));
            if (!yes)
            {
                Console.Out.WriteLine(found.Count == 1 ? "Nothing was erased; --yes erases this one." : "Nothing was erased; name one by the id, with --yes.");
                return ExitCodes.Done;
            }
            return found.Count == 1 ? Erase(folder, log, owners, found[0].Id, path)
                : Say(ExitCodes.NotThere, "there are several of that name, so nothing was erased; name one by the id.");
        }
    }

    /// <summary>The one of that id, else all whose name contains the text.</summary>
    private static List<(string Id, string Name)> Matching(Owners owners, string person)
    {
        IReadOnlyList<string> ids = owners.Ids();
        if (ids.Contains(person)) return [(person, owners.Find(person)?.Name ?? "(cannot be read)")];
        if (string.IsNullOrWhiteSpace(person)) return [];
        return [.. ids.Select(id => (id, owners.Find(id)?.Name ?? "")).Where(o => o.Item2.Contains(person.Trim(), StringComparison.OrdinalIgnoreCase))];
    }

    private static string JobsOf(JobLog log, string id)
    {
        string[] numbers = [.. log.Rows(SubjectRow.Job, openOnly: false).Where(r => r.Owner == id).Select(r => PlainText.Of(r.Number))];
        return numbers.Length == 0 ? "no job" : string.Join(", ", numbers);
    }

    private static int Erase(DataFolder folder, JobLog log, Owners owners, string id, string path)
    {
        // The papers first: while they lie there, the name says which they are.
        IEnumerable<SubjectRow> jobs = log.Rows(SubjectRow.Job, openOnly: false).Where(r => r.Owner == id);
        if (new PrintedSlips(folder).Erase(jobs.Select(r => (r.Subject, r.Number)), owners.Find(id)) is { } left) return Refuse(left, path);
        if (owners.Erase(id) is { } fault) return Refuse(fault, path);
        Console.Out.WriteLine("Erased: the name, how to reach them, and the receipts, labels and estimates in the data folder that they stand on. The job log keeps the id only, which says nothing without the name.");
        Console.Out.WriteLine("Backups made earlier still hold the name, as do paper and files that were written elsewhere; a name typed into a job's own texts stays in the log.");
        return ExitCodes.Done;
    }

    private static int Refuse(DataFault fault, string path)
    {
        Console.Error.WriteLine($"servicerunner: {FaultWords.Sentence(fault, path)}");
        return fault switch { InUse => ExitCodes.InUse, Damaged => ExitCodes.Damaged, _ => ExitCodes.Folder };
    }

    private static int Say(int exit, string sentence)
    {
        Console.Error.WriteLine($"servicerunner: {sentence}");
        return exit;
    }
}
