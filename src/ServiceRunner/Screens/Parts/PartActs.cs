using System.Globalization;
using ServiceRunner.Core.Jobs;
using ServiceRunner.Core.Procedures;
using ServiceRunner.Files.Sentences;
using ServiceRunner.Screens.Findings;
using ServiceRunner.Screens.Pick;
using ServiceRunner.Session;

namespace ServiceRunner.Screens.Parts;

/// <summary>What can be done with one part by itself, from any screen of its _job.</summary>
internal sealed class PartActs(Shell shell, JobScreen screen)
{
    private readonly OpenJob _job = screen.Job;

    /// <summary>Asks for a part, then what became of it.</summary>
    public void OpenOne() => shell.Choose("Which part?", [.. _job.Plan.Parts.Select(p => new Choice(p.Name, PartWords.Where(_job.State, _job.Plan, shell.Session.Workshop, p.Id), () => Open(p.Id)))]);

    /// <summary>Asks what became of a part.</summary>
    public void Open(string part) => shell.Choose($"{Name(part)}: what of it?", [.. Places(part), .. Care(part), new Choice("A finding on it", "", () => NewFinding.Ask(shell, screen, part))]);

    private string Name(string part) => _job.Plan.NameOf(part);

    private IEnumerable<Choice> Places(string part)
    {
        PartPlace now = _job.State.PlaceOf(part);
        PartPlace.InTray tray = new(Compartment.Named(_job.State, _job.Plan, part));
        string where = tray.Compartment.Length > 0 ? JobWords.Compartment(tray.Compartment) : "";
        yield return new Choice(now is PartPlace.Lost ? "Found again: it lies in the tray" : "It lies in the tray", where, () => Move(part, tray));
        yield return new Choice("It is on the movement, for good", "", () => Move(part, new PartPlace.OnMovement()));
        yield return new Choice("It is on the movement, tried dry", "", () => Move(part, new PartPlace.TriedDry()));
        yield return new Choice("Set aside", "with why", () => shell.Ask(Prompt.Because($"Why is it set aside: {Name(part)}?", "As: to be looked at under the strong lens.", why => Moved(part, new PartPlace.SetAside(why)))));
        yield return new Choice("Sent out", "and to whom", () => shell.Ask(Prompt.Words($"To whom is it sent: {Name(part)}?", "As: the wheel cutter.", to => Moved(part, new PartPlace.SentOut(to)))));
        if (now is not PartPlace.Lost) yield return new Choice("Lost", "", () => Move(part, new PartPlace.Lost()));
        yield return new Choice("Another piece takes its place", "the old one is kept for the owner", () => AskOrigin(part));
    }

    private void Move(string part, PartPlace to) => screen.Act(new JobAction.MovePart(part, to), $"{Name(part)}: {JobWords.Of(to)}.");

    private string Moved(string part, PartPlace to) => screen.Answer(new JobAction.MovePart(part, to), $"{Name(part)}: {JobWords.Of(to)}.");

    private IEnumerable<Choice> Care(string part)
    {
        if (PartsLedger.LeftOutOf(_job.State, _job.Plan, part) is { Count: > 0 } missed)
        {
            string baths = Times.List(missed.Select(s => $"'{_job.Plan.Find(s.Key)?.Step.Do ?? s.Step}'"));
            yield return new Choice("Wash it now, by itself", $"takes up again {baths}", () => screen.Act(new JobAction.WashAgain(part), $"{Name(part)} goes by itself through {baths}."));
        }
        PartCare care = _job.State.CareOf(part);
        if (!care.Cleaned) yield return Tend(part, Tending.Cleaned);
        if (care.Wet) yield return Tend(part, Tending.Dried);
        if (!care.Inspected) yield return Tend(part, Tending.Inspected);
    }

    private Choice Tend(string part, Tending what) =>
        new($"{Capital(JobWords.Of(what))} by itself", "", () => screen.Act(new JobAction.TendPart(part, what), $"{Name(part)}: {JobWords.Of(what)} by itself."));

    private static string Capital(string text) => char.ToUpperInvariant(text[0]) + text[1..];

    private void AskOrigin(string part) => shell.Choose($"Where does the new piece come from: {Name(part)}?", [.. new[] { Origin.Supplied, Origin.MadeNew, Origin.OldStock }.Select(origin =>
        new Choice(Capital(JobWords.Of(origin)), "", () => shell.Ask(new Prompt($"What is the new piece: {Name(part)}?", "As: eight leaves, from the material house. May be left empty.", "", words =>
            screen.Answer(new JobAction.RenewPart(part, origin, words), $"{Name(part)}: another piece, {JobWords.Of(origin)}. The old one is kept for the owner.")))))]);

    /// <summary>Asks for a part that no procedure names.</summary>
    public void Add() => shell.Ask(Prompt.Words("What is the part called?", "As: shim under the balance cock.", name =>
        shell.AskNext(new Prompt($"In which compartment does it lie: {name}?", "As: A17. Left empty: it is still on the movement.", "", compartment =>
            shell.AskNext(Number($"How many of them: {name}?", "Alike pieces that lie together.", "1", 1, count =>
                shell.AskNext(Number($"How many jewels does it carry: {name}?", "All its pieces together.", "0", 0, jewels =>
                    screen.Answer(new JobAction.AddPart(name, compartment, count, jewels), $"Added: {name}{(compartment.Trim().Length > 0 ? $", in {JobWords.Compartment(compartment.Trim())}" : ", still on the movement")}.")))))))));

    private static Prompt Number(string label, string hint, string start, int least, Func<int, string> accept) => new(label, hint, start, text =>
        int.TryParse(text.Trim(), NumberStyles.None, CultureInfo.InvariantCulture, out int number) && number >= least && number <= 999
            ? accept(number) : string.Create(CultureInfo.InvariantCulture, $"'{text.Trim()}' is not a number from {least} to 999."));
}
