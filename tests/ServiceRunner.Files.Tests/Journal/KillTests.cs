using System.Diagnostics;
using System.Globalization;
using ServiceRunner.Files.Data;
using ServiceRunner.Files.Index;
using ServiceRunner.Files.Journal;

namespace ServiceRunner.Files.Tests.Journal;

public sealed class KillTests : IDisposable
{
    private readonly LogBench _bench = new() { Options = new OpenOptions() };

    [Fact]
    public async Task What_was_acknowledged_is_there_after_a_kill_and_the_index_agrees()
    {
        long acknowledged = 0;
        for (int round = 0; round < 6; round++)
        {
            using (Process child = ChildProcess.Start("append", _bench.Path))
            {
                for (int i = 0; i < 20 + (round * 37); i++) acknowledged = Parse(await child.StandardOutput.ReadLineAsync()) ?? acknowledged;
                child.Kill();
                // What it had said before it died counts as well.
                while (await child.StandardOutput.ReadLineAsync() is { } line) acknowledged = Parse(line) ?? acknowledged;
                await child.WaitForExitAsync();
            }
            using JobLog log = _bench.Own();
            Assert.True(acknowledged > 0 && log.Head.Sequence >= acknowledged, $"{acknowledged} acknowledged, {log.Head.Sequence} there");
            Assert.DoesNotContain(log.Notes, n => n is EndsBeforeIndex or IndexRebuilt);
            Assert.DoesNotContain(JobLog.Scan(_bench.Path), i => i is ScannedDamage);
            Assert.Equal(log.Head.Sequence, Enumerable.Range(0, 3).Sum(j => log.Read($"JOB{j}").Lines.Count));
        }
        List<SubjectRow> before = Rows();
        _bench.DropIndex();
        Assert.Equal(before, Rows());
        Assert.Equal(3, before.Count);
    }

    [Fact]
    public async Task A_folder_that_another_process_has_is_in_use_until_it_is_killed()
    {
        using Process child = ChildProcess.Start("hold", _bench.Path);
        Assert.Equal("ready", await child.StandardOutput.ReadLineAsync());
        Assert.StartsWith($"process {child.Id} since ", Assert.IsType<InUse>(_bench.Refused()).Holder, StringComparison.Ordinal);
        using Process second = ChildProcess.Start("hold", _bench.Path);
        Assert.Equal("InUse", await second.StandardOutput.ReadLineAsync());
        using (JobLog beside = _bench.Beside()) Assert.Equal(0, beside.Head.Sequence);
        child.Kill();
        await child.WaitForExitAsync();
        _bench.Own().Dispose();
    }

    private List<SubjectRow> Rows()
    {
        using JobLog log = _bench.Own();
        return [.. log.Rows(SubjectRow.Job, openOnly: false)];
    }

    private static long? Parse(string? line) => long.TryParse(line, CultureInfo.InvariantCulture, out long sequence) ? sequence : null;

    public void Dispose() => _bench.Dispose();
}
