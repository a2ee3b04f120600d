using ServiceRunner.Core.Procedures;
using ServiceRunner.Core.Quantities;
using ServiceRunner.Files.Procedures;

namespace ServiceRunner.Files.Checks.References;

/// <summary>Ids of steps and stages, and what steps name: other steps, stages, points, facts, findings, procedures.</summary>
internal static class StepReferences
{
    public static void Check(ProcedureUnderCheck check, ProcedureLibrary library)
    {
        HashSet<string> points = [.. check.Procedure.OilingPoints.Select(p => p.Id.Value)];
        Ids(check);
        Stages(check);
        foreach (Step step in check.Steps)
        {
            string file = check.FileOf(step);
            for (int i = 0; i < step.After.Count; i++)
            {
                Placed<string> after = step.After[i];
                if (after.At != default && !check.StepNumber.ContainsKey(after.Value))
                    check.Found.Add(UnknownStep.Of(file, after.At, after.Value, Words.Few(check.Found, check.StepNumber.Keys)));
            }
            Points(check, file, step.Oil, points);
            Points(check, file, step.StaysDry, points);
            for (int i = 0; i < step.OnlyIf.Count; i++) FactReferences.Check(file, step.OnlyIf[i], check.Asked, check.Found);
            if (step.IfFound.Count > 0) Findings(check, library, step, file);
        }
    }

    private static void Points(ProcedureUnderCheck check, string file, IReadOnlyList<Placed<string>> named, HashSet<string> points)
    {
        for (int i = 0; i < named.Count; i++)
        {
            if (!points.Contains(named[i].Value))
                check.Found.Add(UnknownPoint.Of(file, named[i].At, named[i].Value, Words.Few(check.Found, points)));
        }
    }

    private static void Ids(ProcedureUnderCheck check)
    {
        for (int i = 0; i < check.Steps.Count; i++)
        {
            Placed<string> id = check.Steps[i].Id;
            int first = check.StepNumber[id.Value];
            if (first != i && id.Value.Length > 0) check.Found.Add(DuplicateId.Of(check.FileOf(i), id.At, "step", id.Value, check.Steps[first].Id.At));
        }
        Dictionary<string, Place> stages = new(StringComparer.Ordinal);
        foreach (Stage stage in check.Procedure.Stages)
        {
            if (stage.Id.Value.Length > 0 && !stages.TryAdd(stage.Id.Value, stage.Id.At))
                check.Found.Add(DuplicateId.Of(check.File, stage.Id.At, "stage", stage.Id.Value, stages[stage.Id.Value]));
        }
        Dictionary<string, Place> groups = new(StringComparer.Ordinal);
        foreach (Placed<string> group in check.Procedure.WantsGroups)
        {
            if (!groups.TryAdd(group.Value, group.At)) check.Found.Add(DuplicateId.Of(check.File, group.At, "group", group.Value, groups[group.Value]));
        }
    }

    private static void Stages(ProcedureUnderCheck check)
    {
        HashSet<string> stages = [.. check.Procedure.Stages.Select(s => s.Id.Value)];
        foreach (Stage stage in check.Procedure.Stages)
        {
            foreach (Placed<string> before in stage.OpensAfter)
            {
                if (!stages.Contains(before.Value))
                    check.Found.Add(UnknownStage.Of(check.File, before.At, before.Value, Words.Few(check.Found, stages)));
            }
        }
    }

    private static void Findings(ProcedureUnderCheck check, ProcedureLibrary library, Step step, string file)
    {
        // What may be seen at each place of the step, and under "" at any of them.
        Dictionary<string, HashSet<string>> seen = new(StringComparer.Ordinal) { [""] = [] };
        foreach (ExamineFacet examined in step.Examine) See(seen, examined.Spot.Value, examined.Choices.Select(c => c.Value));
        foreach (MeasureFacet measured in step.Measure) See(seen, measured.What.Value, measured.OrFelt);
        foreach (IfFound found in step.IfFound)
        {
            string choice = found.Choice.Value;
            if (!seen.TryGetValue(found.Spot, out HashSet<string>? choices))
                check.Found.Add(UnknownFinding.Place(file, found.Choice.At, found.Spot, Words.Few(check.Found, seen.Keys.Where(s => s.Length > 0))));
            else if (!choices.Contains(choice)) check.Found.Add(UnknownFinding.Choice(file, found.Choice.At, choice, Words.Few(check.Found, choices)));
            Repair(check, library, found.Procedure, file);
        }
    }

    private static void Repair(ProcedureUnderCheck check, ProcedureLibrary library, Placed<string> repair, string file)
    {
        bool itself = repair.Value == check.Procedure.Id.Value;
        if (!itself && !library.Has(repair.Value))
        {
            check.Found.Add(UnknownProcedure.Of(file, repair.At, repair.Value, Words.Few(check.Found, library.Ids)));
            return;
        }
        bool mends = itself ? check.Procedure.Mends is not null : library.Find(repair.Value)?.Procedure is not { } read || read.Mends is not null;
        if (!mends) check.Found.Add(NoRepair.Of(file, repair.At, repair.Value));
    }

    private static void See(Dictionary<string, HashSet<string>> seen, string spot, IEnumerable<string> choices)
    {
        if (!seen.TryGetValue(spot, out HashSet<string>? here)) seen[spot] = here = [];
        foreach (string choice in choices)
        {
            here.Add(choice);
            seen[""].Add(choice);
        }
    }
}
