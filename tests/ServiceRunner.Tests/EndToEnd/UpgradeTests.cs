using System.IO.Compression;
using System.Security.Cryptography;
using System.Text;
using ServiceRunner.Core.Jobs;
using ServiceRunner.Files.Data;
using ServiceRunner.Files.Index;
using ServiceRunner.Files.Journal;
using ServiceRunner.Files.Machine;
using ServiceRunner.Screens;
using ServiceRunner.Session;
using ServiceRunner.Tests.Shared;
using ServiceRunner.Verbs;

namespace ServiceRunner.Tests.EndToEnd;

/// <summary>
/// Data folders as earlier versions left them, each made with that version's own program, and what it said of its jobs.
/// docs/decisions/evolution.md has the rules, and how a version is added here.
/// </summary>
public class UpgradeTests
{
    private static string Upgrades => Path.Combine(Repository.Root, "tests", "ServiceRunner.Tests", "EndToEnd", "Upgrades");

    public static TheoryData<string> Versions => [.. Directory.GetDirectories(Upgrades).Select(d => Path.GetFileName(d)!).Order(StringComparer.Ordinal)];

    private static string Unpack(TemporaryFolder folder, string version)
    {
        string data = Path.Combine(folder.Path, "data");
        ZipFile.ExtractToDirectory(Path.Combine(Upgrades, version, "data.zip"), data);
        return data;
    }

    [Theory]
    [MemberData(nameof(Versions))]
    public void The_same_jobs_are_shown_with_the_index_it_left_and_with_one_made_anew(string version)
    {
        using TemporaryFolder folder = new();
        string data = Unpack(folder, version), before = File.ReadAllText(Path.Combine(Upgrades, version, "jobs.txt")).ReplaceLineEndings();
        Assert.Equal(before, Jobs(folder, data, before));
        House.Open(data, OpenMode.Own, new MachineClock(), out int exit)!.Dispose();
        Assert.Equal(0, exit);
        foreach (string index in Directory.GetFiles(data, "index*")) File.Delete(index);
        House.Open(data, OpenMode.Own, new MachineClock(), out exit)!.Dispose();
        Assert.Equal(before, Jobs(folder, data, before));
        (exit, string audit, _) = BuiltProgram.Run(folder.Path, "audit", "--data", data);
        Assert.Equal(0, exit);
        Assert.EndsWith("no damage.", audit.Trim(), StringComparison.Ordinal);
    }

    // In the columns that the old version had; a later one may have more.
    private static string Jobs(TemporaryFolder folder, string data, string before)
    {
        (int exit, string now, string errors) = BuiltProgram.Run(folder.Path, "jobs", "--all", "--data", data);
        Assert.Equal((0, ""), (exit, errors));
        string[][] rows = [.. now.Split('\n').Select(l => l.TrimEnd('\r').Split('\t'))];
        int[] columns = [.. before.Split('\n')[0].TrimEnd('\r').Split('\t').Select(c => Array.IndexOf(rows[0], c))];
        return string.Join(Environment.NewLine, rows.Select(r => r.Length == 1 ? "" : string.Join('\t', columns.Select(c => r[c]))));
    }

