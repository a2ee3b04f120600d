using ServiceRunner.Core.Procedures;
using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Files.Checks.Parts;

/// <summary>What covers or holds a part comes off before it.</summary>
internal static class UnderParts
{
    public static void Check(ProcedureUnderCheck check)
    {
        Circles(check);
        foreach (Part part in check.Procedure.Parts)
        {
            foreach (Placed<string> over in part.Under)
            {
                List<PartMention> mentions = check.Of(part.Id.Value), covers = check.Of(over.Value);
                if (mentions.Count == 0 || covers.Count == 0) continue;
                List<PartMention> both = [.. mentions.Concat(covers).Where(m => m.Act is PartAct.Removes or PartAct.Fits)];
                Worlds worlds = Worlds.Of(check, both);
                worlds.Each((world, say) => Follow(check, part.Id.Value, over.Value, worlds, world, say), check.Found);
            }
        }
    }

    private static void Follow(ProcedureUnderCheck check, string part, string over, Worlds worlds, int world, Action<Func<string, Diagnostic>> say)
    {
        List<PartMention> covers = [.. check.Of(over).Where(c => c.Act is PartAct.Removes or PartAct.Fits && worlds.Has(world, check.Steps[c.Step]))];
        // What never comes off in this job is off when it begins, or needs not come off.
        if (!covers.Exists(c => c.Act == PartAct.Removes)) return;
        bool off = false;
        int next = 0;
        foreach (PartMention mention in check.Of(part))
        {
            if (mention.Act != PartAct.Removes || !worlds.Has(world, check.Steps[mention.Step])) continue;
            for (; next < covers.Count && covers[next].Step < mention.Step; next++) off = covers[next].Act == PartAct.Removes;
            // Within one step the order is the repairer's.
            bool here = off;
            for (int i = next; i < covers.Count && covers[i].Step == mention.Step; i++) here |= covers[i].Act == PartAct.Removes;
            if (!here) say(when => UnderOrder.Of(check.FileOf(mention.Step), mention.At, part, over, when));
        }
    }

    private static void Circles(ProcedureUnderCheck check)
    {
        Circle circle = new(check.PartOf.Count);
        Dictionary<string, int> number = new(StringComparer.Ordinal);
        List<Part> parts = [.. check.PartOf.Values];
        for (int i = 0; i < parts.Count; i++) number[parts[i].Id.Value] = i;
        for (int i = 0; i < parts.Count; i++)
        {
            foreach (Placed<string> over in parts[i].Under)
            {
                if (number.TryGetValue(over.Value, out int upper)) circle.Waits(i, upper);
            }
        }
        foreach (List<int> found in circle.All())
            check.Found.Add(UnderCircle.Of(check.FileOf(parts[found[0]]), parts[found[0]].Id.At, [.. found.Select(f => parts[f].Id.Value)]));
    }
}
