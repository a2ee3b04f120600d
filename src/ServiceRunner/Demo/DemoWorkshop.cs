using ServiceRunner.Core.Benches;
using ServiceRunner.Core.Jobs;
using ServiceRunner.Core.Quantities;
using ServiceRunner.Files.Data;
using ServiceRunner.Files.Journal;
using ServiceRunner.Files.Machine;
using ServiceRunner.Files.Procedures;
using ServiceRunner.Files.Sentences;
using ServiceRunner.Session;
using ServiceRunner.Verbs;

namespace ServiceRunner.Demo;

/// <summary>Makes the invented workshop: jobs in different states, walked by the real rules with a clock that ends now.</summary>
internal static class DemoWorkshop
{
    private const string Service = "wrist-hand-wound-17-jewels";

    /// <summary>Makes it in an empty or missing folder; a sentence if that fails, else null.</summary>
    public static string? Make(string path, MachineClock machine)
    {
        if (DataFolder.Create(path) is FolderRefused refused) return FaultWords.Sentence(refused.Fault, path);
        File.WriteAllText(Path.Combine(path, House.WorkshopFile), House.Embedded("demo/").First(f => f.Name == "workshop.yaml").Text);
        DemoTime time = new(machine);
        using BenchSession? session = House.Open(path, OpenMode.Own, time.Clock, out _);
        if (session is null) return "The invented workshop could not be opened.";
        time.Now = time.Present.AddDays(-40);
        session.Act(new BenchAction.Begin(session.Workshop.Name), "IV");
        session.Act(new BenchAction.SignIn("IV"), "IV");
        Shelf(session, DateOnly.FromDateTime(time.Present.Date));
        Finished(session, time);
        WaitingForAPart(session, time);
        ReadyToOil(session, time);
        BookedIn(session, time);
        Soaking(session, time);
        Inspecting(session, time);
        return null;
    }

    // One bottle is soon past its date, one is not opened yet.
    private static void Shelf(BenchSession session, DateOnly present)
    {
        FillJars(session);
        foreach ((string lubricant, string batch, int daysAgo) in new[] { ("light-oil", "L-2207", 160), ("heavy-oil", "H-1140", 718), ("stone-grease", "S-0318", 160), ("winding-grease", "W-0925", 300), ("spring-grease", "F-0402", 300) })
            session.Act(new BenchAction.TakeBatch(lubricant, batch, present.AddDays(-daysAgo), null));
        session.Act(new BenchAction.NoteBottle("light-oil", "L-2311", null, present.AddDays(900)));
    }

    private static void FillJars(BenchSession session)
    {
        foreach (Core.Workshops.Jar jar in session.Workshop.Jars) session.Act(new BenchAction.FillJar(jar.Id));
    }

    private static (OpenJob Job, DemoRepairer Repairer) Book(BenchSession session, DemoTime time, DemoIntake intake)
    {
        string ownerId = Identity.New();
        session.Owners.Save(ownerId, intake.Owner);
        ReadProcedure procedure = session.Library.Read(Service) ?? throw new InvalidOperationException("the service procedure is not shipped");
        (string id, ActOutcome outcome) = session.Book(intake.Number, intake.What, ownerId, procedure, intake.Noted(DateOnly.FromDateTime(time.Present.Date)));
        return outcome.IsDone && session.Read(id) is JobReading.Ready ready
            ? (ready.Job, new DemoRepairer(session, time, ready.Job, intake))
            : throw new InvalidOperationException(outcome.Sentence(new Plan([]), session.Folder.Path));
    }

    private static void Finished(BenchSession session, DemoTime time)
    {
        time.Now = time.Present.AddDays(-16).Date.AddHours(9);
        (OpenJob job, DemoRepairer repairer) = Book(session, time, DemoIntake.Finished);
        repairer.Sees["examine:click-spring"] = "not original";
        repairer.WalkTo(null);
        repairer.Act(new JobAction.DecideFinding(Last(job), Verdict.Accept, "a later spring, sound and strong enough"));
        repairer.Act(new JobAction.Complete(""));
    }

