using System.Reflection;
using System.Runtime.CompilerServices;
using System.Text.Json;
using ServiceRunner.Core.Benches;
using ServiceRunner.Core.Jobs;
using ServiceRunner.Core.Quantities;
using ServiceRunner.Files.Events;
using ServiceRunner.Tests.Shared;

namespace ServiceRunner.Files.Tests.Events;

/// <summary>
/// Stored shapes are a contract: one file a kind, written once. A changed shape is a new version with a file of its
/// own, and the old file stays and is still read.
/// </summary>
public class PinnedShapesTests
{
    private static readonly StepRef Step = new("1", "wash/soak", 2);

    private static TypedNumber Number(string typed)
    {
        Assert.Equal(TypedNumber.Fault.None, TypedNumber.Read(typed, out TypedNumber number));
        return number;
    }

    private static readonly JobEvent[] Jobs =
    [
        new JobEvent.Opened("26-001", "Wrist watch, \"gilt\" dial", "01OWNER"),
        new JobEvent.IntakeNoted("K 114 208", "strap, box", new DateOnly(2026, 3, 20), Number("380,50"), "EUR", "glass cracked, case scratched"),
        new JobEvent.OwnerNamed("01OWNER"),
        new JobEvent.ProcedureJoined("1", "service", "Full service", "3", [new PinnedText("service.yaml", "ab12")], "a worn pivot"),
        new JobEvent.FactAnswered("luminous", "no"),
        new JobEvent.Started(),
        new JobEvent.Paused("the telephone"),
        new JobEvent.Resumed(),
        new JobEvent.Held(HoldFor.Part, "a fourth wheel", "power off, covered", new DateOnly(2026, 4, 1)),
        new JobEvent.Restarted(),
        new JobEvent.Stopped("too worn"),
        new JobEvent.Aborted("dropped"),
        new JobEvent.Completed(),
        new JobEvent.StepDone(Step, new DateTimeOffset(2026, 3, 2, 14, 30, 0, TimeSpan.FromHours(1))),
        new JobEvent.StepSkipped(Step),
        new JobEvent.StepBegunAgain(Step),
        new JobEvent.Confirmed(Step, "Which way does the fork fall?", "to the left"),
        new JobEvent.Examined(Step, "balance-pivots", "bent"),
        new JobEvent.Measured(Step, "third-endshake", Number("0,040"), "mm", 0.03m, 0.05m) { Instrument = "micrometer" },
        new JobEvent.Felt(Step, "third-endshake", "right"),
        new JobEvent.Counted(Step, "turns", Number("6"), "turns", 5, 7),
        new JobEvent.RateTaken(Step, 24, "dial-up", Number("+4"), Number("285"), Number("0.2")),
        new JobEvent.PointServed(Step, "third-upper", "slow-pivot", "heavy-oil", "H-1140"),
        new JobEvent.AskLeft(Step, "measure:third-endshake"),
        new JobEvent.SoakBegun(Step, SoakKind.Bath, "cleaner", "J2", ["main-plate", "bridge"], new Window(TimeSpan.FromMinutes(3), TimeSpan.FromMinutes(5), TimeSpan.FromMinutes(8))),
        new JobEvent.SoakEnded(Step, TimeSpan.FromSeconds(301.5), true),
        new JobEvent.SoakLengthened(Step, TimeSpan.FromMinutes(7)),
        new JobEvent.AlarmAnswered(Step, Urgency.High),
        new JobEvent.Marked(Step),
        new JobEvent.PartMoved("balance", new PartPlace.InTray("A1")),
        new JobEvent.PowerChanged(Power.Off, 1.5m),
        new JobEvent.EstimateNoted(Step, "310"),
        new JobEvent.ConsentNoted(Step, "all of it, by telephone"),
        new JobEvent.Witnessed(Step, "TB"),
        new JobEvent.PartAdded("added-57", "Dust ring", "E1", 1, 0),
        new JobEvent.PartRenewed(Step, "balance-staff", Origin.MadeNew, "blue steel"),
        new JobEvent.PartTended("fourth-wheel", Tending.Cleaned),
        new JobEvent.WashBegunAgain("fourth-wheel", [Step, new("1", "wash/dry", 2)]),
        new JobEvent.FindingWeighed("01ACTION", Weight.Service, Sureness.Inferred),
        new JobEvent.FindingDecided("01ACTION", Verdict.SendOut, "the wheel cutter"),
        new JobEvent.FindingPriced("01ACTION", Number("120,50"), TimeSpan.FromMinutes(90), "EUR"),
        new JobEvent.FindingSettled("01ACTION", "came back, teeth good"),
        new JobEvent.PhotoKept("01ACTION", Step, "pivot.jpg", "ab12", "lower pivot, from the side"),
        new JobEvent.RepairJoined("2", "01ACTION", "fourth-wheel"),
        new JobEvent.RepairGivenUp("2"),
        new JobEvent.EstimateGiven([new EstimateLine("01ACTION", Number("120,50"), TimeSpan.FromMinutes(90)), new EstimateLine("02ACTION", null, null)], "EUR"),
        new JobEvent.OwnerAnswered(["01ACTION"], ["02ACTION"], Means.Telephone, new DateOnly(2026, 3, 2), "the wheel, not the dial"),
        new JobEvent.TrayChecked(41, ["click-spring"]),
        new JobEvent.FindingNoted("01ACTION", "balance-pivots", "balance", "bent", Weight.StopsTheWork, Sureness.Inferred),
        new JobEvent.DeviationNoted(Deviation.SoakLong, Step, "540 s against 480 s", "the telephone"),
        new JobEvent.TakenBack(12),
        new JobEvent.DrynessSeen(Step, ["fork-horns", "hairspring"], true),
    ];

