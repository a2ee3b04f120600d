using ServiceRunner.Files.Data;
using ServiceRunner.Files.Index;
using ServiceRunner.Files.Journal;
using ServiceRunner.Files.Machine;
using ServiceRunner.Files.Reports;
using ServiceRunner.Files.Reports.Estimates;
using ServiceRunner.Files.Reports.Slips;
using ServiceRunner.Session;

namespace ServiceRunner.Verbs;

/// <summary>Writes a paper about a job, as plain text or as a page for a printer, to a file or to standard output.</summary>
internal static class PaperVerb
{
    public static int Receipt(string path, string number, bool html, string? file) =>
        Run(path, number, file, (session, job) => Slips.Of(session, job.State), (_, slips) => html ? new HtmlReceipt(slips).ToString() : string.Join("\n\n", slips.Select(s => new TextReceipt(s))));

    public static int Label(string path, string number, bool html, string? file) =>
        Run(path, number, file, (session, job) => Slips.Of(session, job.State), (_, slips) => html ? new HtmlLabel(slips).ToString() : string.Join('\n', slips.Select(s => new TextLabel(s))));

    public static int Estimate(string path, string number, bool html, string? file) =>
        Run(path, number, file, Slips.EstimateOf, (_, estimates) => html ? new HtmlEstimate(estimates).ToString() : string.Join("\n\n", estimates.Select(e => new TextEstimate(e))));

    public static int Report(string path, string number, bool html, string? file) => Run(path, number, file,
        (session, job) => new JobStory(job.State, job.Plan, session.Workshop, session.Owners.Find(job.State.Owner)?.Name ?? "", $"{session.Head.Sequence}, {session.Head.Hash}") { ReadOnlyUpTo = job.WhyReadOnly },
        (session, stories) => html ? new HtmlReport(stories) { Picture = hash => new KeptTexts(session.Folder).Get(hash) is KeptBytes kept ? kept.Bytes : null }.ToString()
            : string.Concat(stories.Select(s => new TextReport(s))));

    public static int Sheet(string path, string number, bool html, string? file) => Run(path, number, file,
        (session, job) => new JobSheets(job.State, job.Plan, session.Workshop) { ReadOnlyUpTo = job.WhyReadOnly } is { Sheets.Count: > 0 } sheets ? sheets : null,
        (_, jobs) => html ? new HtmlSheets(jobs).ToString() : string.Join('\n', jobs.Select(j => new TextSheets(j))),
        $"no procedure of job '{number}' has a sheet of a part to be made.");

    // A paper that there is nothing to write on is null; none says why not if all are.
    private static int Run<T>(string path, string number, string? file, Func<BenchSession, OpenJob, T?> paper, Func<BenchSession, IReadOnlyList<T>, string> written, string none = "") where T : class
    {
        using BenchSession? session = House.Open(path, OpenMode.Read, new MachineClock(), out int exit);
        if (session is null) return exit;
        IReadOnlyList<SubjectRow> found = session.Find(number);
        if (found.Count == 0) return Refuse($"there is no job '{number}' in {path}; 'servicerunner jobs --all' lists them.", ExitCodes.NotThere);
        List<T> papers = [];
        foreach (SubjectRow row in found)
        {
            switch (session.Read(row.Subject))
            {
                case JobReading.Ready { Job: var open }: if (paper(session, open) is { } one) papers.Add(one); break;
                case JobReading.Unreadable unreadable: exit = Refuse(unreadable.Sentence, ExitCodes.Damaged); break;
            }
        }
        if (papers.Count == 0) return exit == ExitCodes.Done ? Refuse(none, ExitCodes.NotThere) : exit;
        if (file is null) Console.Out.Write(written(session, papers));
        else if (OutFile.Write(file, written(session, papers)) is var failed and not ExitCodes.Done) return failed;
        return exit;
    }

    private static int Refuse(string sentence, int exit)
    {
        Console.Error.WriteLine($"servicerunner: {sentence}");
        return exit;
    }
}
