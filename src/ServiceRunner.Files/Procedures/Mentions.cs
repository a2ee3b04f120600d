using System.Diagnostics.CodeAnalysis;
using ServiceRunner.Core.Procedures;
using ServiceRunner.Core.Quantities;
using ServiceRunner.Files.Checks;
using ServiceRunner.Files.Checks.References;
using Parts = System.Collections.Generic.IReadOnlyList<ServiceRunner.Core.Quantities.Placed<string>>;

namespace ServiceRunner.Files.Procedures;

/// <summary>Puts parts in the place of groups wherever parts are mentioned; each keeps the place of its mention.</summary>
internal sealed class Mentions(
    ProcedureFile file, Belongings belongings, IReadOnlyDictionary<string, IReadOnlyList<string>> given, Allowance allowance, List<Diagnostic> found)
{
    private readonly Dictionary<string, IReadOnlyList<string>> _groups = new(given, StringComparer.Ordinal);

    // A group may name groups that stand before it, so that none can hold itself.
    public List<PartGroup> DefineGroups()
    {
        List<PartGroup> groups = [];
        foreach (PartGroup group in file.Groups)
        {
            string name = group.Name.Value;
            if (belongings.Parts.ContainsKey(name)) found.Add(DuplicateId.GroupAndPart(file.File, group.Name.At, name));
            IReadOnlyList<Placed<string>> parts = Expand(group.Parts);
            if (given.ContainsKey(name)) continue;
            _groups[name] = [.. parts.Select(p => p.Value)];
            groups.Add(group with { Parts = parts });
        }
        return groups;
    }

    /// <summary>Looks up what parts and points say of other parts.</summary>
    public void CheckParts()
    {
        if (file.Mends is { } mends && !belongings.Parts.ContainsKey(mends.Value))
            found.Add(UnknownPart.Head(file.File, mends.At, "mends", mends.Value, Words.Few(found, belongings.Parts.Keys)));
        foreach (Part part in file.Parts)
        {
            if (part.Seat is { } seat && !belongings.Parts.ContainsKey(seat.Value)) Unknown(seat);
            foreach (Placed<string> under in part.Under)
            {
                if (!belongings.Parts.ContainsKey(under.Value)) Unknown(under);
            }
        }
        foreach (OilingPoint point in file.Points)
        {
            if (point.When is { } when && !belongings.Parts.ContainsKey(when.Part.Value)) Unknown(when.Part);
        }
    }

    public Step Expand(Step step)
    {
        if (Changed(step.Removes, out Parts? removes)) step = step with { Removes = removes };
        if (Changed(step.Tries, out Parts? tries)) step = step with { Tries = tries };
        if (Changed(step.Fits, out Parts? fits)) step = step with { Fits = fits };
        if (Changed(step.Replaces, out Parts? replaces)) step = step with { Replaces = replaces };
        if (step.Clock is { } clock && Changed(clock.Parts, out Parts? inClock)) step = step with { Clock = clock with { Parts = inClock } };
        if (step.Brush is { } brush && Changed(brush.Parts, out Parts? brushed)) step = step with { Brush = brush with { Parts = brushed } };
        if (step.Coat is { } coat && Changed(coat.Parts, out Parts? coated)) step = step with { Coat = coat with { Parts = coated } };
        if (step.Examine.Count > 0) step = step with { Examine = [.. step.Examine.Select(Belonging)] };
        return step;
    }

    public Parts Expand(Parts mentioned) => Changed(mentioned, out Parts? parts) ? parts : mentioned;

    // True if the list is not already one of parts, each once.
    private bool Changed(Parts mentioned, [NotNullWhen(true)] out Parts? parts)
    {
        parts = null;
        if (mentioned.Count == 0) return false;
        HashSet<string> seen = new(mentioned.Count, StringComparer.Ordinal);
        bool plain = true;
        foreach (Placed<string> mention in mentioned)
            plain &= belongings.Parts.ContainsKey(mention.Value) && !_groups.ContainsKey(mention.Value) && seen.Add(mention.Value);
        if (plain) return false;
        seen.Clear();
        List<Placed<string>> expanded = [];
        foreach (Placed<string> mention in mentioned)
        {
            if (_groups.TryGetValue(mention.Value, out IReadOnlyList<string>? group))
            {
                if (!allowance.Take(group.Count)) break;
                foreach (string part in group)
                {
                    if (seen.Add(part)) expanded.Add(new Placed<string>(part, mention.At));
                }
            }
            else if (!belongings.Parts.ContainsKey(mention.Value)) Unknown(mention);
            else if (seen.Add(mention.Value)) expanded.Add(mention);
        }
        parts = expanded;
        return true;
    }

    // A place that is itself a part belongs to that part.
    private ExamineFacet Belonging(ExamineFacet examined)
    {
        if (examined.Part is not { } part)
            return belongings.Parts.ContainsKey(examined.Spot.Value) ? examined with { Part = examined.Spot } : examined;
        if (belongings.Parts.ContainsKey(part.Value)) return examined;
        Unknown(part);
        return examined with { Part = null };
    }

    private void Unknown(Placed<string> mention) =>
        found.Add(UnknownPart.Of(
            file.File, mention.At, mention.Value, Words.Few(found, belongings.Parts.Keys.Concat(_groups.Keys).Concat(file.Groups.Select(g => g.Name.Value)))));
}
