using ServiceRunner.Core.Procedures;
using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Files.Checks.Parts;

/// <summary>
/// Follows each part through the steps: off, tried, in. A part that the procedure never takes off may be fitted: in a
/// repair it is off already when the procedure begins.
/// </summary>
internal static class PartLife
{
    public static void Check(ProcedureUnderCheck check)
    {
        // A point that is served when a part goes in mentions the part as well.
        HashSet<string?> named = [.. check.Procedure.OilingPoints.Where(p => check.Served.ContainsKey(p.Id.Value)).Select(p => p.When?.Part.Value)];
        foreach (Part part in check.Procedure.Parts)
        {
            List<PartMention> mentions = check.Of(part.Id.Value);
            if (mentions.Count == 0)
            {
                if (!part.Stays && !named.Contains(part.Id.Value)) check.Found.Add(NeverMentioned.Of(check.FileOf(part), part.Id.At, part.Id.Value));
                continue;
            }
            if (part.Stays && mentions.Find(m => m.Act == PartAct.Removes) is { At.Line: > 0 } removed)
                check.Found.Add(StaysRemoved.Of(check.FileOf(removed.Step), removed.At, part.Id.Value));
            Worlds worlds = Worlds.Of(check, mentions);
            worlds.Each((world, say) => Follow(check, part, mentions, worlds, world, say), check.Found);
        }
    }

    private static void Follow(
        ProcedureUnderCheck check, Part part, List<PartMention> mentions, Worlds worlds, int world, Action<Func<string, Diagnostic>> say)
    {
        string id = part.Id.Value;
        PartMention? off = null, fitted = null;
        bool everOff = false;
        int firstRemoval = FirstRemoval(check, mentions, worlds, world);
        foreach (PartMention mention in mentions)
        {
            if (mention.Act is not (PartAct.Removes or PartAct.Tries or PartAct.Fits) || !worlds.Has(world, check.Steps[mention.Step])) continue;
            string file = check.FileOf(mention.Step);
            Place at = mention.At;
            if (mention.Act == PartAct.Removes)
            {
                if (off is { } before) say(when => RemovedTwice.Of(file, at, id, check.Steps[before.Step].Id.Value, when));
                else off = mention;
                everOff = true;
                fitted = null;
                continue;
            }
            if (!everOff && firstRemoval >= 0)
            {
                string later = check.Steps[firstRemoval].Id.Value;
                say(when => FittedBeforeRemoved.Of(file, at, id, mention.Act == PartAct.Tries, later, when));
            }
            else if (mention.Act == PartAct.Fits && fitted is { } first)
            {
                say(when => FittedTwice.Of(file, at, id, check.Steps[first.Step].Id.Value, when));
            }
            if (mention.Act != PartAct.Fits) continue;
            fitted = mention;
            off = null;
        }
        if (off is { } left) say(when => NeverFitted.Of(check.FileOf(left.Step), left.At, id, when));
    }

    private static int FirstRemoval(ProcedureUnderCheck check, List<PartMention> mentions, Worlds worlds, int world)
    {
        foreach (PartMention mention in mentions)
        {
            if (mention.Act == PartAct.Removes && worlds.Has(world, check.Steps[mention.Step])) return mention.Step;
        }
        return -1;
    }
}
