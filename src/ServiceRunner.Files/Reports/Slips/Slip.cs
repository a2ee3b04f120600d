using ServiceRunner.Core.Jobs;
using ServiceRunner.Core.Workshops;
using ServiceRunner.Files.Data;
using ServiceRunner.Files.Sentences;

namespace ServiceRunner.Files.Reports.Slips;

/// <summary>What stands on the papers that are made as a piece comes in: the owner's receipt and the label of the tray.</summary>
public sealed class Slip
{
    /// <param name="job">The job.</param>
    /// <param name="workshop">The workshop.</param>
    /// <param name="owner">The owner; null if none was given, or erased.</param>
    public Slip(Job job, Workshop workshop, Owner? owner)
    {
        (Workshop, Number, What, Owner) = (workshop.Name, job.Number, job.What, owner ?? new Owner(""));
        BookedIn = DateOnly.FromDateTime(job.OpenedAt.Wall.Date);
        string initials = job.Log.Count > 0 ? job.Log[0].By : "";
        By = workshop.People.FirstOrDefault(p => p.Initials.Value == initials)?.Name ?? initials;
        Promised = job.Intake.Promised;
        Lines = [.. IntakeWords.Lines(job.Intake)];
    }

    public string Workshop { get; }
    public string Number { get; }
    public string What { get; }

    /// <summary>Whose it is; nobody if not given.</summary>
    public Owner Owner { get; }
    public DateOnly BookedIn { get; }

    /// <summary>Who booked it in.</summary>
    public string By { get; }
    public DateOnly? Promised { get; }

    /// <summary>What was noted, by name; only what was given.</summary>
    public IReadOnlyList<(string Name, string Text)> Lines { get; }
}
