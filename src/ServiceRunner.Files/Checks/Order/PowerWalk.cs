using ServiceRunner.Core.Procedures;
using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Files.Checks.Order;

/// <summary>Follows the power through the steps in the order of the list.</summary>
internal static class PowerWalk
{
    public static void Check(ProcedureUnderCheck check)
    {
        List<int> steps = [];
        bool any = false;
        for (int i = 0; i < check.Steps.Count; i++)
        {
            bool touches = Touched(check, check.Steps[i]).Any();
            any |= touches;
            if (touches || check.Steps[i].Power is not null) steps.Add(i);
        }
        if (!any) return;
        Worlds worlds = Worlds.Of(check, steps);
        worlds.Each((world, say) => Follow(check, steps.Where(s => worlds.Has(world, check.Steps[s])), say), check.Found);
    }

    private static void Follow(ProcedureUnderCheck check, IEnumerable<int> steps, Action<Func<string, Diagnostic>> say)
    {
        bool letDown = false;
        string woundIn = "";
        foreach (int number in steps)
        {
            Step step = check.Steps[number];
            // In one step the power goes down before parts are moved, and is put on after.
            if (step.Power is PowerFacet.LetsDown) (letDown, woundIn) = (true, "");
            foreach ((Placed<string> part, bool removed) in Touched(check, step))
            {
                string since = woundIn;
                if (since.Length > 0) say(when => UnderPower.On(check.FileOf(number), part.At, part.Value, since, when));
                else if (!letDown && removed) say(when => UnderPower.NotLetDown(check.FileOf(number), part.At, part.Value, when));
            }
            if (step.Power is PowerFacet.Winds or PowerFacet.SetUp) woundIn = step.Id.Value;
        }
    }

    private static IEnumerable<(Placed<string> Part, bool Removed)> Touched(ProcedureUnderCheck check, Step step)
    {
        foreach (Placed<string> part in step.Removes)
        {
            if (check.PartOf.TryGetValue(part.Value, out Part? known) && known.UnderPower) yield return (part, true);
        }
        foreach (Placed<string> part in step.Tries.Concat(step.Fits))
        {
            if (check.PartOf.TryGetValue(part.Value, out Part? known) && known.UnderPower) yield return (part, false);
        }
    }
}
