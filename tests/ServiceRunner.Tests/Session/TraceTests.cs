using System.Text;
using ServiceRunner.Core.Benches;
using ServiceRunner.Core.Jobs;
using ServiceRunner.Files.Journal;
using ServiceRunner.Session;
using ServiceRunner.Tests.Screens;

namespace ServiceRunner.Tests.Session;

/// <summary>Which jobs and which points had a batch.</summary>
public class TraceTests
{
    private static PaperBench Oiled()
    {
        PaperBench bench = new();
        bench.Session.Act(new BenchAction.TakeBatch("heavy-oil", "H-114", null, null));
        bench.WithJob("Q26-001").To("oil-dial-side").Keys("F2");
        bench.Session.Act(new BenchAction.TakeBatch("heavy-oil", "H-1140", null, null));
        bench.Session.Act(new BenchAction.FinishBottle("heavy-oil", "H-114"));
        bench.WithJob("Q26-002").To("oil-dial-side");
        return bench;
    }

    private static IEnumerable<string> Points(TracedBatch traced) => traced.Uses.SelectMany(u => u.Points.Select(p => $"{u.Number} {p.Point} {p.By}"));

    private static IEnumerable<string> Expected(PaperBench bench, string number, string batch)
    {
        Job job = ((JobReading.Ready)bench.Session.Read(bench.Session.Find(number)[0].Subject)).Job.State;
        return job.Points.Values.Where(p => p.Event.Batch == batch).Select(p => $"{number} {p.Event.Point} {p.By}").Order();
    }

    [Fact]
    public void A_batch_names_its_jobs_and_points_and_a_part_of_its_name_is_another()
    {
        using PaperBench bench = Oiled();
        Assert.Equal(Expected(bench, "Q26-001", "H-114"), Points(bench.Session.Trace("H-114")).Order());
        Assert.Equal(Expected(bench, "Q26-002", "H-1140"), Points(bench.Session.Trace("H-1140")).Order());
        Assert.NotEmpty(Expected(bench, "Q26-001", "H-114"));
        foreach (string other in new[] { "H-11", "h-114", "114", "H-114 ", "", "%", "H-1*" }) Assert.Empty(bench.Session.Trace(other).Uses);
        TracedPoint point = bench.Session.Trace("H-1140").Uses[0].Points[0];
        Assert.Equal(("heavy-oil", "IV", 2026), (point.Lubricant, point.By, point.At.Year));
        Assert.Contains(' ', point.Name);
    }

    [Fact]
    public void What_is_taken_back_or_served_anew_is_traced_as_it_stands()
    {
        using PaperBench bench = Oiled();
        int before = bench.Session.Trace("H-1140").Points;
        bench.Keys("Enter");
        Assert.Equal(before + 1, bench.Session.Trace("H-1140").Points);
        bench.Keys("u");
        Assert.Equal(before, bench.Session.Trace("H-1140").Points);
        // Served again from another bottle: the first one has that point no more; taken back, it has it again.
        StepKey step = bench.Job.Points.Values.Where(p => p.Event.Batch == "H-1140").Select(p => p.Event.Step).Order(Comparer<StepRef>.Create((a, b) => string.CompareOrdinal(a.Step, b.Step)))
            .First(s => Ask.Of(s, bench.Run.Job.Plan.Find(s.Key)!.Step, bench.Run.Job.Plan).First() is Ask.Oil { Point.Role.Value: "slow-pivot" }).Key;
        bench.Session.Act(new BenchAction.TakeBatch("heavy-oil", "H-2", null, null));
        Assert.True(bench.Session.Act(bench.Run.Job, new JobAction.Again(step)).IsDone);
        Offer.Answer answer = (Offer.Answer)Offer.OfStep(bench.Job, bench.Run.Job.Plan.Find(step)!, bench.Session.Circumstances(bench.Run.Job));
        // Two bottles are on the shelf now, so that going on alone would ask which.
        Assert.Equal("", bench.Session.Act(bench.Run.Job, new JobAction.Answer(answer.Ask.Step, answer.Ask.Key, new AnswerValue.Served("heavy-oil", "H-2"))).Sentence(bench.Run.Job.Plan, ""));
        Assert.Equal((before - 1, 1), (bench.Session.Trace("H-1140").Points, bench.Session.Trace("H-2").Points));
        Assert.True(bench.Session.Act(bench.Run.Job, new JobAction.TakeBack()).IsDone);
        Assert.Equal((before, 0), (bench.Session.Trace("H-1140").Points, bench.Session.Trace("H-2").Points));
        Assert.Empty(bench.Session.Trace("H-1140").Uses[0].Fault);
    }

    [Fact]
    public void An_index_made_anew_and_a_second_run_that_reads_say_the_same()
    {
        using PaperBench bench = Oiled();
        List<string> before = [.. Points(bench.Session.Trace("H-1140"))];
        bench.Session.Dispose();
        foreach (string file in Directory.GetFiles(bench.Path, "index*")) File.Delete(file);
        bench.Restart();
        Assert.Equal(before, Points(bench.Session.Trace("H-1140")));
        using BenchSession beside = Verbs.House.Open(bench.Path, OpenMode.Read, new Files.Machine.MachineClock(), out _)!;
        Assert.Equal(before, Points(beside.Trace("H-1140")));
        bench.Shell.Board.Open(bench.Session.Find("Q26-002")[0].Subject);
        bench.Keys("Enter");
        beside.Refresh();
        Assert.Equal(before.Count + 1, beside.Trace("H-1140").Points);
    }

    [Fact]
    public void A_job_that_cannot_be_read_is_named_and_the_others_are_answered()
    {
        using PaperBench bench = Oiled();
        bench.Session.Act(new BenchAction.TakeBatch("heavy-oil", "H-114", null, null));
        bench.Session.Act(new BenchAction.FinishBottle("heavy-oil", "H-1140"));
        bench.Keys("Enter");
        Assert.Equal(["Q26-001", "Q26-002"], bench.Session.Trace("H-114").Uses.Select(u => u.Number));
        bench.Session.Dispose();
        string journal = Directory.GetFiles(bench.Path, "journal-*.log").Single();
        byte[] bytes = File.ReadAllBytes(journal);
        int at = bytes.AsSpan().IndexOf(Encoding.UTF8.GetBytes("\"role\":\"slow-pivot\",\"lubricant\":\"heavy-oil\",\"batch\":\"H-114\""));
        bytes[at + 9] ^= 1;
        File.WriteAllBytes(journal, bytes);
        using BenchSession session = Verbs.House.Open(bench.Path, OpenMode.Own, new Files.Machine.MachineClock(), out _)!;
        TracedBatch traced = session.Trace("H-114");
        Assert.Equal(["Q26-001", "Q26-002"], traced.Uses.Select(u => u.Number));
        Assert.Contains("is damaged at byte", traced.Uses[0].Fault, StringComparison.Ordinal);
        Assert.Empty(traced.Uses[1].Fault);
        Assert.Single(traced.Uses[1].Points);
        session.Dispose();
        bench.Restart();
    }
}
