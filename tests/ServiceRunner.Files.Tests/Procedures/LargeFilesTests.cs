using System.Diagnostics;
using ServiceRunner.Files.Checks;
using ServiceRunner.Files.Procedures;

namespace ServiceRunner.Files.Tests.Procedures;

/// <summary>Texts at the limit of their size, made so that a careless check would take minutes or all the memory.</summary>
public class LargeFilesTests
{
    private const string Head = "procedure: large\nformat: 1\ntitle: Large\nrevision: 1\n";
    private static readonly TimeSpan Long = TimeSpan.FromSeconds(10);

    public static TheoryData<string> Names => [.. Texts.Keys];

    private static Dictionary<string, Func<string>> Texts { get; } = new()
    {
        ["unknown steps"] = () => Steps(Many(20_000, i => $"{{step: s{i}, do: D, after: t{i}}}")),
        ["a step that waits for all"] = () => Steps(Many(20_000, i => $"{{step: s{i}, do: D}}") + ", {step: last, do: D, after: [" + Many(20_000, i => $"s{i}") + "]}"),
        ["a chain of steps"] = () => Steps(Many(20_000, i => $"{{step: s{i}, do: D, after: s{i + 1}}}")),
        ["a large group, often"] = () => "parts: [" + Many(5_000, i => $"{{part: p{i}, name: P}}") + "]\ngroups: {all: [" + Many(5_000, i => $"p{i}") + "]}\n" + Steps(Many(20_000, i => $"{{step: s{i}, do: D, fits: all}}")),
        ["parts under each other"] = () => "parts: [" + Many(20_000, i => $"{{part: p{i}, name: P, under: p{(i + 1) % 20_000}}}") + "]\n" + Steps("{step: a, do: A}"),
        ["one part, off and on"] = () => "parts: [{part: a, name: A, under: b}, {part: b, name: B}]\n" + Steps(Many(20_000, i => $"{{step: s{i}, do: D, removes: a, fits: b}}")),
        ["many facts"] = () => "asks: {" + Many(20_000, i => $"f{i}: Ask?") + "}\n" + Steps(Many(20_000, i => $"{{step: s{i}, do: D, only-if: f{i}}}")),
        ["one part under many facts"] = () => "asks: {" + Many(2_000, i => $"f{i}: Ask?") + "}\nparts: [{part: a, name: A}]\n" + Steps(Many(2_000, i => $"{{step: s{i}, do: D, fits: a, only-if: f{i}}}")),
        ["many findings"] = () => Steps("{step: a, do: A, examine: {place: p, for: [" + Many(20_000, i => $"c{i}") + "]}, if-found: {" + Many(20_000, i => $"d{i}: x") + "}}"),
        ["many stages"] = () => "stages: [" + Many(15_000, i => $"{{stage: s{i}, title: T, opens-after: s{i + 1}, steps: []}}") + "]\n",
        ["points and parts that nobody mentions"] = () => "parts: [" + Many(10_000, i => $"{{part: p{i}, name: P}}") + "]\noiling-points: [" + Many(10_000, i => $"{{point: o{i}, name: O, role: strike, when: with p{i}}}") + "]\n" + Steps("{step: a, do: A}"),
        ["an only-if of many"] = () => "asks: {f: F?}\n" + Steps(Many(200, i => $"{{step: s{i}, do: D, only-if: [" + Many(200, _ => "f") + "], after: s0}")),
    };

    [Theory]
    [MemberData(nameof(Names))]
    public void A_large_file_is_read_and_checked_in_seconds(string name)
    {
        string text = Head + Texts[name]();
        Stopwatch watch = Stopwatch.StartNew();
        ReadProcedure read = ProcedureReader.Read("large.yaml", text, ProcedureLibrary.Empty);
        ProcedureChecks.Run(read, ProcedureLibrary.Empty);
        Assert.True(watch.Elapsed < Long, $"{name}: {watch.Elapsed}");
        Assert.NotNull(read.Procedure);
    }

    [Fact]
    public void A_procedure_that_grows_beyond_measure_is_refused()
    {
        ReadProcedure read = ProcedureReader.Read("large.yaml", Head + Texts["a large group, often"](), ProcedureLibrary.Empty);
        Assert.Equal(
            "large.yaml:1:12: error too-much: with its groups and the files taken in, the procedure has more than 200,000 steps and mentions of parts\n    Name large groups less often.\n",
            DiagnosticText.Line(Assert.Single(read.Diagnostics)));
    }

    [Fact]
    public void A_large_file_taken_in_many_times_is_refused_in_seconds()
    {
        string inner = Head.Replace("large", "inner", StringComparison.Ordinal) + Steps(Many(10_000, i => $"{{step: s{i}, do: D}}"));
        string outer = Head + Steps(Many(100, i => $"{{take-in: inner, as: a{i}}}"));
        Stopwatch watch = Stopwatch.StartNew();
        ReadProcedure read = ProcedureReader.Read("large.yaml", outer, new ProcedureLibrary(ProcedureSource.Texts([("inner.yaml", inner)])));
        Assert.Contains(read.Diagnostics, d => d.Code == "too-much");
        Assert.True(watch.Elapsed < Long, $"{watch.Elapsed}");
    }

    private static string Steps(string steps) => "stages: [{stage: final, steps: [" + steps + "]}]\n";

    private static string Many(int count, Func<int, string> one) => string.Join(", ", Enumerable.Range(0, count).Select(one));
}
