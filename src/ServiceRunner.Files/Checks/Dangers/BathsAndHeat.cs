using ServiceRunner.Core.Procedures;
using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Files.Checks.Dangers;

/// <summary>Holds what a part is made of, set with and finished in against the baths, heat, brushes and air of a step.</summary>
internal static class BathsAndHeat
{
    private const decimal WarmEnough = 50;
    private static readonly TimeSpan MostInAlcohol = TimeSpan.FromSeconds(30);

    public static void Check(ProcedureUnderCheck check, Step step)
    {
        string file = check.FileOf(step);
        switch (step.Clock)
        {
            case ClockFacet.Bath bath: Bath(check, file, step, bath); break;
            case ClockFacet.Dry dry: Dry(check, file, step, dry); break;
        }
        if (step.Brush is not { } brush) return;
        foreach ((Part part, Place at) in Known(check, brush.Parts))
        {
            if (Has(part.Delicate, "brushing")) check.Found.Add(Harmed.Of(file, at, part.Id.Value, "brushing", "is brushed here"));
            if (Has(part.Finished, "luminous")) check.Found.Add(LuminousDisturbed.Of(file, at, part.Id.Value, "is brushed here"));
        }
    }

    private static void Bath(ProcedureUnderCheck check, string file, Step step, ClockFacet.Bath bath)
    {
        string name = bath.Solution.Value;
        Solution solution = Solution.Of(name);
        bool shellacPossible = !WithoutShellac(step);
        foreach ((Part part, Place at) in Known(check, bath.Parts))
        {
            string id = part.Id.Value;
            if (shellacPossible && Has(part.SetWith, "shellac"))
            {
                if (solution.Alcohol && !(bath.Window.Most <= MostInAlcohol))
                    check.Found.Add(ShellacInAlcohol.Of(file, at, id, name, bath.Window.Most is null && bath.Window.Aim <= MostInAlcohol));
                if (bath.Celsius > WarmEnough) check.Found.Add(ShellacInHeat.Of(file, at, id, bath.Celsius.Value));
            }
            if (bath.Ultrasonic && Has(part.Delicate, "ultrasonic")) check.Found.Add(DelicateInUltrasonic.Of(file, at, id));
            if (solution.Water && Has(part.Delicate, "water")) check.Found.Add(Harmed.Of(file, at, id, "water", $"lies in {name} here"));
            if (solution.Alcohol && Has(part.Delicate, "alcohol")) check.Found.Add(Harmed.Of(file, at, id, "alcohol", $"lies in {name} here"));
            if (solution.Ammonia && Has(part.Delicate, "ammonia")) check.Found.Add(Harmed.Of(file, at, id, "ammonia", $"lies in {name} here"));
            if (bath.Celsius > WarmEnough && Has(part.Delicate, "heat")) check.Found.Add(Harmed.Of(file, at, id, "heat", "lies in a hot bath here"));
            if (Has(part.Finished, "luminous")) check.Found.Add(LuminousDisturbed.Of(file, at, id, "is wetted here"));
        }
    }

    private static void Dry(ProcedureUnderCheck check, string file, Step step, ClockFacet.Dry dry)
    {
        bool shellacPossible = !WithoutShellac(step);
        foreach ((Part part, Place at) in Known(check, dry.Parts))
        {
            string id = part.Id.Value;
            if (dry.Celsius > WarmEnough && shellacPossible && Has(part.SetWith, "shellac")) check.Found.Add(ShellacInHeat.Of(file, at, id, dry.Celsius.Value));
            if (dry.Celsius > WarmEnough && Has(part.Delicate, "heat")) check.Found.Add(Harmed.Of(file, at, id, "heat", "is dried hot here"));
            if (dry.By.Value != "blower") continue;
            if (Has(part.Delicate, "blowing")) check.Found.Add(Harmed.Of(file, at, id, "blowing", "is blown here"));
            if (Has(part.Finished, "luminous")) check.Found.Add(LuminousDisturbed.Of(file, at, id, "is blown here"));
        }
    }

    // A step that is only there where nothing is set in shellac.
    private static bool WithoutShellac(Step step)
    {
        foreach (Condition condition in step.OnlyIf)
        {
            if (condition.Fact.Value == "shellac" && !condition.Answers.Contains("yes") && !condition.Answers.Contains("unknown")) return true;
        }
        return false;
    }

    private static IEnumerable<(Part Part, Place At)> Known(ProcedureUnderCheck check, IReadOnlyList<Placed<string>> parts)
    {
        foreach (Placed<string> part in parts)
        {
            if (check.PartOf.TryGetValue(part.Value, out Part? known)) yield return (known, part.At);
        }
    }

    private static bool Has(IReadOnlyList<Placed<string>> list, string word)
    {
        for (int i = 0; i < list.Count; i++)
        {
            if (list[i].Value == word) return true;
        }
        return false;
    }
}