    [Theory]
    [MemberData(nameof(Versions))]
    public void Every_job_reads_to_its_end_and_one_goes_on(string version)
    {
        using TemporaryFolder folder = new();
        string data = Unpack(folder, version);
        byte[] journal = File.ReadAllBytes(Directory.GetFiles(data, "journal-*.log").Single());
        using (BenchSession session = House.Open(data, OpenMode.Own, new MachineClock(), out _)!)
        {
            Assert.All(session.AllJobs(), row => Assert.Equal("", Assert.IsType<JobReading.Ready>(session.Read(row.Subject)).Job.WhyReadOnly));
            SubjectRow open = session.AllJobs().First(r => r.State == "interrupted");
            OpenJob job = ((JobReading.Ready)session.Read(open.Subject)).Job;
            Assert.True(session.Act(job, new JobAction.Resume()).IsDone);
            int settled = job.State.Steps.Values.Count(s => s.End is not null);
            for (int i = 0; i < 20 && job.State.Steps.Values.Count(s => s.End is not null) < settled + 3; i++)
                Assert.True(session.Act(job, Offer.Of(job.State, session.Circumstances(job)).Act ?? throw new InvalidOperationException("typing is wanted")).IsDone);
            Assert.Equal(settled + 3, job.State.Steps.Values.Count(s => s.End is not null));
        }
        Assert.Equal(journal, File.ReadAllBytes(Directory.GetFiles(data, "journal-*.log").Order().First())[..journal.Length]);
        Assert.Equal(0, BuiltProgram.Run(folder.Path, "audit", "--data", data).Exit);
    }

    [Theory]
    [MemberData(nameof(Versions))]
    public void A_job_that_a_later_version_went_on_with_opens_to_be_read_and_says_so(string version)
    {
        using TemporaryFolder folder = new();
        string data = Unpack(folder, version);
        string kind = Later(data, "booked in", """{"v":1""", """[{"kind":"polished.9"}]"""), line = Later(data, "waiting for a part", """{"v":2""", "[]");
        using BenchSession session = House.Open(data, OpenMode.Own, new MachineClock(), out _)!;
        Shell shell = new(session, TimeProvider.System);
        foreach ((string id, string what) in new[] { (kind, "polished.9"), (line, "2") })
        {
            OpenJob job = ((JobReading.Ready)session.Read(id)).Job;
            Assert.Equal($"A later version of this program went on with this job ('{what}'), so it can only be read here; use that version.", job.WhyReadOnly);
            Assert.IsType<ActOutcome.ReadOnlyJob>(session.Act(job, new JobAction.Pause("")));
            shell.Board.Open(id);
            shell.Press(new Stroke("k"));
            Assert.Equal(job.WhyReadOnly, shell.Message);
            foreach (string[] form in new string[][] { [], ["--html"] })
            {
                (int exit, string report, _) = BuiltProgram.Run(folder.Path, ["report", job.State.Number, .. form, "--data", data]);
                Assert.Equal(0, exit);
                Assert.Contains("This report is not the whole job.", report, StringComparison.Ordinal);
                Assert.Contains("A later version of this program went on with this job", report, StringComparison.Ordinal);
            }
        }
        SubjectRow other = session.AllJobs().First(r => r.State == "interrupted");
        Assert.True(session.Act(((JobReading.Ready)session.Read(other.Subject)).Job, new JobAction.Resume()).IsDone);
    }

    // A line as a later program would append it, written here by hand: this one can write no other than its own.
    private static string Later(string data, string state, string version, string events)
    {
        DataFolder folder = ((FolderReady)DataFolder.Open(data)).Folder;
        using JobLog log = ((Opened)JobLog.Open(folder, OpenMode.Read, new JobReader(folder).RowOf)).Log;
        SubjectRow row = log.Rows("job", openOnly: true).First(r => r.State == state);
        LogLine last = log.Read(row.Subject).Lines[^1];
        string body = $$"""{{version}},"of":"{{row.Subject}}","n":{{last.SubjectSequence + 1}},"prev":"{{last.BodyHash}}","act":"LATER","by":"IV","at":"2026-11-25T12:00:00.0000000Z","off":0,"boot":"","up":0,"events":{{events}}}""";
        string start = $$"""{{body}}{{"\t"}}{{version}},"bench":"{{folder.Bench}}","seq":{{log.Head.Sequence + 1}},"prev":"{{log.Head.Hash}}","body":"{{Hash(body)}}"}""";
        File.AppendAllText(Directory.GetFiles(data, "journal-*.log").Order().Last(), $"{start}\t{Hash(start)}\n");
        return row.Subject;
    }

    private static string Hash(string text) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text)));
}
