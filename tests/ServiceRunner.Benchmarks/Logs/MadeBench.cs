using ServiceRunner.Core.Benches;
using ServiceRunner.Core.Jobs;
using ServiceRunner.Demo;
using ServiceRunner.Files.Data;
using ServiceRunner.Files.Journal;
using ServiceRunner.Files.Machine;
using ServiceRunner.Session;
using ServiceRunner.Verbs;

namespace ServiceRunner.Benchmarks.Logs;

/// <summary>A bench with the invented workshop and no jobs, and a clock that is moved by hand.</summary>
internal sealed class MadeBench : IDisposable
{
    private const string Service = "wrist-hand-wound-17-jewels";

    public MadeBench(string folder)
    {
        if (DataFolder.Create(folder) is FolderRefused refused) throw new InvalidOperationException($"{refused.Fault}");
        File.WriteAllText(Path.Combine(folder, House.WorkshopFile), House.Embedded("demo/").First(f => f.Name == "workshop.yaml").Text);
        Time = new DemoTime(new MachineClock());
        Time.Now = Time.Present.AddDays(-60);
        Session = Open(folder, Time.Clock);
        Session.Act(new BenchAction.Begin(Session.Workshop.Name), "IV");
        Session.Act(new BenchAction.SignIn("IV"), "IV");
        foreach (Core.Workshops.Jar jar in Session.Workshop.Jars) Session.Act(new BenchAction.FillJar(jar.Id));
        foreach (Core.Workshops.Lubricant lubricant in Session.Workshop.Lubricants) Session.Act(new BenchAction.TakeBatch(lubricant.Id, $"B-{lubricant.Id.Value}", null, null));
    }

    public DemoTime Time { get; }

    public BenchSession Session { get; }

    /// <summary>Opens a bench as the program does.</summary>
    public static BenchSession Open(string folder, MachineClock clock) =>
        House.Open(folder, OpenMode.Own, clock, out int exit) ?? throw new InvalidOperationException($"exit {exit}");

    /// <summary>Books in a job by the shipped service.</summary>
    public OpenJob Book(string number)
    {
        (string id, ActOutcome outcome) = Session.Book(number, "Wrist watch, silvered dial", "", Session.Library.Read(Service)!);
        return outcome.IsDone && Session.Read(id) is JobReading.Ready ready ? ready.Job : throw new InvalidOperationException($"{outcome}");
    }

    /// <summary>Acts, and stops the benchmark if that is refused: a refusal is cheaper than a step.</summary>
    public void Act(OpenJob job, JobAction action)
    {
        ActOutcome outcome = Session.Act(job, action);
        if (outcome is not ActOutcome.Done { Events.Count: > 0 }) throw new InvalidOperationException($"{action}: {outcome}");
    }

    public void Dispose() => Session.Dispose();
}
