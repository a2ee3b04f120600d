using System.Text;
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
        string report = html ? new HtmlReport(stories).ToString() : string.Concat(stories.Select(s => new TextReport(s)));
        if (file is null) Console.Out.Write(report);
        else if (Write(file, report) is var failed and not ExitCodes.Done) return failed;
        return exit;
    }

    // Aside first, then into its place: whoever has an older report there keeps it until the new one is whole.
    private static int Write(string file, string report)
    {
        string? aside = null;
        try
        {
            string target = new FileInfo(file) is { LinkTarget: not null } link ? link.ResolveLinkTarget(returnFinalTarget: true)!.FullName : Path.GetFullPath(file);
            if (Directory.Exists(target)) return Refuse($"{file} is a folder; name a file with --out.", ExitCodes.NotThere);
            string folder = Path.GetDirectoryName(target)!;
            if (!Directory.Exists(folder)) return Refuse($"there is no folder {folder} to write {Path.GetFileName(target)} into.", ExitCodes.NotThere);
            bool replaces = File.Exists(target);
            if (replaces && !IsFile(target)) return Refuse($"{file} is no file that could be replaced, but a pipe or a device; name another one with --out.", ExitCodes.NotThere);
            string part = Path.Combine(folder, $".{Path.GetFileName(target)}.{Identity.New()}");
            using (FileStream stream = new(part, FileMode.CreateNew, FileAccess.Write))
            {
                aside = part;
                stream.Write(Encoding.UTF8.GetBytes(report));
                stream.Flush(flushToDisk: true);
            }
            File.Move(part, target, overwrite: replaces);
            aside = null;
            Console.Error.WriteLine($"servicerunner: {(replaces ? "replaced" : "wrote")} {file}.");
            return ExitCodes.Done;
        }
        catch (UnauthorizedAccessException)
        {
            return Refuse($"{file} cannot be written: you have no permission there; name another one with --out.", ExitCodes.Folder);
        }
        catch (Exception e) when (e is IOException or ArgumentException or NotSupportedException)
        {
            return Refuse($"{file} could not be written ({e.Message.TrimEnd('.')}); what was there is as it was.", ExitCodes.Folder);
        }
        finally
        {
            if (aside is not null) File.Delete(aside);
        }
    }

    // .NET calls pipes and devices files too. They are opened for both ways, because then a pipe does not wait for its
    // other end. A device may be seekable and yet must not be replaced: what lies in /dev itself is left alone.
    private static bool IsFile(string path)
    {
        using FileStream stream = new(path, FileMode.Open, FileAccess.ReadWrite, FileShare.ReadWrite | FileShare.Delete);
        return stream.CanSeek && Path.GetDirectoryName(path) != "/dev";
    }

    private static int Refuse(string sentence, int exit)
    {
        Console.Error.WriteLine($"servicerunner: {sentence}");
        return exit;
    }
}
