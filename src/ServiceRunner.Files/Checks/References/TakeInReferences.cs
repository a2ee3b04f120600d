using ServiceRunner.Core.Procedures;
using ServiceRunner.Core.Quantities;
using ServiceRunner.Files.Procedures;

namespace ServiceRunner.Files.Checks.References;

/// <summary>What stands beside a taking in is said once there, and not at each of the steps that it holds for.</summary>
internal static class TakeInReferences
{
    public static void Check(
        string file, IEnumerable<FileItem.TakenIn> items, IReadOnlyList<Stage> stages, IReadOnlyDictionary<string, JobQuestion> asked, List<Diagnostic> found)
    {
        HashSet<string> steps = [.. stages.SelectMany(s => s.Steps).Select(s => s.Id.Value)];
        foreach (FileItem.TakenIn item in items)
        {
            foreach (Placed<string> after in item.After.Where(a => !steps.Contains(a.Value)))
                found.Add(UnknownStep.Of(file, after.At, after.Value, Words.Few(found, steps)));
            foreach (Condition condition in item.OnlyIf)
                FactReferences.Check(file, condition, asked, found);
        }
    }
}