    private static readonly BenchEvent[] Benches =
    [
        new BenchEvent.Begun("Quay Lane"),
        new BenchEvent.SignedIn("IV"),
        new BenchEvent.SignedOut("IV"),
        new BenchEvent.JarFilled("J2", "cleaner"),
        new BenchEvent.BatchTaken("light-oil", "L-2207", new DateOnly(2026, 1, 2), new DateOnly(2028, 1, 2)),
        new BenchEvent.BottleNoted("light-oil", "L-2311", new DateOnly(2026, 2, 3), null),
        new BenchEvent.BottleDone("light-oil", "L-2207"),
        new BenchEvent.InstrumentTaken("mm", "micrometer"),
        new BenchEvent.TemperatureRead(23.5m),
        new BenchEvent.ClockBegun("01JOB", Step, "J2"),
        new BenchEvent.ClockEnded("01JOB", Step),
        new BenchEvent.ClockFault(new DateTimeOffset(2026, 3, 29, 1, 59, 0, TimeSpan.FromHours(1)), new DateTimeOffset(2026, 3, 29, 3, 0, 0, TimeSpan.FromHours(2)), TimeSpan.FromSeconds(-61)),
        new BenchEvent.CarriedForward(["IV"], [new JarRecord("J2", "cleaner", new DateTimeOffset(2026, 3, 2, 9, 0, 0, TimeSpan.Zero), 3)], [new BenchEvent.BatchTaken("light-oil", "L-2207", null, null)], [new BenchEvent.ClockBegun("01JOB", Step, "")])
        {
            Bottles = [new BenchEvent.BottleNoted("light-oil", "L-2311", new DateOnly(2026, 2, 3), null)],
            Instruments = [new BenchEvent.InstrumentTaken("mm", "micrometer")],
            Temperature = new TemperatureRecord(23.5m, new DateTimeOffset(2026, 3, 2, 9, 0, 0, TimeSpan.Zero)),
        },
    ];

    private static string Folder([CallerFilePath] string file = "") => Path.Combine(Path.GetDirectoryName(file)!, "pinned");

    private static string KindOf(string json) => JsonDocument.Parse(json).RootElement.GetProperty("kind").GetString()!;

    private static string Written<T>(T e, Action<Utf8JsonWriter, T> write)
    {
        using MemoryStream stream = new();
        using (Utf8JsonWriter w = new(stream, new JsonWriterOptions { Indented = true })) write(w, e);
        return System.Text.Encoding.UTF8.GetString(stream.ToArray());
    }

    private static void Pinned(string json) => Snapshot.Compare(json, Path.Combine(Folder(), KindOf(json) + ".verified.txt"), Path.Combine(Folder(), KindOf(json) + ".received.txt"));

    [Fact]
    public void Every_job_event_is_written_as_pinned()
    {
        foreach (JobEvent e in Jobs) Pinned(Written(e, JobEventShapes.Write));
    }

