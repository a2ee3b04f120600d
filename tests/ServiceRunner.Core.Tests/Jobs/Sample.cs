using ServiceRunner.Core.Jobs;
using ServiceRunner.Core.Procedures;
using ServiceRunner.Core.Quantities;
using ServiceRunner.Core.Workshops;

namespace ServiceRunner.Core.Tests.Jobs;

/// <summary>A movement of five parts and a workshop of two, small enough to see through in a test.</summary>
internal static class Sample
{
    public static readonly Moment Morning = new(new DateTimeOffset(2026, 3, 2, 9, 0, 0, TimeSpan.FromHours(1)), "boot-1", TimeSpan.FromHours(5));

    public static Placed<string> P(string id) => new(id, default);

    public static IReadOnlyList<Placed<string>> Ps(params string[] ids) => [.. ids.Select(P)];

    private static Part Part(string id, string compartment, string? seat = null, string[]? under = null, bool underPower = false) => new()
    {
        Id = P(id), Name = id, Compartment = compartment, Seat = seat is null ? null : P(seat), Under = Ps(under ?? []), UnderPower = underPower,
    };

    public static Window Minutes(double least, double aim, double most) => new(TimeSpan.FromMinutes(least), TimeSpan.FromMinutes(aim), TimeSpan.FromMinutes(most));

    public static readonly Procedure Procedure = new()
    {
        Id = P("small"),
        Title = "Small movement",
        Revision = "1",
        Asks = [new JobQuestion(P("luminous"), "Is the dial luminous?", ["yes", "no"])],
        Parts =
        [
            Part("plate", "B1") with { Stays = true },
            Part("wheel", "B2", under: ["bridge"], underPower: true),
            Part("bridge", "B3", underPower: true),
            Part("screw", "B4", seat: "bridge"),
            Part("balance", "A1"),
        ],
        OilingPoints =
        [
            new OilingPoint { Id = P("upper"), Name = "Wheel, upper", Role = P("fast-pivot"), Amount = "half the sink", When = new ServingOrder(ServingTime.After, P("wheel")) },
            new OilingPoint { Id = P("lower"), Name = "Wheel, lower", Role = P("slow-pivot"), When = new ServingOrder(ServingTime.After, P("wheel")) },
            new OilingPoint { Id = P("teeth"), Name = "Teeth", Role = P("never"), Why = "they hold dirt" },
        ],
        Stages =
        [
            new Stage(P("dismantling"), "Dismantling", [],
            [
                new Step { Id = P("stop-luminous"), Do = "Stop: no work on luminous dials", OnlyIf = [new Condition(P("luminous"), ["yes"])] },
                new Step { Id = P("let-down"), Do = "Let the mainspring down", Power = new PowerFacet.LetsDown(), Confirm = new ConfirmFacet("Which way does the fork fall?", []) },
                new Step { Id = P("look"), Do = "Look at the balance", Examine = [new ExamineFacet(P("balance"), Ps("free", "jammed"), null), new ExamineFacet(P("pivots"), Ps("sound", "bent"), P("wheel"))], IfFound = [new IfFound("pivots", P("bent"), P("new-pivot"))] },
                new Step { Id = P("balance-off"), Do = "Lift the balance", Removes = Ps("balance") },
                new Step { Id = P("train-off"), Do = "Lift the train", Removes = Ps("screw", "bridge", "wheel"), After = Ps("balance-off") },
            ]),
            new Stage(P("cleaning"), "Cleaning", [P("dismantling")],
            [
                new Step { Id = P("wash"), Do = "Wash", HandsFree = true, Clock = new ClockFacet.Bath(default, Ps("bridge", "wheel", "screw"), Minutes(3, 5, 8), P("cleaner")) },
                new Step { Id = P("balance-rinse"), Do = "Rinse the balance", HandsFree = true, Clock = new ClockFacet.Bath(default, Ps("balance"), Minutes(0.5, 1, 2), P("naphtha")) },
                new Step { Id = P("dry"), Do = "Dry", HandsFree = true, After = Ps("wash"), Clock = new ClockFacet.Dry(default, Ps("bridge", "wheel", "screw"), Minutes(5, 8, 15), P("warm-air"), 45) },
            ]),
            new Stage(P("reassembly"), "Reassembly", [P("cleaning")],
            [
                new Step { Id = P("train-in"), Do = "Fit the train", Fits = Ps("wheel", "bridge", "screw") },
                new Step { Id = P("shake"), Do = "Feel the end shake", Measure = [new MeasureFacet(P("endshake"), "mm", 0.03m, 0.05m, ["right", "none", "excessive"])] },
                new Step { Id = P("oil"), Do = "Oil the train", Oil = Ps("upper", "lower", "teeth"), After = Ps("train-in") },
                new Step { Id = P("balance-in"), Do = "Fit the balance", Fits = Ps("balance") },
                new Step { Id = P("wind"), Do = "Wind", Power = new PowerFacet.Winds(), Count = new CountFacet(P("turns"), "turns", 5, 7) },
                new Step { Id = P("rates"), Do = "Take the rates", Rates = new RatesFacet { Positions = Ps("dial-up", "dial-down"), AfterHours = [1] } },
            ]),
        ],
    };

    /// <summary>A repair of four steps on a part that stands for the one with the fault.</summary>
    public static readonly Procedure Repair = new()
    {
        Id = P("new-pivot"),
        Title = "New pivot",
        Revision = "1",
        Mends = P("pivoted"),
        Asks = [new JobQuestion(P("hard"), "Is the pivot hard?", ["yes", "no"])],
        Parts = [Part("pivoted", "A1") with { Stays = true }, Part("old-pivot", "A2")],
        Stages =
        [
            new Stage(P("work"), "Work", [],
            [
                new Step { Id = P("soften"), Do = "Soften the pivot", OnlyIf = [new Condition(P("hard"), ["yes"])] },
                new Step { Id = P("out"), Do = "Take the old pivot out", Removes = Ps("old-pivot") },
                new Step { Id = P("in"), Do = "Put the new pivot in", Replaces = Ps("old-pivot"), Fits = Ps("old-pivot"), After = Ps("out") },
                new Step { Id = P("true"), Do = "See that it runs true", Examine = [new ExamineFacet(P("run"), Ps("true", "wobbles"), P("pivoted"))], After = Ps("in") },
            ]),
        ],
    };

    public static readonly Plan Plan = new([new Joined("1", Procedure)]);

    public static Workshop Workshop(params string[] reasonsFor) => new()
    {
        Id = P("test"), Name = "Test workshop",
        People = [new Person(P("AA"), "Anna", true), new Person(P("BB"), "Ben", false)],
        Liquids = [new Liquid { Id = P("soap"), Name = "Soap", Solution = P("cleaner") }, new Liquid { Id = P("spirit"), Name = "Spirit", Solution = P("naphtha") }],
        Jars = [new Jar { Id = P("J1"), Name = "Wash jar", Holds = P("soap"), LifeBaskets = 2 }, new Jar { Id = P("J2"), Name = "Second wash jar", Holds = P("soap") }, new Jar { Id = P("J3"), Name = "Rinse jar", Holds = P("spirit") }],
        Lubricants = [new Lubricant { Id = P("light"), Name = "Light oil", Roles = Ps("fast-pivot") }, new Lubricant { Id = P("heavy"), Name = "Heavy oil", Roles = Ps("slow-pivot") }],
        ReasonsFor = Ps(reasonsFor),
    };

    public static StepRef Step(string id, int occurrence = 1) => new("1", id, occurrence);
}
