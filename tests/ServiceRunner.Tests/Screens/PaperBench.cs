using System.Text;
using Microsoft.Extensions.Time.Testing;
using ServiceRunner.Core.Benches;
using ServiceRunner.Core.Jobs;
using ServiceRunner.Files.Data;
using ServiceRunner.Files.Journal;
using ServiceRunner.Files.Machine;
using ServiceRunner.Screens;
using ServiceRunner.Screens.Pick;
using ServiceRunner.Screens.Run;
using ServiceRunner.Session;
using ServiceRunner.Verbs;

namespace ServiceRunner.Tests.Screens;

/// <summary>
/// The real bench on a real data folder, drawn on paper: keys in, pictures out, and a clock that the test moves. A key
/// comes a second after the one before, unless the test says otherwise.
/// </summary>
internal sealed class PaperBench : IDisposable
{
    private readonly FakeTimeProvider _time = new(new DateTimeOffset(2026, 3, 2, 9, 0, 0, TimeSpan.Zero));
    private readonly SetClock _wall;

    /// <param name="workshop">The workshop file; the invented one if null.</param>
    /// <param name="inMemory">True for a folder in memory where the machine has one: for walks of many thousand keys.</param>
    public PaperBench(string? workshop = null, bool inMemory = false)
    {
        _wall = new SetClock(_time);
        Path = inMemory && Directory.Exists("/dev/shm")
            ? Directory.CreateDirectory($"/dev/shm/bench-{Guid.NewGuid():N}").FullName
            : Directory.CreateTempSubdirectory("bench-").FullName;
        Assert.IsType<FolderReady>(DataFolder.Create(Path));
        File.WriteAllText(System.IO.Path.Combine(Path, House.WorkshopFile), workshop ?? DemoWorkshop);
        Session = Open();
        Session.Act(new BenchAction.Begin("Quay Lane"), "IV");
        Session.Act(new BenchAction.SignIn("IV"), "IV");
        Shell = new Shell(Session, _time) { Disk = new DiskWatch(() => DiskLeft) };
    }

    /// <summary>The workshop file of the invented workshop.</summary>
    public static string DemoWorkshop => House.Embedded("demo/").First(f => f.Name == "workshop.yaml").Text;

    public string Path { get; }

    public BenchSession Session { get; private set; }

    public Shell Shell { get; private set; }

    /// <summary>What the disk has left, in bytes; nobody knows at first, so that no picture depends on the machine.</summary>
    public long? DiskLeft { get; set; }

    /// <summary>Which boot the machine says it is.</summary>
    public string Boot { get; set; } = "boot-1";

    private BenchSession Open() =>
        House.Open(Path, OpenMode.Own, new MachineClock(_wall, () => (Boot, TimeSpan.FromHours(5) + _time.GetElapsedTime(0))), out int exit) ?? throw new InvalidOperationException($"exit {exit}");

    /// <summary>Ends the program and starts it again.</summary>
    public PaperBench Restart()
    {
        Session.Dispose();
        Session = Open();
        Shell = new Shell(Session, _time) { Disk = new DiskWatch(() => DiskLeft) };
        return this;
    }

    /// <summary>Books a job in by the shipped service and opens it.</summary>
    public PaperBench WithJob(string number = "Q26-001", string procedure = "wrist-hand-wound-17-jewels", int? promised = null, string serial = "")
    {
        DateOnly? day = promised is { } days ? DateOnly.FromDateTime(Session.Now.Wall.Date).AddDays(days) : null;
        (string id, ActOutcome outcome) = Session.Book(number, "Wrist watch, white dial", "", Session.Library.Read(procedure)!, new JobAction.NoteIntake(serial, "", day, null, ""));
        Assert.True(outcome.IsDone);
        Shell.Board.Open(id);
        return this;
    }

    public RunModel Run => Assert.IsType<RunModel>(Shell.Screen);

    public Job Job => Run.Job.State;

    public PaperBench Keys(params string[] keys)
    {
        foreach (string key in keys)
        {
            Wait(TimeSpan.FromSeconds(1));
            Shell.Press(new Stroke(key));
        }
        return this;
    }

    /// <summary>The same key again and again, so far apart.</summary>
    public PaperBench Held(string key, int times, TimeSpan apart)
    {
        for (int i = 0; i < times; i++)
        {
            Shell.Press(new Stroke(key));
            _time.Advance(apart);
        }
        return this;
    }

