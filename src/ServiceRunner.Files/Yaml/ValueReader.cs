using ServiceRunner.Core.Quantities;
using ServiceRunner.Files.Checks;
using ServiceRunner.Files.Checks.Reading;

namespace ServiceRunner.Files.Yaml;

/// <summary>
/// Reads values from nodes. Whatever is wrong is written down with its place and answered with null, so that the
/// reading goes on and one fault never hides the next.
/// </summary>
internal sealed class ValueReader(string file, List<Diagnostic> found)
{
    private static readonly string[] YesNo = ["yes", "no"];

    public string File => file;

    public void Add(Diagnostic diagnostic) => found.Add(diagnostic);

    /// <summary>A single value, or null.</summary>
    public YText? Single(YEntry entry, string wanted = "a single value") => Single(entry.Value, entry.Key.Value, wanted);

    public YText? Single(YNode node, string key, string wanted = "a single value")
    {
        if (node is YText { IsNothing: false } text && text.Value.AsSpan().Trim().Length > 0) return text;
        found.Add(WrongKind.Of(file, node.At, key, wanted, node is YText ? "nothing" : node.Kind));
        return null;
    }

    public string Text(YEntry entry) => Single(entry, "a text")?.Value.Trim() ?? "";

    public Placed<string>? PlacedText(YEntry entry) => Single(entry, "a text") is { } text ? new Placed<string>(text.Value.Trim(), text.At) : null;

    /// <summary>A name of lower-case words, digits and hyphens.</summary>
    public Placed<string>? Name(YEntry entry) => Single(entry, "a name") is { } text ? Name(text, entry.Key.Value) : null;

    public Placed<string> Name(YText text, string key)
    {
        if (!IsName(text.Value)) found.Add(BadName.Of(file, text.At, key, text.Value, Better(text.Value)));
        return new Placed<string>(text.Value, text.At);
    }

    /// <summary>A single value or a list of them.</summary>
    public List<Placed<string>> Texts(YEntry entry) => Texts(entry.Value, entry.Key.Value);

    public List<Placed<string>> Texts(YNode node, string key)
    {
        if (node is not YList list) return Single(node, key, "a value or a list of them") is { } one ? [new(one.Value.Trim(), one.At)] : [];
        List<Placed<string>> texts = new(list.Items.Count);
        foreach (YNode item in list.Items)
        {
            if (Single(item, key, "a list of single values") is { } text) texts.Add(new(text.Value.Trim(), text.At));
        }
        return texts;
    }

    /// <summary>Words out of a closed list.</summary>
    public List<Placed<string>> WordsOf(YEntry entry, IReadOnlyList<string> known)
    {
        List<Placed<string>> words = Texts(entry);
        for (int i = words.Count - 1; i >= 0; i--)
        {
            if (Known(words[i].Value, known)) continue;
            found.Add(UnknownWord.Of(file, words[i].At, entry.Key.Value, words[i].Value, known));
            words.RemoveAt(i);
        }
        return words;
    }

    public Placed<string>? Word(YEntry entry, IReadOnlyList<string> known)
    {
        if (Single(entry, "a word") is not { } text) return null;
        if (Known(text.Value, known)) return new Placed<string>(text.Value, text.At);
        found.Add(UnknownWord.Of(file, text.At, entry.Key.Value, text.Value, known));
        return null;
    }

    public bool Yes(YEntry entry)
    {
        if (Single(entry, "yes or no") is not { } text) return false;
        if (!Known(text.Value, YesNo)) found.Add(WrongForm.Of(file, text.At, entry.Key.Value, text.Value, "yes or no"));
        return text.Value == "yes";
    }

    public decimal? Number(YEntry entry) => Single(entry, "a number") is { } text ? Number(text, entry.Key.Value) : null;

    public decimal? Number(YText text, string key) => Number(text.Value, text.At, key);

    public decimal? Number(string text, Place at, string key)
    {
        TypedNumber.Fault fault = TypedNumber.Read(text, out TypedNumber number);
        if (fault == TypedNumber.Fault.None) return number.Value;
        found.Add(fault == TypedNumber.Fault.Ambiguous ? AmbiguousNumber.Of(file, at, key, text) : NotANumber.Of(file, at, key, text));
        return null;
    }

