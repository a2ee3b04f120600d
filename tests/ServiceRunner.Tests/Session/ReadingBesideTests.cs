using ServiceRunner.Core.Jobs;
using ServiceRunner.Files.Journal;
using ServiceRunner.Files.Machine;
using ServiceRunner.Session;
using ServiceRunner.Tests.Screens;
using ServiceRunner.Verbs;

namespace ServiceRunner.Tests.Session;

/// <summary>A second run that reads sees what the first one writes, and writes nothing.</summary>
public class ReadingBesideTests
{
    [Fact]
    public void What_the_owner_does_is_seen_by_the_reader()
    {
        using PaperBench owner = new PaperBench().WithJob().To("photo-closed");
        using BenchSession reader = House.Open(owner.Path, OpenMode.Read, new MachineClock(), out _)!;
        OpenJob seen = ((JobReading.Ready)reader.Read(owner.Run.Job.Id)).Job;
        Assert.False(seen.State.IsSettled(new StepKey("1", "photo-closed")));
        owner.Keys("Enter");
        reader.Refresh();
        Assert.True(seen.State.IsSettled(new StepKey("1", "photo-closed")));
        Assert.Equal(owner.Session.Board().Single().Done, reader.Board().Single().Done);
        Assert.IsType<ActOutcome.Failed>(reader.Act(seen, new JobAction.Pause("")));
    }

    [Fact]
    public void The_bench_is_carried_forward_and_comes_back_the_same()
    {
        using PaperBench bench = new();
        for (int i = 0; i < 320; i++) bench.Session.Act(i % 2 == 0 ? new Core.Benches.BenchAction.FillJar("J1") : new Core.Benches.BenchAction.FillJar("J2"));
        bench.Restart();
        Assert.True(bench.Session.Bench.CarriedAt > 300);
        Core.Benches.Bench before = bench.Session.Bench;
        bench.Restart();
        Assert.Equal(before.Jars, bench.Session.Bench.Jars);
        Assert.Equal(before.SignedIn, bench.Session.Bench.SignedIn);
        Assert.Equal(before.LastNumber, bench.Session.Bench.LastNumber);
    }

    [Fact]
    public void A_job_that_a_later_program_went_on_with_can_only_be_read()
    {
        using PaperBench bench = new PaperBench().WithJob().To("photo-closed");
        string id = bench.Run.Job.Id;
        int lines = bench.Job.Log.Count;
        bench.Session.Dispose();
        DataFolderWithFuture(bench.Path, id);
        bench.Restart();
        OpenJob open = ((JobReading.Ready)bench.Session.Read(id)).Job;
        Assert.Contains("later version", open.WhyReadOnly, StringComparison.Ordinal);
        Assert.Equal(lines, open.State.Log.Count);
        Assert.IsType<ActOutcome.ReadOnlyJob>(bench.Session.Act(open, new JobAction.Pause("")));
    }

    private static void DataFolderWithFuture(string path, string id)
    {
        ServiceRunner.Files.Data.DataFolder folder = ((ServiceRunner.Files.Data.FolderReady)ServiceRunner.Files.Data.DataFolder.Open(path)).Folder;
        using JobLog log = ((Opened)JobLog.Open(folder, OpenMode.Own, (_, _) => null)).Log;
        Core.Quantities.Moment now = new MachineClock().Now();
        Assert.IsType<Appended>(log.Append([new NewLine(id, "future", "IV", now, """[{"kind":"teleported.7"}]"""u8.ToArray())]));
    }
}
