using ServiceRunner.Core.Procedures;

namespace ServiceRunner.Files.Checks.References;

/// <summary>Facts and answers of a condition.</summary>
internal static class FactReferences
{
    public static void Check(string file, Condition condition, IReadOnlyDictionary<string, JobQuestion> asked, List<Diagnostic> found)
    {
        // A condition without a place comes from beside a taking in, where it has been looked at.
        if (condition.Fact.At == default) return;
        if (!asked.TryGetValue(condition.Fact.Value, out JobQuestion? question))
        {
            found.Add(UnknownFact.Of(file, condition.Fact.At, condition.Fact.Value, Words.Few(found, asked.Keys)));
            return;
        }
        foreach (string answer in condition.Answers)
        {
            if (!question.Answers.Contains(answer)) found.Add(UnknownAnswer.Of(file, condition.Fact.At, question.Fact.Value, answer, question.Answers));
        }
    }
}
