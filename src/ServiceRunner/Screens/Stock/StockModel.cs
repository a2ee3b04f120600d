using System.Globalization;
using ServiceRunner.Core.Benches;
using ServiceRunner.Core.Jobs;
using ServiceRunner.Core.Lubricants;
using ServiceRunner.Core.Quantities;
using ServiceRunner.Core.Workshops;
using ServiceRunner.Files.Sentences;
using ServiceRunner.Screens.Oiling;
using ServiceRunner.Screens.Pick;
using ServiceRunner.Session;

namespace ServiceRunner.Screens.Stock;

/// <summary>A line of the stock: a lubricant, or one of its bottles.</summary>
public sealed record StockLine(Lubricant Lubricant, Bottle? Bottle);

/// <summary>The lubricants of the shelf with their bottles: which is in use, when it was opened, until when it is good.</summary>
public sealed class StockModel(Shell shell) : ScreenModel(shell)
{
    /// <inheritdoc/>
    public override string Name => "Stock";

    /// <inheritdoc/>
    public override string Head => $"{Shell.Session.Workshop.Name}: stock of lubricants";

    /// <summary>Each lubricant, and under it its bottles, the one in use first.</summary>
    public IReadOnlyList<StockLine> Rows => [.. Shell.Session.Workshop.Lubricants.SelectMany(l =>
        Shell.Session.Bench.BottlesOf(l.Id).Select(b => new StockLine(l, b)).Prepend(new StockLine(l, null)))];

    /// <summary>Which line is marked.</summary>
    public int At { get; private set; }

    /// <summary>The temperature in °C that viscosities are held against, and whether it was read today.</summary>
    public (decimal? Celsius, bool ReadToday) Temperature => Shell.Session.Bench.CelsiusOn(Shell.Session.Now.Wall) is { } today
        ? (today, true) : (Shell.Session.Workshop.Room?.Celsius, false);

    private StockLine? Marked => Rows is { Count: > 0 } lines ? lines[Math.Clamp(At, 0, lines.Count - 1)] : null;

    private Bottle? MarkedBottle => Marked?.Bottle;

    private string Writes => Shell.Session.ReadsOnly ? "This is opened to read only." : "";

    private string NeedsBottle => Writes.Length > 0 ? Writes : MarkedBottle is null ? "Mark a bottle first." : "";

    /// <inheritdoc/>
    public override IReadOnlyList<ScreenAction> Actions =>
    [
        new(["Enter"], "take into use", "Takes the marked bottle into use; the one before stays on the shelf.",
            () => NeedsBottle.Length > 0 ? NeedsBottle : Shell.Session.Bench.IsInUse(MarkedBottle!) ? "It is in use already." : "", TakeMarked, 1),
        ScreenAction.Always("Down", "", "Marks the next line.", () => At = Math.Max(0, Math.Min(Rows.Count - 1, At + 1)), 100),
        ScreenAction.Always("Up", "", "Marks the line before.", () => At = Math.Max(0, At - 1), 100),
        new(["n"], "new bottle", "Writes down another bottle of the marked lubricant: its batch and dates.",
            () => Writes.Length > 0 ? Writes : Marked is null ? "The workshop file names no lubricants." : "", NewBottle, 2),
        new(["d"], "dates", "Puts the dates of the marked bottle right.", () => NeedsBottle, PutDatesRight, 3),
        new(["x"], "strike off", "Strikes off the marked bottle: empty, or thrown away.", () => NeedsBottle, StrikeOff, 4),
        new(["t"], "temperature", "Writes down the temperature at the bench today; viscosities are held against it.", () => Writes, ReadTemperature, 5),
        ScreenAction.Always("Esc", "back", "Returns to the screen before.", () => Shell.GoBack(), 6),
    ];

    private string Act(BenchAction action, string done)
    {
        ActOutcome outcome = Shell.Session.Act(action);
        if (!outcome.IsDone) return outcome.Sentence(new Plan([]), Shell.Session.Folder.Path);
        Shell.Say(done);
        return "";
    }

    private void Tell(BenchAction action, string done)
    {
        if (Act(action, done) is { Length: > 0 } no) Shell.Say(no, refusal: true);
    }

    private void TakeMarked()
    {
        (Lubricant lubricant, Bottle bottle) = (Marked!.Lubricant, MarkedBottle!);
        Tell(new BenchAction.TakeBatch(bottle.Lubricant, bottle.Batch, bottle.OpenedOn, bottle.GoodUntil), $"In use: {lubricant.Name}, {bottle.Batch}.");
        At = Math.Max(0, Rows.ToList().FindIndex(l => l.Bottle is { } b && b.Lubricant == bottle.Lubricant && b.Batch == bottle.Batch));
    }

    private void NewBottle()
    {
        Lubricant lubricant = Marked!.Lubricant;
        BottleEntry.Ask(Shell, lubricant, null, bottle =>
        {
            if (Shell.Session.Bench.FindBottle(bottle.Lubricant, bottle.Batch) is not null) return $"Bottle {bottle.Batch} of {lubricant.Name} is on the shelf already; d puts its dates right.";
            // The first bottle of a lubricant is the one in use; another one is noted until somebody takes it.
            if (Shell.Session.Bench.BottlesOf(lubricant.Id).Count == 0)
                return Act(new BenchAction.TakeBatch(bottle.Lubricant, bottle.Batch, bottle.OpenedOn, bottle.GoodUntil), $"In use: {lubricant.Name}, {bottle.Batch}.");
            return Act(new BenchAction.NoteBottle(bottle.Lubricant, bottle.Batch, bottle.OpenedOn, bottle.GoodUntil), $"On the shelf: {lubricant.Name}, {bottle.Batch}. Enter on its line takes it into use.");
        });
    }

    private void PutDatesRight()
    {
        Lubricant lubricant = Marked!.Lubricant;
        BottleEntry.Ask(Shell, lubricant, MarkedBottle, bottle =>
            Act(new BenchAction.NoteBottle(bottle.Lubricant, bottle.Batch, bottle.OpenedOn, bottle.GoodUntil), $"{lubricant.Name}, {bottle.Batch}: {OilWords.Dates(bottle, lubricant)}."));
    }

    private void StrikeOff()
    {
        (Lubricant lubricant, Bottle bottle) = (Marked!.Lubricant, MarkedBottle!);
        Shell.Choose($"Strike off {lubricant.Name}, {bottle.Batch}?",
        [
            new Choice("Leave it on the shelf", "", () => { }),
            new Choice("Strike it off", "it is empty, or thrown away", () => Tell(new BenchAction.FinishBottle(bottle.Lubricant, bottle.Batch), $"Struck off: {lubricant.Name}, {bottle.Batch}.")),
        ]);
    }

    private void ReadTemperature() => Shell.Ask(new Prompt("Temperature at the bench today, in °C?", "As 21 or 21.5.", "", text =>
    {
        string typed = text.Trim().TrimEnd('C', '°').Trim();
        if (TypedNumber.Read(typed, out TypedNumber celsius) != TypedNumber.Fault.None) return $"'{text.Trim()}' is not a temperature; type 21 or 21.5.";
        return Act(new BenchAction.ReadTemperature(celsius.Value), string.Create(CultureInfo.InvariantCulture, $"{celsius.Value} °C at the bench today."));
    }));

    /// <inheritdoc/>
    public override void Draw(Sheet sheet, int top, int rows) => StockPage.Draw(sheet, top, rows, this, Shell);
}
