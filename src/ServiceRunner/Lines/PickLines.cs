using ServiceRunner.Files.Sentences;
using ServiceRunner.Screens.Pick;

namespace ServiceRunner.Lines;

/// <summary>A list to choose from, nine lines at a time, each with its number.</summary>
internal static class PickLines
{
    /// <summary>So many are told at a time: more is forgotten before the end.</summary>
    public const int Page = 9;

    public static IEnumerable<Telling> Of(PickModel model)
    {
        IReadOnlyList<Choice> matching = model.Matching;
        yield return model.Name;
        if (model.Typed.Length > 0) yield return matching.Count == 0 ? $"Nothing contains '{model.Typed}': a slash alone brings all back" : $"{Times.Count(matching.Count, "line")} containing '{model.Typed}'";
        int first = model.At / Page * Page;
        for (int i = first; i < Math.Min(matching.Count, first + Page); i++)
            yield return new($"{i + 1}: {matching[i].Text}{(matching[i].Detail.Length > 0 ? $"; {matching[i].Detail}" : "")}", $"{model.Typed} {i} of {first}");
        if (matching.Count > Page) yield return $"{Math.Min(matching.Count, first + Page)} of {matching.Count} told: the word more tells the next, a part of the text narrows them";
        if (matching.Count > 0) yield return new($"Enter: {model.At + 1}, {matching[model.At].Text}", $"{model.Typed} at {model.At}");
    }
}
