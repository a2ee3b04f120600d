using ServiceRunner.Core.Procedures;
using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Files.Checks.Oiling;

/// <summary>Each oiling point is served once, at its time; one that must stay dry is not.</summary>
internal static class PointService
{
    public static void Check(ProcedureUnderCheck check)
    {
        HashSet<string> seenDry = [.. check.Steps.SelectMany(s => s.StaysDry).Select(p => p.Value)];
        foreach (OilingPoint point in check.Procedure.OilingPoints)
        {
            string id = point.Id.Value, file = check.FileOf(point);
            List<(int Step, Place At)>? served = check.Served.GetValueOrDefault(id);
            if (point.On is { } on && check.Procedure.Map is { } map && (on.X < 0 || on.Y < 0 || on.X > map.Width || on.Y > map.Height))
                check.Found.Add(PointOffMap.Of(file, point.Id.At, id, on.X, on.Y, map.Width, map.Height));
            if (point.MustStayDry)
            {
                foreach ((int step, Place at) in served ?? []) check.Found.Add(DryPointServed.Of(check.FileOf(step), at, id, point.Why));
                if (!seenDry.Contains(id)) check.Found.Add(DryNeverSeen.Of(file, point.Id.At, id));
            }
            else if (served is null)
            {
                if (point.Role.Value.Length > 0) check.Found.Add(PointNeverServed.Of(file, point.Id.At, id));
            }
            else
            {
                Service(check, point, served);
            }
        }
    }

    /// <summary>What a step names as dry must be a point that gets nothing.</summary>
    public static void CheckDry(ProcedureUnderCheck check)
    {
        if (check.Steps.TrueForAll(s => s.StaysDry.Count == 0)) return;
        Dictionary<string, OilingPoint> points = [];
        foreach (OilingPoint point in check.Procedure.OilingPoints) points.TryAdd(point.Id.Value, point);
        foreach (Step step in check.Steps)
            foreach (Placed<string> named in step.StaysDry)
                if (points.TryGetValue(named.Value, out OilingPoint? point) && !point.MustStayDry)
                    check.Found.Add(NotADryPoint.Of(check.FileOf(step), named.At, named.Value, point.Role.Value));
    }

    private static void Service(ProcedureUnderCheck check, OilingPoint point, List<(int Step, Place At)> served)
    {
        List<PartMention> fits = point.When is { } when ? check.Of(when.Part.Value).FindAll(m => m.Act == PartAct.Fits) : [];
        Worlds worlds = Worlds.Of(check, served.Select(s => s.Step).Concat(fits.Select(f => f.Step)));
        worlds.Each(
            (world, say) =>
            {
                int first = -1;
                List<int> fittings = [.. fits.Where(f => worlds.Has(world, check.Steps[f.Step])).Select(f => f.Step)];
                foreach ((int step, Place at) in served)
                {
                    if (!worlds.Has(world, check.Steps[step])) continue;
                    int before = first;
                    if (before >= 0) say(w => PointServedTwice.Of(check.FileOf(step), at, point.Id.Value, check.Steps[before].Id.Value, w));
                    else first = step;
                    if (point.When is { } order && fittings.Count > 0) Time(check, point, order, step, at, fittings, say);
                }
            },
            check.Found);
    }

    private static void Time(
        ProcedureUnderCheck check, OilingPoint point, ServingOrder order, int step, Place at, List<int> fittings, Action<Func<string, Diagnostic>> say)
    {
        string id = point.Id.Value, part = order.Part.Value, file = check.FileOf(step);
        // A part that goes in, comes off and goes in again may be served between: only what no fitting allows is wrong.
        if (order.Time == ServingTime.Before && step > fittings[^1])
            say(when => PointOrder.TooLate(file, at, id, part, check.Steps[fittings[^1]].Id.Value, when));
        else if (order.Time == ServingTime.After && step < fittings[0])
            say(when => PointOrder.TooEarly(file, at, id, part, check.Steps[fittings[0]].Id.Value, when));
        else if (order.Time == ServingTime.With && !fittings.Exists(f => check.StageOf[f] == check.StageOf[step]))
            say(when => PointOrder.Apart(file, at, id, part, check.Steps[fittings[0]].Id.Value, when));
    }
}
