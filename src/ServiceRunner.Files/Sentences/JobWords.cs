using ServiceRunner.Core.Jobs;
using ServiceRunner.Core.Procedures;
using ServiceRunner.Core.Quantities;
using ServiceRunner.Core.Workshops;

namespace ServiceRunner.Files.Sentences;

/// <summary>What a job's states, places and roles are called at the bench.</summary>
public static class JobWords
{
    /// <summary>A phase as a repairer says it.</summary>
    public static string Of(Phase phase) => phase switch
    {
        Phase.Idle => "booked in",
        Phase.Running => "on the bench",
        Phase.Paused => "interrupted",
        Phase.Held { For: HoldFor.Owner } => "waiting for the owner",
        Phase.Held { For: HoldFor.Part } => "waiting for a part",
        Phase.Held { For: HoldFor.Day } => "waiting for a day",
        Phase.Held => "waiting",
        Phase.Stopped => "returned unrepaired",
        Phase.Aborted => "broken off",
        Phase.Complete { WithOwed: true } => "closed, not finished",
        Phase.Complete => "ready",
        _ => throw new InvalidOperationException($"no words for {phase.GetType().Name}"),
    };

    /// <summary>Where a part is.</summary>
    public static string Of(PartPlace place) => place switch
    {
        PartPlace.OnMovement => "on the movement",
        PartPlace.TriedDry => "tried dry, on the movement",
        PartPlace.InTray { Compartment: "" } => "in the tray",
        PartPlace.InTray x => $"in {x.Compartment}",
        PartPlace.SetAside x => x.Why.Length == 0 ? "set aside" : $"set aside: {x.Why}",
        PartPlace.SentOut x => x.To.Length == 0 ? "sent out" : $"sent out to {x.To}",
        PartPlace.Lost => "lost",
        PartPlace.Replaced x => x.By.Length == 0 ? "replaced, the old one kept" : $"replaced by {x.By}, the old one kept",
        _ => throw new InvalidOperationException($"no words for {place.GetType().Name}"),
    };

    /// <summary>A lubricant's role.</summary>
    public static string Role(string role) => role switch
    {
        "fast-pivot" => "fast pivot",
        "slow-pivot" => "slow pivot",
        "barrel-wall" => "barrel wall",
        OilingPoint.Never => "stays dry",
        _ => role,
    };

    /// <summary>What a lubricant of the shelf is called; the role where the shelf has none.</summary>
    public static string Lubricant(Workshop workshop, string id) =>
        workshop.Lubricants.FirstOrDefault(l => l.Id.Value == id)?.Name ?? $"lubricant for {Role(id)}";

    /// <summary>What a jar is called.</summary>
    public static string Jar(Workshop workshop, string id) => workshop.Jars.FirstOrDefault(j => j.Id.Value == id)?.Name ?? id;

    /// <summary>What a clock is of, in two or three words.</summary>
    public static string Clock(JobEvent.SoakBegun soak, Workshop workshop) => soak.Kind switch
    {
        SoakKind.Bath => soak.Jar.Length > 0 ? Jar(workshop, soak.Jar) : soak.Solution,
        SoakKind.Spin => "spin-off",
        SoakKind.Dry => $"drying, {soak.Solution}",
        _ => soak.Solution.Length > 0 ? soak.Solution : "wait",
    };

    /// <summary>Where a clock stands in its window: said in words because not every screen has colour.</summary>
    public static string Of(Standing standing, Window window, TimeSpan length) => standing switch
    {
        Standing.Under => $"under its least, {Times.Clock(window.Least - length)} more",
        Standing.Within => $"may come out; aim in {Times.Clock(window.Aim - length)}",
        Standing.AtAim => window.Most is { } most ? $"ready; most in {Times.Clock(most - length)}" : "ready",
        Standing.Over => $"over its most by {Times.Clock(length - window.Most!.Value)}",
        _ => throw new InvalidOperationException("no words for a standing"),
    };

    /// <summary>A kind of deviation.</summary>
    public static string DeviationKind(string kind) => kind switch
    {
        Deviation.Skipped => "passed over",
        Deviation.OutOfOrder => "out of order",
        Deviation.SoakShort => "soak too short",
        Deviation.SoakLong => "soak too long",
        Deviation.PointOtherLubricant => "another lubricant",
        Deviation.PointLeft => "point not served",
        Deviation.MeasureOutside => "outside its limits",
        Deviation.MeasureLeft => "not measured",
        Deviation.ConfirmLeft => "not answered",
        Deviation.PartNotAsWritten => "part not as written",
        Deviation.PowerOn => "with the power on",
        Deviation.ClosedWithOwed => "closed with something owed",
        Deviation.ByOtherMeans => "done in another way",
        _ => kind,
    };

    /// <summary>A weight.</summary>
    public static string Of(Weight weight) => weight switch { Weight.Note => "note", Weight.Service => "service", _ => "stops the work" };
}