    /// <summary>Takes the choice of a list that begins so.</summary>
    public PaperBench Pick(string text)
    {
        PickModel pick = Assert.IsType<PickModel>(Shell.Screen);
        int at = pick.Matching.ToList().FindIndex(c => c.Text.StartsWith(text, StringComparison.OrdinalIgnoreCase));
        Assert.True(at >= 0, $"'{text}' is not among: {string.Join("; ", pick.Matching.Select(c => c.Text))}");
        while (pick.At != at) Keys(pick.At < at ? "Down" : "Up");
        return Keys("Enter");
    }

    public PaperBench Type(string text)
    {
        Assert.NotNull(Shell.Open);
        Shell.Accept(text);
        return this;
    }

    public PaperBench Wait(TimeSpan time)
    {
        _time.Advance(time);
        Shell.Tick();
        return this;
    }

    /// <summary>Goes on by what is offered, typing what must be typed, until the step is at hand.</summary>
    public PaperBench To(string step) => Walk(() => Run.Shown?.Step.Id.Value == step, step);

    /// <summary>Goes on until a question of this key is at hand.</summary>
    public PaperBench ToAsk(string key) => Walk(() => Run.Offer is Offer.Answer { Ask: var ask } && ask.Key == key, key);

    /// <summary>Goes on until something is so.</summary>
    public PaperBench Until(Func<bool> there, string what) => Walk(there, what);

    /// <summary>Goes on until every step is settled.</summary>
    public PaperBench ToEnd() => Walk(() => Run.Offer is Offer.Close, "the end");

    private PaperBench Walk(Func<bool> there, string where)
    {
        for (int i = 0; i < 2000; i++)
        {
            if (there()) return this;
            switch (Run.Offer)
            {
                case Offer.Fact or Offer.Answer { Act: null, Ask.Choices.Count: > 0 }: Keys("1"); break;
                case Offer.Answer { Act: null } a: Keys("Enter").Type(Typed(a.Ask)); break;
                case Offer.Wait w: Wait(w.Soak.Begun.Window.Aim - w.Soak.Length(Session.Now).Length + TimeSpan.FromSeconds(1)); break;
                default: Keys("Enter"); break;
            }
            Assert.Equal("", Shell.Open?.Label ?? "");
        }
        throw new InvalidOperationException($"'{where}' was never reached");
    }

    public static string Typed(Ask ask) => ask switch
    {
        Ask.Count c => $"{c.Facet.AtLeast ?? c.Facet.AtMost ?? 1}",
        Ask.Measure m => $"{m.Facet.AtLeast ?? m.Facet.AtMost ?? 1}",
        Ask.Rate => "+4 285",
        Ask.Witness => "TB",
        _ => "as drawn on the card",
    };

    /// <summary>The screen as text, and below it a legend: what each ink of importance stands on.</summary>
    public string Picture(int width = 80, int height = 24)
    {
        Sheet sheet = Shell.Draw(width, height);
        StringBuilder text = new(sheet.ToString());
        text.Append('\n').Append(new string('─', width)).Append('\n');
        foreach (Ink ink in new[] { Ink.Caution, Ink.Alarm, Ink.Good, Ink.Title, Ink.Strong })
        {
            IEnumerable<string> words = Enumerable.Range(0, height).Select(y => string.Concat(Enumerable.Range(0, width).Where(x => sheet[x, y].Ink == ink).Select(x => sheet[x, y].Text)).Trim()).Where(w => w.Length > 0);
            if (words.Any()) text.Append($"{ink}: {string.Join(" | ", words)}\n");
        }
        return text.ToString();
    }

    /// <summary>Somebody sets the machine's clock; the time since boot does not notice.</summary>
    public void SetWallClock(TimeSpan by) => _wall.Set += by;

    private sealed class SetClock(FakeTimeProvider time) : TimeProvider
    {
        public TimeSpan Set { get; set; }

        public override DateTimeOffset GetUtcNow() => time.GetUtcNow() + Set;

        public override TimeZoneInfo LocalTimeZone => TimeZoneInfo.Utc;
    }

    public void Dispose()
    {
        Session.Dispose();
        Directory.Delete(Path, recursive: true);
    }
}
