using ServiceRunner.Core.Benches;
using ServiceRunner.Core.Jobs;
using ServiceRunner.Core.Workshops;
using ServiceRunner.Files.Sentences;
using ServiceRunner.Screens.Pick;

namespace ServiceRunner.Screens.Run;

public sealed partial class RunModel
{
    private string UnitAtHand => AskAtHand is Ask.Measure measure ? measure.Facet.Unit : "";

    private List<Instrument> InstrumentsAtHand => [.. Session.Workshop.Instruments.Where(i => i.Measures(UnitAtHand))];

    private ScreenAction InstrumentAction => new(["n"], "another instrument", "Says with which instrument this is measured; the bench remembers it for the unit.",
        () => Unless(InstrumentsAtHand.Count > 0, "Nothing is measured here that the workshop file has an instrument for."), ChooseInstrument, InstrumentsAtHand.Count > 0 ? 2 : 60);

    private void ChooseInstrument()
    {
        string unit = UnitAtHand;
        Shell.Choose($"With which instrument, in {unit}?",
        [
            .. InstrumentsAtHand.Select(i => new Choice(i.Name, i.Checked is { } day ? $"last checked {Days.Short(day, Session.Now.Day)}" : "", () => Take(unit, i.Id, $"In {unit} with {i.Name}."))),
            new Choice("With none of these", "no instrument is written down", () => Take(unit, "", $"In {unit} with no instrument that is named.")),
        ]);
    }

    private void Take(string unit, string instrument, string done) => Shell.Tell(Session.Act(new BenchAction.TakeInstrument(unit, instrument)), Job.Plan, done);
}