    [Fact]
    public void Every_bench_event_is_written_as_pinned()
    {
        foreach (BenchEvent e in Benches) Pinned(Written(e, BenchEventShapes.Write));
    }

    [Fact]
    public void Every_pinned_shape_is_read_back_to_the_same_event()
    {
        foreach (JobEvent e in Jobs) Assert.Equivalent(e, JobEventShapes.Read(Read(Written(e, JobEventShapes.Write))), strict: true);
        foreach (BenchEvent e in Benches) Assert.Equivalent(e, BenchEventShapes.Read(Read(Written(e, BenchEventShapes.Write))), strict: true);
    }

    [Fact]
    public void Every_file_of_pinned_shapes_is_still_read()
    {
        string[] files = Directory.GetFiles(Folder(), "*.verified.txt");
        Assert.True(files.Length >= Jobs.Length + Benches.Length);
        foreach (string file in files)
        {
            JsonElement e = Read(File.ReadAllText(file));
            bool bench = Benches.Any(b => KindOf(Written(b, BenchEventShapes.Write)).Split('.')[0] == e.GetProperty("kind").GetString()!.Split('.')[0]);
            Assert.NotNull(bench ? BenchEventShapes.Read(e) : JobEventShapes.Read(e));
        }
    }

    [Fact]
    public void A_price_from_before_currencies_were_written_down_has_none_that_is_known_and_is_written_as_it_was()
    {
        string first = File.ReadAllText(Path.Combine(Folder(), "finding-priced.1.verified.txt"));
        JobEvent.FindingPriced priced = Assert.IsType<JobEvent.FindingPriced>(JobEventShapes.Read(Read(first)));
        Assert.Equal((null, 120.50m), (priced.Currency, priced.Cost!.Value.Value));
        Assert.Equal(first.TrimEnd(), Written(priced, JobEventShapes.Write).TrimEnd());
    }

    [Fact]
    public void A_measure_without_an_instrument_is_read_and_written_as_before_there_were_any()
    {
        string first = File.ReadAllText(Path.Combine(Folder(), "measured.1.verified.txt"));
        JobEvent.Measured measured = Assert.IsType<JobEvent.Measured>(JobEventShapes.Read(Read(first)));
        Assert.Equal("", measured.Instrument);
        Assert.Equal(first.TrimEnd(), Written(measured, JobEventShapes.Write).TrimEnd());
    }

    [Fact]
    public void What_was_carried_forward_before_there_were_instruments_names_none()
    {
        foreach (string kind in new[] { "carried-forward.1", "carried-forward.2" })
            Assert.Empty(Assert.IsType<BenchEvent.CarriedForward>(BenchEventShapes.Read(Read(File.ReadAllText(Path.Combine(Folder(), kind + ".verified.txt"))))).Instruments);
    }

    [Fact]
    public void No_kind_of_event_is_without_its_pin()
    {
        Assert.Equal(Kinds<JobEvent>(), Jobs.Select(e => e.GetType().Name).Order());
        Assert.Equal(Kinds<BenchEvent>(), Benches.Select(e => e.GetType().Name).Order());
    }

    [Fact]
    public void A_kind_from_the_future_is_named() =>
        Assert.Equal("teleported.1", Assert.Throws<UnknownEventException>(() => JobEventShapes.Read(Read("""{"kind":"teleported.1"}"""))).Kind);

    [Theory]
    [InlineData("on")]
    [InlineData("tried")]
    [InlineData("tray")]
    [InlineData("aside")]
    [InlineData("out")]
    [InlineData("lost")]
    [InlineData("replaced")]
    public void Every_place_of_a_part_comes_back(string word)
    {
        JobEvent moved = JobEventShapes.Read(Read($$"""{"kind":"part.1","part":"balance","to":"{{word}}","detail":"x"}"""));
        Assert.Contains($"\"to\": \"{word}\"", Written(moved, JobEventShapes.Write));
    }

    private static JsonElement Read(string json) => JsonDocument.Parse(json).RootElement;

    private static IEnumerable<string> Kinds<T>() => typeof(T).GetNestedTypes(BindingFlags.Public).Where(t => t.IsSubclassOf(typeof(T))).Select(t => t.Name).Order();
}
