using System.Globalization;
using ServiceRunner.Core.Jobs;
using ServiceRunner.Core.Procedures;
using ServiceRunner.Core.Workshops;

namespace ServiceRunner.Files.Sentences;

/// <summary>What there is to say of a part: where it is, what was done to it, what moves it next, what became of it.</summary>
public static class PartWords
{
    /// <summary>A standing, as the legend of the tray has it.</summary>
    public static string Of(PartStanding standing) => standing switch
    {
        PartStanding.NotYetOff => "on the movement",
        PartStanding.There => "there",
        PartStanding.InBasket => "in a basket",
        PartStanding.Wet => "wet",
        PartStanding.InRepair => "in a repair",
        PartStanding.TriedDry => "tried dry",
        PartStanding.Fitted => "fitted",
        PartStanding.SetAside => "set aside",
        PartStanding.SentOut => "sent out",
        PartStanding.Lost => "lost",
        _ => "replaced",
    };

    /// <summary>Where a part is now, with what it is in.</summary>
    public static string Where(Job job, Plan plan, Workshop workshop, string part)
    {
        string place = JobWords.Of(job.PlaceOf(part));
        if (job.SoakOf(part) is { } soak) place = $"in a basket: {JobWords.Clock(soak.Begun, workshop)}";
        if (Repair.OpenOn(job, plan, part) is { } repair) place += $", in '{repair.Title}', {Times.Count(repair.Left, "step")} left";
        return place;
    }

    /// <summary>Where a finding is: the part by its name, or the place in words.</summary>
    public static string Spot(JobEvent.FindingNoted finding, Plan plan, bool capital = true) =>
        finding.Part.Length > 0 && finding.Part == finding.Spot && plan.Part(finding.Part) is { } part ? part.Name : AskWords.Spoken(finding.Spot, capital);

    /// <summary>Jewels counted.</summary>
    public static string Jewels(Job job, Plan plan) => PartsLedger.Jewels(job, plan) switch
    {
        (0, _) => "",
        (var total, 0) => $"{Times.Count(total, "jewel")}, all accounted for",
        var (total, missing) => $"{Times.Count(total, "jewel")}, {missing} not accounted for",
    };

    /// <summary>How many parts go in, and how many are left out, in a few words; empty for a clock without parts.</summary>
    public static string Count(Offer.Begin offer) => offer.Basket switch
    {
        ([], []) => "",
        var (inside, left) => $"{Times.Count(inside.Count, "part")}{(left.Count > 0 ? string.Create(CultureInfo.InvariantCulture, $" without {left.Count}") : "")}",
    };

    /// <summary>Parts by name where they are few; else how many, and by their compartments.</summary>
    public static string Together(Job job, Plan plan, IReadOnlyList<string> parts)
    {
        if (parts.Count <= 6) return string.Join(", ", parts.Select(plan.NameOf));
        List<Compartment> places = [.. parts.Select(p => Compartment.Home(job, plan, p)).OfType<Compartment>().Where(c => c.Number is not null).Distinct().Order(Compartment.InOrder)];
        List<string> spans = [];
        for (int first = 0, last; first < places.Count; first = last + 1)
        {
            for (last = first; last + 1 < places.Count && places[last + 1] == places[last] with { Number = places[last].Number + 1 };) last++;
            spans.Add($"{Of(places[first])}{(last == first ? "" : $"{(last == first + 1 ? ", " : "–")}{Of(places[last])}")}");
        }
        return $"{Times.Count(parts.Count, "part")}{(spans.Count > 0 ? $": {string.Join(", ", spans)}" : "")}";
    }

    private static string Of(Compartment place) => JobWords.Compartment(string.Create(CultureInfo.InvariantCulture, $"{(place.Tray.Length > 0 ? $"{place.Tray}/" : "")}{place.Row}{place.Number}"));

