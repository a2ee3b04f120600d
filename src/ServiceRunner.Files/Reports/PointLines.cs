using ServiceRunner.Core.Jobs;
using ServiceRunner.Core.Procedures;
using ServiceRunner.Core.Workshops;
using ServiceRunner.Files.Sentences;

namespace ServiceRunner.Files.Reports;

/// <summary>Every oiling point of a job with its number and what became of it.</summary>
public static class PointLines
{
    /// <summary>The points in the plan's order, then those that no procedure names.</summary>
    public static IReadOnlyList<PointLine> Of(Job job, Plan plan, Workshop workshop)
    {
        HashSet<string> asked = [.. plan.InForce(job).SelectMany(s => s.Step.Oil.Select(p => p.Value))];
        IEnumerable<string> unnamed = job.Points.Keys.Where(id => plan.Point(id) is null).Order(StringComparer.Ordinal);
        return [.. plan.Points.Select(p => p.Id.Value).Concat(unnamed).Select((id, i) => Line(i + 1, id))];

        PointLine Line(int number, string id)
        {
            OilingPoint? point = plan.Point(id);
            Serving? served = job.Points.GetValueOrDefault(id);
            PointState state = served is not null ? PointState.Served
                : point is { MustStayDry: true } ? PointState.StaysDry
                : asked.Contains(id) ? PointState.NotServed : PointState.NotAsked;
            return new PointLine(
                number, id, point?.Name ?? id, JobWords.Role(point?.Role.Value ?? served?.Event.Role ?? ""), state,
                served is null ? "" : JobWords.Lubricant(workshop, served.Event.Lubricant), served?.Event.Batch ?? "", served?.By ?? "", served?.At.Wall);
        }
    }
}
