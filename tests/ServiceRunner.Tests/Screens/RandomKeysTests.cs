using ServiceRunner.Core.Jobs;
using ServiceRunner.Session;
using ServiceRunner.Tests.Shared;

namespace ServiceRunner.Tests.Screens;

/// <summary>
/// 100,000 random keys, answers, waits, restarts and clock changes: no exception, no lost soak, and what is on the disk
/// gives the state that was on the screen. A seed that failed once stays in seeds.txt and is walked for ever.
/// </summary>
public class RandomKeysTests
{
    private static readonly string[] Keys =
    [
        "Enter", "Enter", "Enter", "Enter", "PageDown", "PageDown", "PageDown", "PageUp", "1", "1", "1", "2", "3", "9", "u", "s", "e", "+", "a", "l", "v", "b", "o",
        "f", "p", "h", "g", "r", "m", "k", "d", "Esc", "Esc", "F1", "F2", "F3", "F4", "F6", "F7", "F9", "F8", "t", "w", "y", "Space", "F13", "j", "n", "i", "/", "Up", "Down", "Left", "Right", "q", "Z", "é", "Tab", "Backspace",
    ];

    private static readonly string[] Answers = ["", "yes", "0,04", "6", "+4 285", "to the left", "IV", "TB", "8:30", "2 min", "2 Mar", "+3 weeks", "3/4/2026", "-1", "as seen", "\e[2J\u0007", "日本", new string('x', 300), "Q26-00"];

    public static TheoryData<int> Seeds
    {
        get
        {
            TheoryData<int> seeds = [];
            foreach (int seed in Enumerable.Range(1, 20)) seeds.Add(seed);
            foreach (string kept in File.ReadAllLines(Path.Combine(Repository.Root, "tests", "ServiceRunner.Tests", "Screens", "seeds.txt")))
                if (int.TryParse(kept, out int seed)) seeds.Add(seed);
            return seeds;
        }
    }

    [Theory]
    [MemberData(nameof(Seeds))]
    public void Five_thousand_keys(int seed)
    {
        Random random = new(seed);
        using PaperBench bench = new(inMemory: true);
        bench.WithJob("Q26-001").Keys("F2");
        bench.WithJob("Q26-002", "jewel-replacement").Keys("F2");
        for (int i = 0; i < 5000; i++)
        {
            if (bench.Shell.Open is not null)
            {
                string answer = Answers[random.Next(Answers.Length)];
                if (random.Next(4) == 0) bench.Shell.Leave(answer);
                else bench.Shell.Accept(answer);
            }
            else
            {
                bench.Shell.Press(new(Next(bench, random)));
            }
            bench.Wait(TimeSpan.FromMilliseconds(random.Next(10) == 0 ? random.Next(200_000) : random.Next(1500)));
            if (random.Next(3) == 0) bench.Shell.Draw(random.Next(1, 210), random.Next(1, 62));
            if (random.Next(1500) == 0) bench.SetWallClock(TimeSpan.FromSeconds(random.Next(-4000, 4000)));
            if (i % 100 == 99 && bench.Session.Board().Count(r => r.Open) < 2) bench.WithJob($"Q26-X{i}", i % 200 == 99 ? "pivot-repolish" : "wrist-hand-wound-17-jewels");
            if (i % 100 == 99 && random.Next(2) == 0 && bench.Session.Board().FirstOrDefault(r => r.Open) is { } open) bench.Shell.Board.Open(open.Subject);
            if (i % 1000 == 999) Agrees(bench, restart: true, random);
        }
        Agrees(bench, restart: true, random);
        Assert.True(bench.Session.Head.Sequence > 200, $"only {bench.Session.Head.Sequence} lines: the keys did not get far");
    }

    // Closing and ending come seldom: a job that is over has little left to try. Lists are left again, holds ended.
    private static string Next(PaperBench bench, Random random) => random.Next(400) switch
    {
        0 => "c",
        1 => "x",
        < 60 => "Enter",
        < 120 when bench.Shell.Screen is ServiceRunner.Screens.Pick.PickModel => random.Next(2) == 0 ? "Esc" : "1",
        < 150 when bench.Shell.Screen is ServiceRunner.Screens.Run.RunModel { Offer: Offer.Restart } => "h",
        < 390 when bench.Shell.Screen is ServiceRunner.Screens.Parts.TrayCheckModel => "PageDown",
        < 185 when bench.Shell.Screen is not ServiceRunner.Screens.Run.RunModel => bench.Shell.Screen == bench.Shell.Board ? "Enter" : "Esc",
        < 300 when bench.Shell.Screen is ServiceRunner.Screens.Parts.PartsModel => random.Next(8) == 0 ? "Enter" : "Esc",
        _ => Keys[random.Next(Keys.Length)],
    };

    // The clocks that the bench knows are those of its jobs, before and after the program is started anew.
    private static void Agrees(PaperBench bench, bool restart, Random random)
    {
        string[] before = Clocks(bench);
        if (restart)
        {
            if (random.Next(2) == 0) bench.Boot = $"boot-{random.Next(100)}";
            bench.Restart();
        }
        Assert.Equal(before, Clocks(bench));
        Assert.Equal(bench.Session.Bench.Clocks.Select(c => $"{c.Job} {c.Step}").Order(), before);
    }

    private static string[] Clocks(PaperBench bench) =>
        [.. bench.Session.AllJobs().SelectMany(r => bench.Session.Read(r.Subject) is JobReading.Ready { Job.Job: { } job } ? job.RunningSoaks.Select(s => $"{job.Id} {s.Begun.Step}") : []).Order()];
}
