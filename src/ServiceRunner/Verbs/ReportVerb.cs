using ServiceRunner.Files.Data;
using ServiceRunner.Files.Index;
using ServiceRunner.Files.Journal;
using ServiceRunner.Files.Machine;
using ServiceRunner.Files.Reports;
using ServiceRunner.Session;

namespace ServiceRunner.Verbs;

/// <summary>Writes what was done in a job, as plain text or as a page.</summary>
internal static class ReportVerb
{
    /// <param name="path">The data folder.</param>
    /// <param name="number">The job's number.</param>
    /// <param name="html">True for a page.</param>
    /// <param name="file">Where to write it; null for standard output.</param>
    public static int Run(string path, string number, bool html, string? file)
    {
        using BenchSession? session = House.Open(path, OpenMode.Read, new MachineClock(), out int exit);
        if (session is null) return exit;
        IReadOnlyList<SubjectRow> found = session.Find(number);
        if (found.Count == 0) return Refuse($"there is no job '{number}' in {path}; 'servicerunner jobs --all' lists them.", ExitCodes.NotThere);
        List<JobStory> stories = [];
        foreach (SubjectRow row in found)
        {
            switch (session.Read(row.Subject))
            {
                case JobReading.Ready { Job: var open }:
                    string owner = open.State.Owner.Length == 0 ? "" : session.Owners.Find(open.State.Owner)?.Name ?? "";
                    stories.Add(new JobStory(open.State, open.Plan, session.Workshop, owner, $"{session.Head.Sequence}, {session.Head.Hash}") { ReadOnlyUpTo = open.WhyReadOnly });
                    break;
                case JobReading.Unreadable unreadable:
                    exit = Refuse(unreadable.Sentence, ExitCodes.Damaged);
                    break;
            }
        }
        if (stories.Count == 0) return exit;
        string report = html ? new HtmlReport(stories) { Picture = hash => new KeptTexts(session.Folder).Get(hash) is KeptBytes kept ? kept.Bytes : null }.ToString() : string.Concat(stories.Select(s => new TextReport(s)));
        if (file is null) Console.Out.Write(report);
        else if (OutFile.Write(file, report) is var failed and not ExitCodes.Done) return failed;
        return exit;
    }

    private static int Refuse(string sentence, int exit)
    {
        Console.Error.WriteLine($"servicerunner: {sentence}");
        return exit;
    }
}
