using System.Text;
using ServiceRunner.Core.Benches;
using ServiceRunner.Core.Jobs;
using ServiceRunner.Core.Quantities;
using ServiceRunner.Demo;
using ServiceRunner.Files.Data;
using ServiceRunner.Files.Events;
using ServiceRunner.Files.Index;
using ServiceRunner.Files.Journal;
using ServiceRunner.Files.Machine;
using ServiceRunner.Session;

namespace ServiceRunner.Benchmarks.Logs;

/// <summary>
/// A data folder with a long log: one job is walked by the real rules, and its lines, with those of the bench between
/// them, are appended again under other ids, a job a day, line by line through the real log. The last twelve jobs are
/// left half done.
/// </summary>
internal sealed class YearsOfWork
{
    private const int Unfinished = 12;

    private readonly string _job, _bench;
    private readonly List<(LogLine Line, SubjectRow? Row)> _lines = [];
    private readonly DemoTime _time;

    private YearsOfWork(string folder)
    {
        using (MadeBench bench = new(folder))
        {
            OpenJob job = bench.Book("Q26-001");
            Repairer repairer = new(bench, job);
            while (!repairer.IsThrough) bench.Act(job, repairer.Next());
            bench.Act(job, new JobAction.Complete("as it is"));
            (_job, _bench, _time) = (job.Id, bench.Session.Folder.Bench, bench.Time);
            Job? state = null;
            foreach (LogLine line in JobLog.Scan(folder).OfType<ScannedLine>().Select(s => s.Line).SkipWhile(l => l.Subject != job.Id))
            {
                if (line.Subject == job.Id) state = Fold.Next(job.Id, state, EventLines.Job(line));
                _lines.Add((line, line.Subject == job.Id ? JobRows.Of(state!, job.Plan, null) : null));
            }
        }
    }

    /// <summary>Makes the folder; gives how many lines there are, which is the number asked for or a few hundred more.</summary>
    public static long Make(string folder, long lines) => Make(folder, (had, each) => ((int)Math.Max(1, (lines - had) / each + Unfinished / 2), lines));

    /// <summary>Makes the folder with so many jobs; gives how many lines there are.</summary>
    public static long MakeJobs(string folder, int jobs) => Make(folder, (_, _) => (jobs - 1, long.MaxValue));

    private static long Make(string folder, Func<long, int, (int Jobs, long Lines)> much)
    {
        string build = Path.Combine(Disk.Memory, Identity.New());
        YearsOfWork work = new(build);
        (int jobs, long lines) = much(work._lines[^1].Line.Sequence, work._lines.Count);
        long made = work.Append(build, jobs, lines);
        MadeBench.Open(build, new MachineClock()).Dispose(); // carries the bench forward, as any opening does
        Disk.Copy(build, folder);
        Directory.Delete(build, recursive: true);
        return made;
    }

    private long Append(string folder, int jobs, long lines)
    {
        DataFolder data = ((FolderReady)DataFolder.Open(folder)).Folder;
        DateTimeOffset first = _time.Present.AddDays(-jobs - 1);
        _time.Now = first;
        int half = Half();
        using JobLog log = ((Opened)JobLog.Open(data, OpenMode.Own, (_, _) => null, new OpenOptions { Clock = _time })).Log;
        for (int j = 0; j < jobs && log.Head.Sequence < lines; j++)
        {
            _time.Now = first.AddDays(j);
            string id = Identity.New(_time.Now);
            foreach ((LogLine line, SubjectRow? row) in j < jobs - Unfinished ? _lines : _lines.Take(half)) Append(log, id, j, line, row);
        }
        return log.Head.Sequence;
    }

    // About the middle, where no clock runs: cut anywhere, the bench would know a dozen clocks that no job has.
    private int Half()
    {
        int half = 0, running = 0;
        for (int i = 0; i < _lines.Count / 2; i++)
        {
            if (_lines[i].Row is null)
                foreach (BenchEvent e in EventLines.Bench(_lines[i].Line).Events) running += e is BenchEvent.ClockBegun ? 1 : e is BenchEvent.ClockEnded ? -1 : 0;
            if (running == 0 && _lines[i].Row is null) half = i + 1;
        }
        return half;
    }

    private void Append(JobLog log, string id, int number, LogLine line, SubjectRow? row)
    {
        TimeSpan later = _time.Now - _lines[0].Line.At.Wall;
        Moment at = line.At.Plus(later);
        ReadOnlyMemory<byte> events = row is null ? Encoding.UTF8.GetBytes(Encoding.UTF8.GetString(line.Events.Span).Replace(_job, id, StringComparison.Ordinal)) : line.Events;
        NewLine next = new(row is null ? _bench : id, Identity.New(), line.By, at, events)
        {
            Row = () => row is null ? JobRows.OfBench(_bench, 0, at) : row with { Number = $"J-{number}", Since = row.Since + later },
        };
        if (log.Append(next) is AppendRefused refused) throw new InvalidOperationException($"{refused.Fault}");
    }
}
