using ServiceRunner.Files.Index;
using ServiceRunner.Files.Journal;
using ServiceRunner.Files.Machine;
using ServiceRunner.Files.Reports;
using ServiceRunner.Session;

namespace ServiceRunner.Verbs;

/// <summary>Writes what was done in a job as plain text.</summary>
internal static class ReportVerb
{
    public static int Run(string path, string number)
    {
        using BenchSession? session = House.Open(path, OpenMode.Read, new MachineClock(), out int exit);
        if (session is null) return exit;
        IReadOnlyList<SubjectRow> found = session.Find(number);
        if (found.Count == 0)
        {
            Console.Error.WriteLine($"servicerunner: there is no job '{number}' in {path}; 'servicerunner jobs --all' lists them.");
            return ExitCodes.NotThere;
        }
        foreach (SubjectRow row in found)
        {
            if (session.Read(row.Subject) is not JobReading.Ready { Job: var open })
            {
                Console.Error.WriteLine($"servicerunner: {((JobReading.Unreadable)session.Read(row.Subject)).Sentence}");
                return ExitCodes.Damaged;
            }
            string owner = open.State.Owner.Length == 0 ? "" : session.Owners.Find(open.State.Owner)?.Name ?? "";
            Console.Out.Write(new TextReport(open.State, open.Plan, session.Workshop, owner, $"{session.Head.Sequence}, {session.Head.Hash}").ToString());
        }
        return ExitCodes.Done;
    }
}