    /// <summary>A whole number from one to a million.</summary>
    public int? Whole(YEntry entry, int least = 1)
    {
        if (Single(entry, "a whole number") is not { } text || Number(text, entry.Key.Value) is not { } number) return null;
        if (number == decimal.Truncate(number) && number >= least && number <= 1_000_000) return (int)number;
        found.Add(NotANumber.Whole(file, text.At, entry.Key.Value, text.Value));
        return null;
    }

    /// <summary>Numbers, as many as wanted; null if they are not.</summary>
    public decimal[]? Numbers(YEntry entry, int wanted, string form)
    {
        List<Placed<string>> texts = Texts(entry);
        decimal[] numbers = new decimal[texts.Count];
        bool sound = texts.Count > 0;
        for (int i = 0; i < numbers.Length; i++)
        {
            if (Number(texts[i].Value, texts[i].At, entry.Key.Value) is { } number) numbers[i] = number;
            else sound = false;
        }
        if (!sound || wanted == 0 || numbers.Length == wanted) return sound ? numbers : null;
        found.Add(WrongForm.Count(file, entry.Value.At, entry.Key.Value, wanted, numbers.Length, form));
        return null;
    }

    /// <summary>Two limits, the lower first.</summary>
    public (decimal Low, decimal High)? Limits(YEntry entry)
    {
        if (Numbers(entry, 2, "like [0.03, 0.05]") is not [var low, var high]) return null;
        if (low > high) found.Add(WindowOrder.Limits(file, entry.Value.At, entry.Key.Value));
        return (low, high);
    }

    public TimeSpan? Duration(YEntry entry)
    {
        if (Single(entry, "a length of time") is not { } text) return null;
        if (DurationText.TryRead(text.Value, out TimeSpan length)) return length;
        found.Add(BadDuration.Of(file, text.At, entry.Key.Value, text.Value));
        return null;
    }

    /// <summary>A number with one of some ways to write its unit.</summary>
    public decimal? Quantity(YEntry entry, string example, params ReadOnlySpan<string> units)
    {
        if (Single(entry, "a number with its unit") is not { } text) return null;
        string value = text.Value.Trim();
        foreach (string unit in units)
        {
            if (!value.EndsWith(unit, StringComparison.Ordinal)) continue;
            string number = value[..^unit.Length].TrimEnd();
            if (number.Length > 0 && (char.IsAsciiDigit(number[^1]) || number[^1] is '.' or ',')) return Number(number, text.At, entry.Key.Value);
        }
        found.Add(BadUnit.Of(file, text.At, entry.Key.Value, value, example));
        return null;
    }

    public decimal? Celsius(YEntry entry) => Quantity(entry, "40 °C", "°C", "℃");

    public YMap? Map(YNode node, string key)
    {
        if (node is YMap map) return map;
        found.Add(WrongKind.Of(file, node.At, key, "keys with values", node.Kind));
        return null;
    }

    /// <summary>The items of a list; a single map may stand for a list of one.</summary>
    public IReadOnlyList<YNode> Items(YEntry entry)
    {
        if (entry.Value is YList list) return list.Items;
        if (entry.Value is YMap) return [entry.Value];
        found.Add(WrongKind.Of(file, entry.Value.At, entry.Key.Value, "a list", entry.Value.Kind));
        return [];
    }

    public void Unknown(YEntry entry, string owner, IReadOnlyList<string> known) =>
        found.Add(UnknownKey.Of(file, entry.Key.At, entry.Key.Value, owner, known));

    public void Missing(Place at, string key, string owner, string hint = "") => found.Add(MissingKey.Of(file, at, key, owner, hint));

    internal static bool IsName(string text)
    {
        if (text.Length == 0 || text[0] == '-' || text[^1] == '-') return false;
        foreach (char c in text)
        {
            if (!char.IsAsciiLetterLower(c) && !char.IsAsciiDigit(c) && c != '-') return false;
        }
        return true;
    }

    // "Third wheel" → third-wheel, if that much makes it a name.
    private static string? Better(string text)
    {
        string better = text.Trim().ToLowerInvariant().Replace(' ', '-').Replace('_', '-');
        return IsName(better) ? better : null;
    }

    private static bool Known(string word, IReadOnlyList<string> known)
    {
        for (int i = 0; i < known.Count; i++)
        {
            if (known[i] == word) return true;
        }
        return false;
    }
}