    /// <summary>Why a part does not go into a basket with the others.</summary>
    public static string LeftOut(Job job, Plan plan, Workshop workshop, PlannedStep planned, string part) =>
        job.SoakOf(part) is { } soak && soak.Begun.Step.Key != planned.Key ? $"in {JobWords.Clock(soak.Begun, workshop)}"
        : job.PlaceOf(part) is PartPlace.Lost or PartPlace.SentOut or PartPlace.SetAside ? JobWords.Of(job.PlaceOf(part))
        : Repair.OpenOn(job, plan, part) is { } repair && repair.Instance != planned.Key.Instance ? "in a repair"
        : "went through with the others";

    /// <summary>What was cleaned, dried and looked over, and what is still expected, in one line.</summary>
    public static string Care(Job job, Plan plan, string part)
    {
        PartCare care = job.CareOf(part);
        List<PlannedStep> clocks = [.. plan.BathsOf(part).Where(s => s.BelongsTo(job) != Belonging.No)];
        PlannedStep? bath = clocks.FirstOrDefault(s => s.Step.Clock is ClockFacet.Bath && !job.WasSettled(s.Key));
        PlannedStep? drying = clocks.FirstOrDefault(s => s.Step.Clock is ClockFacet.Dry && !job.WasSettled(s.Key));
        List<(PlannedStep Step, string Ask, ExamineFacet Facet)> looks = [.. plan.LooksAt(part).Where(l => l.Step.BelongsTo(job) != Belonging.No)];
        bool looked = care.Inspected || looks.Any(l => job.Steps.GetValueOrDefault(l.Step.Key)?.Answered.Contains(l.Ask) == true);
        PlannedStep? look = looks.FirstOrDefault(l => !job.WasSettled(l.Step.Key)).Step;
        return string.Join("; ", new[]
        {
            Done("cleaned", care.Cleaned, bath),
            !care.Cleaned ? "" : care.Wet ? Done("dried", false, drying) : clocks.Any(s => s.Step.Clock is ClockFacet.Dry) ? "dried" : "",
            Done("looked over", looked, look),
        }.Where(w => w.Length > 0));
    }

    private static string Done(string what, bool done, PlannedStep? expected) =>
        done ? expected is null ? what : $"{what}, and again at '{expected.Step.Do}'" : expected is null ? $"not {what}" : $"to be {what} at '{expected.Step.Do}'";

    /// <summary>The steps that move it next, with what they do to it.</summary>
    public static IEnumerable<string> Next(Job job, Plan plan, string part) =>
        plan.InForce(job).Where(s => !job.IsSettled(s.Key)).Select(s => (Moves: Moves(s.Step, part), s.Step.Do)).Where(s => s.Moves.Length > 0).Select(s => $"{s.Moves} at '{s.Do}'");

    private static string Moves(Step step, string part) =>
        step.Removes.Any(p => p.Value == part) ? "comes off"
        : step.Fits.Any(p => p.Value == part) ? "is fitted"
        : step.Tries.Any(p => p.Value == part) ? "is tried dry"
        : step.Replaces.Any(p => p.Value == part) ? "is replaced" : "";

    /// <summary>Whether it is the piece that came with the movement.</summary>
    public static string Piece(Job job, string part)
    {
        if (job.Renewals.LastOrDefault(r => r.Event.Part == part) is { } renewed)
            return $"Not the original piece: {Came(renewed.Event)}; the old one is kept for the owner.";
        if (job.PlaceOf(part) is PartPlace.Replaced old) return $"{(old.By.Length > 0 ? $"Replaced by {old.By}" : "Replaced")}; the old one is kept for the owner.";
        return job.AddedParts.Any(a => a.Part == part) ? "The original piece; no procedure names it." : "The original piece.";
    }

    /// <summary>Where a new piece came from.</summary>
    public static string Came(JobEvent.PartRenewed renewed) => $"{JobWords.Of(renewed.Origin)}{(renewed.Detail.Length > 0 ? $", {renewed.Detail}" : "")}";
}
