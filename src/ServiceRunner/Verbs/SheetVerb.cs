using ServiceRunner.Files.Index;
using ServiceRunner.Files.Journal;
using ServiceRunner.Files.Machine;
using ServiceRunner.Files.Reports;
using ServiceRunner.Session;

namespace ServiceRunner.Verbs;

/// <summary>Writes every sheet of a part to be made in a job, as plain text or as a page.</summary>
internal static class SheetVerb
{
    /// <param name="path">The data folder.</param>
    /// <param name="number">The job's number.</param>
    /// <param name="html">True for a page.</param>
    /// <param name="file">Where to write them; null for standard output.</param>
    public static int Run(string path, string number, bool html, string? file)
    {
        using BenchSession? session = House.Open(path, OpenMode.Read, new MachineClock(), out int exit);
        if (session is null) return exit;
        IReadOnlyList<SubjectRow> found = session.Find(number);
        if (found.Count == 0) return Refuse($"there is no job '{number}' in {path}; 'servicerunner jobs --all' lists them.", ExitCodes.NotThere);
        List<JobSheets> jobs = [];
        foreach (SubjectRow row in found)
        {
            switch (session.Read(row.Subject))
            {
                case JobReading.Ready { Job: var open }:
                    jobs.Add(new JobSheets(open.State, open.Plan, session.Workshop) { ReadOnlyUpTo = open.WhyReadOnly });
                    break;
                case JobReading.Unreadable unreadable:
                    exit = Refuse(unreadable.Sentence, ExitCodes.Damaged);
                    break;
            }
        }
        jobs.RemoveAll(j => j.Sheets.Count == 0);
        if (jobs.Count == 0) return exit != ExitCodes.Done ? exit : Refuse($"no procedure of job '{number}' has a sheet of a part to be made.", ExitCodes.NotThere);
        string sheets = html ? new HtmlSheets(jobs).ToString() : string.Join('\n', jobs.Select(j => new TextSheets(j)));
        if (file is null) Console.Out.Write(sheets);
        else if (OutFile.Write(file, sheets) is var failed and not ExitCodes.Done) return failed;
        return exit;
    }

    private static int Refuse(string sentence, int exit)
    {
        Console.Error.WriteLine($"servicerunner: {sentence}");
        return exit;
    }
}
