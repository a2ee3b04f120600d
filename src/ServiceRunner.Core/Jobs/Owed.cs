using System.Globalization;

namespace ServiceRunner.Core.Jobs;

/// <summary>What must still happen before a job can close with nothing owed.</summary>
/// <param name="Steps">Steps neither done nor passed over.</param>
/// <param name="Parts">Parts taken off and not back for good, nor replaced.</param>
/// <param name="Points">Points that a done step should have served and nobody served or left.</param>
/// <param name="Soaks">Clocks that run.</param>
/// <param name="Findings">Findings that are not done with, by their ids.</param>
public sealed record Owed(IReadOnlyList<StepKey> Steps, IReadOnlyList<string> Parts, IReadOnlyList<string> Points, IReadOnlyList<StepRef> Soaks, IReadOnlyList<string> Findings)
{
    /// <summary>True if everything is settled.</summary>
    public bool IsNothing => Steps.Count + Parts.Count + Points.Count + Soaks.Count + Findings.Count == 0;

    /// <summary>The counts in stored words, for the record.</summary>
    public string Brief => string.Create(CultureInfo.InvariantCulture, $"steps {Steps.Count}, parts {Parts.Count}, points {Points.Count}, soaks {Soaks.Count}, findings {Findings.Count}");

    /// <summary>What a job owes.</summary>
    public static Owed Of(Job job, Plan plan)
    {
        List<PlannedStep> inForce = [.. plan.InForce(job)];
        return new Owed(
            [.. inForce.Where(s => !job.IsSettled(s.Key)).Select(s => s.Key)],
            // A part that its procedure never takes off lies on the bench from the first to the last: a repair of it alone.
            [.. job.Parts.Where(p => p.Value is not (PartPlace.OnMovement or PartPlace.Replaced) && !(p.Value is PartPlace.InTray && plan.Part(p.Key) is { Stays: true })).Select(p => p.Key).Order(StringComparer.Ordinal)],
            [.. inForce.Where(s => job.Steps.GetValueOrDefault(s.Key) is { End.Done: true })
                .SelectMany(s => s.Step.Oil.Select(p => p.Value).Where(p => plan.Point(p) is { MustStayDry: false } && !job.Points.ContainsKey(p)
                    && !job.Steps[s.Key].Answered.Contains(Ask.OilKey(p)))).Distinct()],
            [.. job.RunningSoaks.Select(s => s.Begun.Step)],
            [.. FindingsLedger.Of(job, plan).Where(f => !f.IsSettled).Select(f => f.Id)]);
    }
}
