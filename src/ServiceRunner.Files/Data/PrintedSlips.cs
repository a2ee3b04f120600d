using System.Net;
using System.Text;

namespace ServiceRunner.Files.Data;

/// <summary>
/// Receipts and labels written for a printer, in a folder of their own within the data folder. They can be made again
/// at any time, are in no backup, and go when the person on them is erased.
/// </summary>
public sealed class PrintedSlips(DataFolder folder)
{
    /// <summary>Writes a slip; where it lies, or what went wrong.</summary>
    /// <param name="job">The job's id.</param>
    /// <param name="number">The job's number.</param>
    /// <param name="kind">A word for the file's name.</param>
    /// <param name="page">What is on it.</param>
    public (string Path, DataFault? Fault) Save(string job, string number, string kind, string page)
    {
        string path = System.IO.Path.Combine(folder.Printed, $"{StemOf(number, job)}-{kind}.html");
        try
        {
            DurableFile.CreateFolder(folder.Printed);
            return (path, DurableFile.Write(path, Encoding.UTF8.GetBytes(page)));
        }
        catch (Exception e) when (DurableFile.IsDisk(e))
        {
            return (path, DurableFile.FaultOf(e, path));
        }
    }

    /// <summary>Erases every slip of these jobs, and every other one that a person's name or way of contact stands on; null when that is on the disk.</summary>
    public DataFault? Erase(IEnumerable<(string Job, string Number)> jobs, Owner? owner)
    {
        if (!Directory.Exists(folder.Printed)) return null;
        string[] stems = [.. jobs.Select(j => StemOf(j.Number, j.Job) + "-")];
        string[] texts = [.. new[] { owner?.Name ?? "" }.Concat(owner?.Lines ?? []).Where(t => t.Length > 0)];
        try
        {
            foreach (string file in Directory.GetFiles(folder.Printed))
            {
                bool named = stems.Any(s => System.IO.Path.GetFileName(file).StartsWith(s, StringComparison.Ordinal));
                if (named || Holds(file, texts)) File.Delete(file);
            }
            return DurableFile.SyncFolderOf(System.IO.Path.Combine(folder.Printed, "."));
        }
        catch (Exception e) when (DurableFile.IsDisk(e))
        {
            return DurableFile.FaultOf(e, folder.Printed);
        }
    }

    private static bool Holds(string file, string[] texts)
    {
        string page = texts.Length == 0 ? "" : WebUtility.HtmlDecode(File.ReadAllText(file));
        return texts.Any(t => page.Contains(t, StringComparison.Ordinal));
    }

    /// <summary>
    /// A file's name from a number that somebody typed: what could leave the folder or be no name becomes a stroke, and
    /// then a piece of the job's id keeps it apart from others.
    /// </summary>
    internal static string StemOf(string number, string job)
    {
        string plain = string.Concat(number.Take(60).Select(c => char.IsAsciiLetterOrDigit(c) || c is '-' or '_' ? c : '_'));
        return plain == number && plain.Length > 0 && plain[0] != '-' ? plain : $"{plain.TrimStart('-')}_{job[^Math.Min(8, job.Length)..]}";
    }
}
