using System.Collections.Immutable;

namespace ServiceRunner.Core.Jobs;

/// <summary>The part of <see cref="Fold"/> that keeps the ledgers of parts and findings.</summary>
internal static class LedgerFold
{
    public static Job Added(Job job, JobEvent.PartAdded e) => job with
    {
        AddedParts = job.AddedParts.Add(e),
        Parts = e.Compartment.Length == 0 ? job.Parts : job.Parts.SetItem(e.Part, new PartPlace.InTray(e.Compartment)),
    };

    // The new piece is at hand and not on yet; what was done to the old one says nothing of it.
    public static Job Renewed(Job job, JobEvent.PartRenewed e, LogEntry entry) => job with
    {
        Renewals = job.Renewals.Add(new(e, entry.At, entry.By, entry.Number)),
        Parts = job.Parts.SetItem(e.Part, job.PlaceOf(e.Part) as PartPlace.InTray ?? new PartPlace.InTray("")),
        Care = job.Care.Remove(e.Part),
    };

    public static Job Tended(Job job, JobEvent.PartTended e)
    {
        PartCare care = job.CareOf(e.Part);
        return job with
        {
            Care = job.Care.SetItem(e.Part, e.What switch
            {
                Tending.Cleaned => care with { Cleaned = true },
                Tending.Dried => care with { Wet = false },
                _ => care with { Inspected = true },
            }),
        };
    }

    public static Job Soaked(Job job, StepRef step)
    {
        if (job.Soaks.GetValueOrDefault(step) is not { } soak || soak.Begun.Kind is not (SoakKind.Bath or SoakKind.Dry)) return job;
        bool bath = soak.Begun.Kind == SoakKind.Bath;
        return job with
        {
            Care = job.Care.SetItems(soak.Begun.Parts.Select(p => KeyValuePair.Create(p, bath ? job.CareOf(p) with { Cleaned = true, Wet = true } : job.CareOf(p) with { Wet = false }))),
        };
    }

    public static Job OfFate(Job job, string finding, Func<FindingFate, FindingFate> change) =>
        job with { Fates = job.Fates.SetItem(finding, change(job.FateOf(finding))) };

    public static Job Answered(Job job, JobEvent.OwnerAnswered e, LogEntry entry)
    {
        foreach (string finding in e.Agreed) job = OfFate(job, finding, f => f with { Agreed = true });
        foreach (string finding in e.Declined) job = OfFate(job, finding, f => f with { Agreed = false });
        return job with { OwnerAnswers = job.OwnerAnswers.Add(new(e, entry.At, entry.By, entry.Number)) };
    }
}
