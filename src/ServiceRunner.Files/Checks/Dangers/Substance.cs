namespace ServiceRunner.Files.Checks.Dangers;

/// <summary>A substance that should not be used, as it may be written.</summary>
internal sealed record Substance(string Name, bool Forbidden, string[][] Writings)
{
    // Benzine is not here: it is a petroleum spirit, and only one letter from benzene.
    private static readonly Substance[] Known =
    [
        new("benzene", true, [["benzene"], ["benzol"], ["benzole"]]),
        new("carbon tetrachloride", true, [["carbon", "tetrachloride"], ["tetrachloromethane"], ["carbontetrachloride"]]),
        new("trichloroethylene", true, [["trichloroethylene"], ["trichloroethene"], ["trichlorethylene"]]),
        new("dichloromethane", false, [["dichloromethane"], ["methylene", "chloride"]]),
        new("1-bromopropane", false, [["bromopropane"], ["propyl", "bromide"]]),
    ];

    // "never benzol" is advice and not a recipe.
    private static readonly string[] Denials = ["no", "not", "never", "nor", "without", "instead", "don", "dont", "forbidden", "avoid", "free"];

    /// <summary>The words of a text in lower case.</summary>
    public static string[] WordsOf(string text)
    {
        List<string> words = [];
        int start = -1;
        for (int i = 0; i <= text.Length; i++)
        {
            bool letter = i < text.Length && char.IsLetter(text[i]);
            if (letter && start < 0) start = i;
            if (letter || start < 0) continue;
            words.Add(text[start..i].ToLowerInvariant());
            start = -1;
        }
        return [.. words];
    }

    /// <summary>The substances in a name, or in those sentences of a text that do not warn of them.</summary>
    public static IEnumerable<(Substance Substance, string Written)> In(string text)
    {
        if (!MayName(text)) yield break;
        foreach (string sentence in text.Split(['.', ';', '\n']))
        {
            string[] words = WordsOf(sentence);
            if (words.Any(Denials.Contains)) continue;
            foreach (Substance substance in Known)
            {
                if (Array.Find(substance.Writings, writing => Holds(words, writing)) is { } found) yield return (substance, string.Join(' ', found));
            }
        }
    }

    // Most texts name none of them; this looks without taking the text apart.
    private static bool MayName(string text) =>
        text.Contains("benz", StringComparison.OrdinalIgnoreCase) || text.Contains("chlor", StringComparison.OrdinalIgnoreCase)
        || text.Contains("brom", StringComparison.OrdinalIgnoreCase);

    private static bool Holds(string[] words, string[] writing) => words.AsSpan().IndexOf(writing) >= 0;
}
