using ServiceRunner.Core.Procedures;
using ServiceRunner.Files.Checks.Dangers;
using ServiceRunner.Files.Checks.Oiling;
using ServiceRunner.Files.Checks.Order;
using ServiceRunner.Files.Checks.Parts;
using ServiceRunner.Files.Checks.References;
using ServiceRunner.Files.Procedures;

namespace ServiceRunner.Files.Checks;

/// <summary>Looks at a procedure that has been read as a careful colleague would.</summary>
public static class ProcedureChecks
{
    /// <summary>What is wrong with what the procedure says, in the order of the file. What reading found is not repeated.</summary>
    public static IReadOnlyList<Diagnostic> Run(ReadProcedure read, ProcedureLibrary library)
    {
        if (read.Procedure is not { } procedure) return [];
        List<Diagnostic> found = [];
        ProcedureUnderCheck check = new(read.File, procedure, found);
        StepReferences.Check(check, library);
        SheetReferences.Check(check);
        PartLife.Check(check);
        UnderParts.Check(check);
        PointService.Check(check);
        PointService.CheckDry(check);
        WaitingOrder.Check(check);
        PowerWalk.Check(check);
        foreach (Step step in check.Steps)
        {
            OwedCautions.Check(check, step);
            Substances.Check(check, step);
            BathsAndHeat.Check(check, step);
        }
        WetAndDry.Check(check);
        List<Diagnostic> distinct = [.. found.Distinct()];
        distinct.Sort((a, b) => (a.Place.Line, a.Place.Column).CompareTo((b.Place.Line, b.Place.Column)));
        return distinct;
    }
}
