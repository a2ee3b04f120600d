using ServiceRunner.Core.Procedures;
using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Files.Checks.References;

/// <summary>What the sheet of a part to be made is reckoned from: measures of the procedure, in one unit.</summary>
internal static class SheetReferences
{
    public static void Check(ProcedureUnderCheck check)
    {
        if (check.Procedure.Sheet is not { } sheet) return;
        if (sheet.Part is { } part && !check.PartOf.ContainsKey(part.Value))
            check.Found.Add(UnknownPart.Head(check.File, part.At, "sheet", part.Value, Words.Few(check.Found, check.PartOf.Keys)));
        ILookup<string, string> units = check.Steps.SelectMany(s => s.Measure).ToLookup(m => m.What.Value, m => m.Unit);
        foreach (PartSheetLine line in sheet.Lines)
        {
            string? from = Unit(check, units, line.From), less = line.Less is { } off ? Unit(check, units, off) : null;
            if (from is not null && less is not null && from != less)
                check.Found.Add(SheetUnits.Of(check.File, line.Less!.Value.At, line.From.Value, from, line.Less.Value.Value, less));
        }
    }

    // The unit of a measure; null if there is no such measure, or it says nothing of one, which is said here.
    private static string? Unit(ProcedureUnderCheck check, ILookup<string, string> units, Placed<string> what)
    {
        List<string> known = [.. units[what.Value].Distinct()];
        if (known is [{ Length: > 0 } unit]) return unit;
        if (known.Count == 0) check.Found.Add(UnknownMeasure.Of(check.File, what.At, what.Value, Words.Few(check.Found, units.Select(u => u.Key))));
        else if (known is [""]) check.Found.Add(UnknownMeasure.Felt(check.File, what.At, what.Value));
        else check.Found.Add(SheetUnits.Several(check.File, what.At, what.Value, known));
        return null;
    }
}
