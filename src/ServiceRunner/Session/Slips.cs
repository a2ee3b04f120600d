using ServiceRunner.Core.Jobs;
using ServiceRunner.Files.Data;
using ServiceRunner.Files.Reports.Estimates;
using ServiceRunner.Files.Reports.Slips;
using ServiceRunner.Files.Sentences;

namespace ServiceRunner.Session;

/// <summary>A job's receipt, label and estimate, written into the data folder for a printer.</summary>
public static class Slips
{
    /// <summary>The slip of a job.</summary>
    public static Slip Of(BenchSession session, Job job) => new(job, session.Workshop, session.Owners.Find(job.Owner));

    /// <summary>The estimate of a job.</summary>
    public static Estimate EstimateOf(BenchSession session, OpenJob job) =>
        new(job.State, job.Plan, session.Workshop, session.Owners.Find(job.State.Owner)?.Name ?? "", session.Now.Day);

    /// <summary>Writes the estimate; what came of it as a sentence.</summary>
    public static (bool Done, string Sentence) PrintEstimate(BenchSession session, OpenJob job)
    {
        (string path, DataFault? fault) = new PrintedSlips(session.Folder).Save(job.State.Id, job.State.Number, "estimate", new HtmlEstimate([EstimateOf(session, job)]).ToString());
        return fault is null
            ? (true, $"To be opened in a browser and printed: {path}.")
            : (false, $"It could not be put on paper: {FaultWords.Sentence(fault, session.Folder.Path)}");
    }

    /// <summary>Writes both; what came of it as a sentence.</summary>
    public static (bool Done, string Sentence) Print(BenchSession session, Job job)
    {
        if (session.ReadsOnly) return (false, $"This is opened to read only; 'servicerunner receipt {job.Number}' writes it in a terminal.");
        Slip slip = Of(session, job);
        PrintedSlips printed = new(session.Folder);
        (string receipt, DataFault? fault) = printed.Save(job.Id, job.Number, "receipt", new HtmlReceipt([slip]).ToString());
        if (fault is null) (_, fault) = printed.Save(job.Id, job.Number, "label", new HtmlLabel([slip]).ToString());
        return fault is null
            ? (true, $"Receipt and label are written, to be opened in a browser and printed: {receipt}, and the label beside it.")
            : (false, FaultWords.Sentence(fault, session.Folder.Path));
    }
}