    private static void WaitingForAPart(BenchSession session, DemoTime time)
    {
        time.Now = time.Present.AddDays(-23).Date.AddHours(10);
        (OpenJob job, DemoRepairer repairer) = Book(session, time, DemoIntake.WaitingForAPart);
        repairer.Sees["examine:fourth-pivots"] = "bent";
        repairer.Sees["examine:escape-upper-jewel"] = "cracked";
        repairer.WalkTo("wash/jars-ready");
        string jewel = Last(job), wheel = job.State.Findings[^2].Event.Finding;
        repairer.Act(new JobAction.PriceFinding(wheel, TypedNumber.Of(280), TimeSpan.FromHours(1)));
        repairer.Act(new JobAction.PriceFinding(jewel, TypedNumber.Of(150), TimeSpan.FromMinutes(45)));
        BringIn(session, job, wheel, "wheel-or-pinion-replacement");
        BringIn(session, job, jewel, "jewel-replacement");
        repairer.Act(new JobAction.GiveEstimate(session.Workshop.Currency));
        time.Now += TimeSpan.FromHours(3);
        repairer.Act(new JobAction.TakeAnswer([wheel], [], Means.Telephone, DateOnly.FromDateTime(time.Now.Date), "the wheel, yes; the jewel I must think about"));
        repairer.Act(new JobAction.Hold(HoldFor.Part, "a fourth wheel, ordered", "power off, parts in the tray, covered", null));
    }

    private static string Last(OpenJob job) => job.State.Findings[^1].Event.Finding;

    private static void BringIn(BenchSession session, OpenJob job, string finding, string procedure)
    {
        ActOutcome outcome = session.BringIn(job, finding, job.State.Findings.First(f => f.Event.Finding == finding).Event.Part, session.Library.Read(procedure) ?? throw new InvalidOperationException($"{procedure} is not shipped"));
        if (!outcome.IsDone) throw new InvalidOperationException(outcome.Sentence(job.Plan, session.Folder.Path));
    }

    private static void ReadyToOil(BenchSession session, DemoTime time)
    {
        time.Now = time.Present.AddDays(-3).Date.AddHours(9);
        (_, DemoRepairer repairer) = Book(session, time, DemoIntake.ReadyToOil);
        repairer.WalkTo("oil-train-side");
        repairer.Act(new JobAction.Pause("the day was over"));
    }

    private static void BookedIn(BenchSession session, DemoTime time)
    {
        time.Now = time.Present.AddHours(-3);
        Book(session, time, DemoIntake.BookedIn);
    }

    // Ten quick steps before its first soak: what somebody who just looks around should find first.
    private static void Inspecting(BenchSession session, DemoTime time)
    {
        time.Now = time.Present.AddHours(-2.5);
        (OpenJob job, DemoRepairer repairer) = Book(session, time, DemoIntake.Inspecting);
        repairer.WalkTo("see-balance");
        while (job.Plan.InForce(job.State).Select(s => job.Plan.OpenQuestion(s, job.State)).FirstOrDefault(q => q is not null) is { } question)
            repairer.Act(new JobAction.AnswerFact(question.Fact, question.Answers[0]));
        time.Now = time.Present;
    }

    private static void Soaking(BenchSession session, DemoTime time)
    {
        time.Now = time.Present.AddHours(-20);
        FillJars(session);
        (OpenJob job, DemoRepairer repairer) = Book(session, time, DemoIntake.Soaking);
        repairer.WalkTo("wash/wash");
        foreach (Soak soak in job.State.RunningSoaks)
        {
            time.Now += soak.Window.Aim;
            repairer.Act(new JobAction.EndSoak(soak.Begun.Step));
        }
        Offer wash = Offer.OfStep(job.State, job.Plan.Find(new StepKey("1", "wash/wash"))!, session.Circumstances(job));
        time.Now = time.Present.AddSeconds(-20);
        repairer.Act(wash.Act!);
        time.Now = time.Present;
    }
}
