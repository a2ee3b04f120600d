using ServiceRunner.Core.Procedures;
using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Files.Checks.Dangers;

/// <summary>Looks for substances that should not be used, in what a step names and in what it tells the repairer to do.</summary>
internal static class Substances
{
    public static void Check(ProcedureUnderCheck check, Step step)
    {
        string file = check.FileOf(step);
        if (step.Clock is ClockFacet.Bath bath) Look(file, bath.Solution.At, bath.Solution.Value, check.Found);
        if (step.Clock is ClockFacet.Bath { Agitate.Length: > 0 } moved) Look(file, moved.At, moved.Agitate, check.Found);
        if (step.Brush is { } brush) Look(file, step.Id.At, brush.With, check.Found);
        if (step.Peg is { } peg) Look(file, step.Id.At, peg.With, check.Found);
        if (step.Coat is { } coat) Look(file, step.Id.At, coat.With, check.Found);
        foreach (Placed<string> tool in step.Uses) Look(file, tool.At, tool.Value, check.Found);
        Look(file, step.Id.At, step.Do, check.Found);
        Look(file, step.Id.At, step.How, check.Found);
    }

    public static void Look(string file, Place at, string text, List<Diagnostic> found)
    {
        foreach ((Substance substance, string written) in Substance.In(text))
        {
            found.Add(substance.Forbidden
                ? ForbiddenSubstance.Of(file, at, substance.Name, written)
                : DoubtfulSubstance.Of(file, at, substance.Name, written));
        }
    }
}
