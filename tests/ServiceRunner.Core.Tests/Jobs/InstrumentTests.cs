using ServiceRunner.Core.Benches;
using ServiceRunner.Core.Jobs;
using ServiceRunner.Core.Workshops;

namespace ServiceRunner.Core.Tests.Jobs;

/// <summary>A measure says with which instrument it was taken, where that is known.</summary>
public class InstrumentTests
{
    private static readonly Instrument Micrometer = new(Sample.P("micrometer"), "Micrometer", Sample.Ps("mm"), new DateOnly(2026, 1, 15)),
        Gauge = new(Sample.P("gauge"), "Dial gauge", Sample.Ps("mm", "µm"), null), Balance = new(Sample.P("scales"), "Scales", Sample.Ps("mg"), null);

    private static string Measured(Dictionary<string, string> used, params Instrument[] there)
    {
        Walk walk = Walk.Begun().To("shake");
        walk.Workshop = walk.Workshop with { Instruments = there };
        foreach ((string unit, string instrument) in used) walk.Instruments[unit] = instrument;
        return walk.Then(new JobAction.Answer(Sample.Step("shake"), "measure:endshake", new AnswerValue.Typed("0.04"))).OfType<JobEvent.Measured>().Single().Instrument;
    }

    [Fact]
    public void The_only_one_for_the_unit_is_taken_as_it_is_and_of_several_none_until_it_is_said()
    {
        Assert.Equal("micrometer", Measured([], Micrometer, Balance));
        Assert.Equal("", Measured([], Micrometer, Gauge));
        Assert.Equal("", Measured([], Balance));
        Assert.Equal("gauge", Measured(new() { ["mm"] = "gauge" }, Micrometer, Gauge));
    }

    [Fact]
    public void Whoever_said_none_measures_with_none_and_one_that_is_gone_is_not_written_down()
    {
        Assert.Equal("", Measured(new() { ["mm"] = "" }, Micrometer));
        Assert.Equal("", Measured(new() { ["mm"] = "old-gauge" }, Micrometer, Gauge));
        Assert.Equal("micrometer", Measured(new() { ["mm"] = "old-gauge" }, Micrometer));
    }

    [Fact]
    public void What_is_felt_has_no_instrument()
    {
        Walk walk = Walk.Begun().To("shake");
        walk.Workshop = walk.Workshop with { Instruments = [Micrometer] };
        Assert.IsType<JobEvent.Felt>(walk.Then(new JobAction.Answer(Sample.Step("shake"), "measure:endshake", new AnswerValue.Chosen("right")))[0]);
    }

    [Fact]
    public void The_bench_remembers_it_for_the_unit_and_carries_it_forward()
    {
        Workshop workshop = Sample.Workshop() with { Instruments = [Micrometer, Gauge] };
        Bench bench = new() { Id = "bench" };
        (IReadOnlyList<BenchEvent> Events, BenchRejection Why) Act(string unit, string instrument) => BenchDecider.Decide(bench, new BenchAction.TakeInstrument(unit, instrument), workshop, Sample.Morning);
        void Then(params IReadOnlyList<BenchEvent> events) => bench = bench.After(new BenchEntry(bench.LastNumber + 1, "id", "AA", Sample.Morning, events));

        Then(Act("mm", "gauge").Events);
        Assert.Equal("gauge", bench.Instruments["mm"]);
        Assert.Empty(Act("mm", "gauge").Events);
        Assert.Equal(BenchRejection.NoSuchInstrument, Act("mm", "scales").Why);
        Assert.Equal(BenchRejection.NoSuchInstrument, Act("mg", "gauge").Why);
        Then(bench.Forward());
        Assert.Equal("gauge", bench.Instruments["mm"]);
        Then(Act("mm", "").Events);
        Assert.Equal("", bench.Instruments["mm"]);
    }
}
