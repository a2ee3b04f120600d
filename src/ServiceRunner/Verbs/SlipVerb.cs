using ServiceRunner.Files.Index;
using ServiceRunner.Files.Journal;
using ServiceRunner.Files.Machine;
using ServiceRunner.Files.Reports.Estimates;
using ServiceRunner.Files.Reports.Slips;
using ServiceRunner.Session;

namespace ServiceRunner.Verbs;

/// <summary>Writes a paper that goes with the piece, as plain text or as a page for a printer: the owner's receipt, the tray's label, an estimate.</summary>
internal static class SlipVerb
{
    public static int Receipt(string path, string number, bool html, string? file) =>
        Run(path, number, file, (session, job) => Slips.Of(session, job.State), slips => html ? new HtmlReceipt(slips).ToString() : string.Join("\n\n", slips.Select(s => new TextReceipt(s))));

    public static int Label(string path, string number, bool html, string? file) =>
        Run(path, number, file, (session, job) => Slips.Of(session, job.State), slips => html ? new HtmlLabel(slips).ToString() : string.Join('\n', slips.Select(s => new TextLabel(s))));

    public static int Estimate(string path, string number, bool html, string? file) =>
        Run(path, number, file, Slips.EstimateOf, estimates => html ? new HtmlEstimate(estimates).ToString() : string.Join("\n\n", estimates.Select(e => new TextEstimate(e))));

    private static int Run<T>(string path, string number, string? file, Func<BenchSession, OpenJob, T> paper, Func<IReadOnlyList<T>, string> written)
    {
        using BenchSession? session = House.Open(path, OpenMode.Read, new MachineClock(), out int exit);
        if (session is null) return exit;
        IReadOnlyList<SubjectRow> found = session.Find(number);
        if (found.Count == 0) return Refuse($"there is no job '{number}' in {path}; 'servicerunner jobs --all' lists them.", ExitCodes.NotThere);
        List<T> slips = [];
        foreach (SubjectRow row in found)
        {
            switch (session.Read(row.Subject))
            {
                case JobReading.Ready { Job: var open }: slips.Add(paper(session, open)); break;
                case JobReading.Unreadable unreadable: exit = Refuse(unreadable.Sentence, ExitCodes.Damaged); break;
            }
        }
        if (slips.Count == 0) return exit;
        if (file is null) Console.Out.Write(written(slips));
        else if (OutFile.Write(file, written(slips)) is var failed and not ExitCodes.Done) return failed;
        return exit;
    }

    private static int Refuse(string sentence, int exit)
    {
        Console.Error.WriteLine($"servicerunner: {sentence}");
        return exit;
    }
}
