using System.Text;

namespace ServiceRunner.Files.Checks;

/// <summary>Lists, quantities and near words, as the sentences of diagnostics need them.</summary>
internal static class Words
{
    private const int LongestListed = 12;
    private const int ShortListed = 6;

    /// <summary><c>a, b and c</c>.</summary>
    public static string And(IReadOnlyList<string> words) => Joined(words, " and ");

    /// <summary><c>a, b or c</c>.</summary>
    public static string Or(IReadOnlyList<string> words) => Joined(words, " or ");

    /// <summary><c>1 error</c>, <c>2 errors</c>.</summary>
    public static string Count(int count, string thing) => count == 1 ? $"1 {thing}" : $"{count} {thing}s";

    /// <summary>A text from a file in quotation marks, cut where it is long.</summary>
    public static string Quoted(string text)
    {
        string line = text.ReplaceLineEndings(" ");
        return line.Length > 40 ? $"'{line[..37]}…'" : $"'{line}'";
    }

    /// <summary>The hint under an unknown word: the nearest known one, or all of them where they are few.</summary>
    public static string DidYouMean(string word, IEnumerable<string> known)
    {
        List<string> all = [.. known.Distinct(StringComparer.Ordinal)];
        if (Nearest(word, all) is { } near) return $"Did you mean '{near}'?";
        return all.Count switch
        {
            0 => "",
            <= LongestListed => $"Known here: {And(all)}.",
            _ => $"Known here: {string.Join(", ", all.Take(ShortListed))} and {all.Count - ShortListed} more.",
        };
    }

    /// <summary>
    /// The known words while there are few complaints. In a file with hundreds of unknown names, looking for the nearest of
    /// thousands for each would take its time and help nobody.
    /// </summary>
    public static IEnumerable<string> Few(List<Diagnostic> found, IEnumerable<string> known) => found.Count < 200 ? known : [];

    /// <summary>The known word nearest to one that is not, or null if none is near.</summary>
    public static string? Nearest(string word, IEnumerable<string> known)
    {
        // A word longer than any name is no slip of the finger, and the distance would take its time.
        if (word.Length > 60) return null;
        string? best = null;
        int least = int.MaxValue;
        string lower = word.ToLowerInvariant();
        foreach (string candidate in known)
        {
            int allowed = Math.Max(1, Math.Min(candidate.Length, word.Length) / 3);
            if (Math.Abs(candidate.Length - word.Length) > allowed) continue;
            int distance = Distance(lower, candidate.ToLowerInvariant());
            if (distance > allowed || distance >= least) continue;
            best = candidate;
            least = distance;
        }
        return best;
    }

    // Optimal string alignment: put in, leave out, replace, swap two neighbours.
    private static int Distance(string a, string b)
    {
        int[,] d = new int[a.Length + 1, b.Length + 1];
        for (int i = 0; i <= a.Length; i++) d[i, 0] = i;
        for (int j = 0; j <= b.Length; j++) d[0, j] = j;
        for (int i = 1; i <= a.Length; i++)
        {
            for (int j = 1; j <= b.Length; j++)
            {
                d[i, j] = Math.Min(Math.Min(d[i - 1, j] + 1, d[i, j - 1] + 1), d[i - 1, j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1));
                if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1]) d[i, j] = Math.Min(d[i, j], d[i - 2, j - 2] + 1);
            }
        }
        return d[a.Length, b.Length];
    }

    private static string Joined(IReadOnlyList<string> words, string last)
    {
        StringBuilder text = new();
        for (int i = 0; i < words.Count; i++)
            text.Append(i == 0 ? "" : i == words.Count - 1 ? last : ", ").Append(words[i]);
        return text.ToString();
    }
}
