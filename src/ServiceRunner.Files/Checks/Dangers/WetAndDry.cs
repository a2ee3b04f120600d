using ServiceRunner.Core.Procedures;
using ServiceRunner.Core.Quantities;
using ServiceRunner.Files.Checks.Parts;

namespace ServiceRunner.Files.Checks.Dangers;

/// <summary>Follows each part from its baths to its drying.</summary>
internal static class WetAndDry
{
    public static void Check(ProcedureUnderCheck check)
    {
        foreach (Part part in check.Procedure.Parts)
        {
            List<PartMention> mentions = check.Of(part.Id.Value).FindAll(m => m.Act is PartAct.Bath or PartAct.Spin or PartAct.Dry);
            if (!mentions.Exists(m => m.Act == PartAct.Bath)) continue;
            Worlds worlds = Worlds.Of(check, mentions);
            worlds.Each((world, say) => Follow(check, part.Id.Value, mentions.FindAll(m => worlds.Has(world, check.Steps[m.Step])), say), check.Found);
        }
    }

    private static void Follow(ProcedureUnderCheck check, string part, List<PartMention> mentions, Action<Func<string, Diagnostic>> say)
    {
        PartMention? wet = null, burning = null;
        foreach (PartMention mention in mentions)
        {
            switch (check.Steps[mention.Step].Clock)
            {
                case ClockFacet.Bath bath:
                    wet = mention;
                    burning = Solution.Of(bath.Solution.Value).Flammable ? mention : null;
                    break;
                case ClockFacet.Dry dry:
                    if (burning is { } from && IsHot(dry))
                    {
                        string solution = ((ClockFacet.Bath)check.Steps[from.Step].Clock!).Solution.Value;
                        Place at = mention.At;
                        say(when => FlammableThenHeat.Of(check.FileOf(mention.Step), at, part, solution, when));
                    }
                    (wet, burning) = (null, null);
                    break;
                default:
                    burning = null;
                    break;
            }
        }
        if (wet is { } left) say(when => NeverDried.Of(check.FileOf(left.Step), left.At, part, when));
    }

    private static bool IsHot(ClockFacet.Dry dry) => dry.By.Value is "warm-air" or "dryer" || dry.Celsius > 30;
}
