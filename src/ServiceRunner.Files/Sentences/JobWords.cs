using System.Globalization;
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
        PartPlace.InTray x => $"in {Compartment(x.Compartment)}",
        PartPlace.SetAside x => x.Why.Length == 0 ? "set aside" : $"set aside: {x.Why}",
        PartPlace.SentOut x => x.To.Length == 0 ? "sent out" : $"sent out to {x.To}",
        PartPlace.Lost => "lost",
        PartPlace.Replaced x => x.By.Length == 0 ? "replaced, the old one kept" : $"replaced by {x.By}, the old one kept",
        _ => throw new InvalidOperationException($"no words for {place.GetType().Name}"),
    };

    /// <summary>A compartment; that of a repair lies in a tray of its own.</summary>
    public static string Compartment(string compartment) =>
        ApartId.Split(compartment) is { Instance.Length: > 0 } apart ? $"{apart.Id} of tray {apart.Instance}" : compartment;

    /// <summary>Where a new piece comes from.</summary>
    public static string Of(Origin origin) => origin switch
    {
        Origin.Supplied => "supplied",
        Origin.MadeNew => "made new",
        Origin.OldStock => "from an old movement",
        _ => "another piece, from where was not said",
    };

    /// <summary>What becomes of a finding.</summary>
    public static string Of(Verdict verdict) => verdict switch
    {
        Verdict.Accept => "stays as it is",
        Verdict.RepairHere => "to be mended here",
        Verdict.Replace => "to be replaced",
        Verdict.SendOut => "to be sent out",
        _ => "the owner is asked",
    };

    /// <summary>What was done to a part by itself.</summary>
    public static string Of(Tending what) => what switch { Tending.Cleaned => "cleaned", Tending.Dried => "dried", _ => "looked over" };

    /// <summary>How an answer came.</summary>
    public static string Of(Means means) => means switch { Means.InPerson => "in person", Means.Telephone => "by telephone", Means.Writing => "in writing", _ => "in another way" };

    /// <summary>How sure a finding is.</summary>
    public static string Of(Sureness sure) => sure switch { Sureness.Seen => "seen", Sureness.Inferred => "inferred", _ => "not known" };

    /// <summary>Where a finding stands.</summary>
    public static string Of(FindingEntry finding) => finding.Standing switch
    {
        FindingStanding.Undecided => "to be decided",
        FindingStanding.WaitsForOwner => "waits for the owner's word",
        FindingStanding.ToBeMended => Of(finding.Fate.Verdict ?? Verdict.RepairHere),
        FindingStanding.InRepair => Times.List(finding.Repairs.Where(r => !r.IsFinished).Select(r => $"in repair, {Times.Count(r.Left, "step")} left")),
        FindingStanding.SentOut => finding.Fate.Detail.Length > 0 ? $"sent out to {finding.Fate.Detail}" : "sent out",
        _ => finding.Fate switch
        {
            { Settled: { Length: > 0 } how } => how,
            { Agreed: false } => "left as it is, the owner declined",
            { Verdict: Verdict.Accept } => finding.Fate.Detail.Length > 0 ? $"stays as it is: {finding.Fate.Detail}" : "stays as it is",
            _ when finding.Repairs.Any(r => r.IsFinished && !r.IsGivenUp) => "mended",
            _ when finding.Renewed => "replaced",
            _ => "noted",
        },
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
        Standing.Over => $"{Times.Clock(length - window.Most!.Value)} past its longest",
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
        Deviation.PointOtherViscosity => "viscosity outside the role",
        Deviation.LubricantPastDate => "bottle past its date",
        Deviation.PointLeft => "point not served",
        Deviation.MeasureOutside => "outside its limits",
        Deviation.MeasureLeft => "not measured",
        Deviation.ConfirmLeft => "not answered",
        Deviation.PartNotAsWritten => "part not as written",
        Deviation.PartNotReady => "part not ready",
        Deviation.PowerOn => "with the power on",
        Deviation.RepairOpen => "before its repair was at its end",
        Deviation.OverFinding => "over a finding that stops the work",
        Deviation.WithoutConsent => "without the owner's word",
        Deviation.WitnessLeft => "no second person looked",
        Deviation.ClosedWithOwed => "closed with something owed",
        Deviation.ByOtherMeans => "done in another way",
        _ => kind,
    };

    /// <summary>What a deviation was in detail. Two lengths are stored in seconds, to be exact, and read as on the clocks.</summary>
    public static string DeviationDetail(JobEvent.DeviationNoted deviation) =>
        deviation.Kind is Deviation.SoakShort or Deviation.SoakLong && deviation.Detail.Split(' ') is [var was, "s", "against", var limit, "s"]
        && int.TryParse(was, NumberStyles.None, CultureInfo.InvariantCulture, out int ran) && int.TryParse(limit, NumberStyles.None, CultureInfo.InvariantCulture, out int bound)
            ? $"{Times.Clock(TimeSpan.FromSeconds(ran))} against {Times.Clock(TimeSpan.FromSeconds(bound))}"
            : deviation.Detail;

    /// <summary>A rate with what was taken with it.</summary>
    public static string Rate(JobEvent.RateTaken rate) =>
        $"{rate.Rate} s/d{(rate.Amplitude is { } a ? $", {a}°" : "")}{(rate.BeatError is { } b ? $", {b} ms" : "")}";

    /// <summary>A weight.</summary>
    public static string Of(Weight weight) => weight switch { Weight.Note => "note", Weight.Service => "service", _ => "stops the work" };
}
