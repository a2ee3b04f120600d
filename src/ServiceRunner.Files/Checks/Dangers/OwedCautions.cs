using ServiceRunner.Core.Procedures;
using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Files.Checks.Dangers;

/// <summary>Cautions that what a step does calls for.</summary>
internal static class OwedCautions
{
    public static void Check(ProcedureUnderCheck check, Step step)
    {
        if (step.Power is PowerFacet.LetsDown) All(check, step, step.Id.At, "lets the power down", "stored-energy", "eyes");
        foreach (Placed<string> part in step.Removes.Count + step.Fits.Count == 0 ? [] : step.Removes.Concat(step.Fits))
        {
            if (!check.PartOf.TryGetValue(part.Value, out Part? known) || known.Kind != "mainspring") continue;
            All(check, step, part.At, "handles a mainspring", "stored-energy", "eyes");
            break;
        }
        if (step.Clock is not ClockFacet.Bath bath || bath.Solution.Value.Length == 0) return;
        Solution solution = Solution.Of(bath.Solution.Value);
        if (solution.Flammable) All(check, step, bath.At, $"uses {bath.Solution.Value}", "flammable", "vapour");
        else if (solution.Ammonia) All(check, step, bath.At, $"uses {bath.Solution.Value}", "vapour");
        else if (!IsPlainWater(bath.Solution.Value)) Any(check, step, bath.At, $"uses {bath.Solution.Value}", "skin", "vapour");
    }

    private static bool IsPlainWater(string solution) =>
        Array.TrueForAll(
            Substance.WordsOf(solution),
            w => w is "water" or "distilled" or "deionised" or "deionized" or "tap" or "clean" or "warm" or "cold" or "rinse" or "pure");

    private static void All(ProcedureUnderCheck check, Step step, Place at, string because, params ReadOnlySpan<string> owed)
    {
        List<string>? missing = null;
        foreach (string caution in owed)
        {
            if (!Gives(step, caution)) (missing ??= []).Add(caution);
        }
        if (missing is not null) check.Found.Add(CautionOwed.Of(check.FileOf(step), at, because, missing, any: false, step.Cautions.Select(c => c.Value)));
    }

    private static void Any(ProcedureUnderCheck check, Step step, Place at, string because, params ReadOnlySpan<string> owed)
    {
        foreach (string caution in owed)
        {
            if (Gives(step, caution)) return;
        }
        if (Gives(step, "corrosive") || Gives(step, "eyes") || Gives(step, "flammable")) return;
        check.Found.Add(CautionOwed.Of(check.FileOf(step), at, because, [.. owed], any: true, step.Cautions.Select(c => c.Value)));
    }

    private static bool Gives(Step step, string caution)
    {
        for (int i = 0; i < step.Cautions.Count; i++)
        {
            if (step.Cautions[i].Value == caution) return true;
        }
        return false;
    }
}
