using ServiceRunner.Core.Quantities;
using ServiceRunner.Core.Workshops;
using ServiceRunner.Files.Checks.Dangers;
using ServiceRunner.Files.Checks.References;
using ServiceRunner.Files.Checks.Workshops;

namespace ServiceRunner.Files.Checks;

/// <summary>Looks at a workshop that has been read.</summary>
public static class WorkshopChecks
{
    private static readonly string[] BurningCodes = ["H224", "H225", "H226"];

    /// <summary>What is wrong with what the workshop file says. What reading found is not repeated.</summary>
    public static IReadOnlyList<Diagnostic> Run(string file, Workshop workshop)
    {
        List<Diagnostic> found = [];
        Ids(file, "person", workshop.People.Select(p => p.Initials), found);
        Ids(file, "liquid", workshop.Liquids.Select(l => l.Id), found);
        Ids(file, "jar", workshop.Jars.Select(j => j.Id), found);
        Ids(file, "machine", workshop.Machines.Select(m => m.Id), found);
        Ids(file, "lubricant", workshop.Lubricants.Select(l => l.Id), found);
        Ids(file, "instrument", workshop.Instruments.Select(i => i.Id), found);
        foreach (Liquid liquid in workshop.Liquids) Check(file, liquid, found);
        foreach (Jar jar in workshop.Jars)
        {
            if (jar.Holds.Value.Length > 0 && !workshop.Liquids.Any(l => l.Id.Value == jar.Holds.Value))
                found.Add(UnknownShelf.Of(file, jar.Holds.At, "liquid", jar.Holds.Value, workshop.Liquids.Select(l => l.Id.Value)));
        }
        foreach (Core.Workshops.Machine machine in workshop.Machines) Check(file, workshop, machine, found);
        found.Sort((a, b) => (a.Place.Line, a.Place.Column).CompareTo((b.Place.Line, b.Place.Column)));
        return found;
    }

    private static void Check(string file, Liquid liquid, List<Diagnostic> found)
    {
        Substances.Look(file, liquid.Id.At, liquid.Name, found);
        Substances.Look(file, liquid.Solution.At, liquid.Solution.Value, found);
        foreach (Share share in liquid.Contains) Substances.Look(file, share.Substance.At, share.Substance.Value, found);
        foreach (Placed<string> hazard in liquid.Hazards)
        {
            if (!liquid.Flammable && BurningCodes.Contains(hazard.Value)) found.Add(FlammableDenied.Of(file, hazard.At, liquid.Id.Value, hazard.Value));
        }
        decimal sum = liquid.Contains.Sum(s => s.Percent);
        if (sum > 100) found.Add(SharesOverAll.Of(file, liquid.Id.At, liquid.Id.Value, sum));
    }

    private static void Check(string file, Workshop workshop, Core.Workshops.Machine machine, List<Diagnostic> found)
    {
        string what = machine.Kind.Value == "ultrasonic" ? "ultrasonic" : machine.Heated ? "heated" : machine.Kind.Value == "dryer" ? "a dryer" : "";
        foreach (Placed<string> id in machine.Jars)
        {
            if (workshop.Jars.FirstOrDefault(j => j.Id.Value == id.Value) is not { } jar)
            {
                found.Add(UnknownShelf.Of(file, id.At, "jar", id.Value, workshop.Jars.Select(j => j.Id.Value)));
                continue;
            }
            if (what.Length == 0 || machine.RatedForFlammables) continue;
            if (workshop.Liquids.FirstOrDefault(l => l.Id.Value == jar.Holds.Value) is { } liquid && Burns(liquid))
                found.Add(FlammableInMachine.Of(file, id.At, machine.Id.Value, liquid.Id.Value, what));
        }
    }

    private static bool Burns(Liquid liquid) => liquid.Flammable || liquid.Hazards.Any(h => BurningCodes.Contains(h.Value));

    private static void Ids(string file, string thing, IEnumerable<Placed<string>> ids, List<Diagnostic> found)
    {
        Dictionary<string, Place> first = new(StringComparer.Ordinal);
        foreach (Placed<string> id in ids)
        {
            if (id.Value.Length > 0 && !first.TryAdd(id.Value, id.At)) found.Add(DuplicateId.Of(file, id.At, thing, id.Value, first[id.Value]));
        }
    }
}
