using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;

namespace ServiceRunner.Files.Sentences;

/// <summary>
/// Text of the screen as words to be spoken: units, signs, fractions and clocks said in full, ids as words, codes and
/// drawing left out. What comes out has no control character and nothing that a speech program could take for a command.
/// </summary>
public static partial class SpokenWords
{
    private const string Number = @"(?<![\w.,])(\d+(?:[.,]\d+)*)";
    private const string Unit = "(" + SpokenUnits.Written + @")(?![\w²³/°])";

    /// <summary>The words.</summary>
    public static string Of(string text)
    {
        string words = Plain(text);
        words = Codes().Replace(words, "");
        words = Grade().Replace(words, "viscosity grade ");
        words = Numbers(words);
        words = Lengths(words);
        words = BareUnit().Replace(words, m => $", in {SpokenUnits.Of(m.Groups[1].Value).Many}");
        words = Label().Replace(words, "$1$2");
        words = Hyphen().Replace(words, " ");
        words = Abbreviations(words);
        return Tidy(words);
    }

    // Control, format and broken characters end here, and so does what a file or another bench may have hidden in a text.
    private static string Plain(string text)
    {
        StringBuilder plain = new(text.Length);
        foreach (Rune rune in text.EnumerateRunes())
        {
            bool hidden = Rune.GetUnicodeCategory(rune) is UnicodeCategory.Control or UnicodeCategory.Format or UnicodeCategory.PrivateUse
                or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator || rune == Rune.ReplacementChar;
            plain.Append(hidden ? " " : rune.Value switch { 0x2212 => "-", 0x2019 => "'", 0x201C or 0x201D => "\"", 0x2018 => "'", _ => rune.ToString() });
        }
        return Grouping().Replace(plain.ToString(), "");
    }

    private static string Numbers(string words)
    {
        words = DecimalComma().Replace(words, m => m.Groups[2].Length == 3 && m.Groups[1].Value != "0" && m.Groups[1].Length <= 3 ? m.Value : $"{m.Groups[1]}.{m.Groups[2]}");
        words = TypedFraction().Replace(words, m => m.Value switch { "1/2" => "½", "1/3" => "⅓", "2/3" => "⅔", "1/4" => "¼", "3/4" => "¾", _ => m.Value });
        words = Over().Replace(words, "$1 over $2");
        words = Span().Replace(words, " to ");
        words = HyphenSpan().Replace(words, "$1 to $2");
        words = words.Replace("±", " plus or minus ", StringComparison.Ordinal);
        words = Plus().Replace(words, "plus ");
        words = Minus().Replace(words, "minus ");
        words = About().Replace(words, "about ");
        words = words.Replace("≥", " at least ", StringComparison.Ordinal).Replace("≤", " at most ", StringComparison.Ordinal);
        return MoreOrLess().Replace(words, m => m.Groups[1].Value == "<" ? "less than " : "more than ");
    }

    private static string Lengths(string words)
    {
        words = DaysAndHours().Replace(words, m => Clock((m.Groups[1].Value, "d"), (m.Groups[2].Value, "h"), (m.Groups[3].Value, "min")));
        words = HoursToSeconds().Replace(words, m => Clock((m.Groups[1].Value, "h"), (m.Groups[2].Value, "min"), (m.Groups[3].Value, "s")));
        words = MinutesAndSeconds().Replace(words, m => Clock((m.Groups[1].Value, "min"), (m.Groups[2].Value, "s")));
        words = MixedOfUnit().Replace(words, m => $"{m.Groups[1]} and {Part(m.Groups[2].Value)} {SpokenUnits.Of(m.Groups[3].Value).Many}");
        words = FractionOfUnit().Replace(words, m => PartOf(m.Groups[1].Value, SpokenUnits.Of(m.Groups[2].Value).One));
        words = Mixed().Replace(words, m => $"{m.Groups[1]} and {Part(m.Groups[2].Value)}");
        words = Fraction().Replace(words, m => m.Value == "½" ? "half" : Part(m.Value));
        return NumberOfUnit().Replace(words, m => SpokenUnits.Of(m.Groups[1].Value, m.Groups[2].Value));
    }

    // A part of a clock that is nothing is not said, unless all of them are.
    private static string Clock(params ReadOnlySpan<(string Figures, string Unit)> parts)
    {
        List<string> said = [];
        foreach ((string figures, string unit) in parts)
        {
            if (figures.TrimStart('0') is { Length: > 0 } count) said.Add(SpokenUnits.Of(count, unit));
        }
        return said.Count > 0 ? string.Join(' ', said) : SpokenUnits.Of("0", parts[^1].Unit);
    }

    private static string Part(string fraction) => fraction switch { "½" => "a half", "⅓" => "a third", "⅔" => "two thirds", "¼" => "a quarter", _ => "three quarters" };

    private static string PartOf(string fraction, string unit) =>
        fraction == "½" ? $"half {SpokenUnits.Article(unit)} {unit}" : $"{Part(fraction)} of {SpokenUnits.Article(unit)} {unit}";

    private static string Abbreviations(string words) => Abbreviation().Replace(words, m => m.Value switch
    {
        "e.g." => "for example",
        "i.e." => "that is",
        "approx." => "about",
        "incl." => "including",
        "&" => "and",
        "×" => " times ",
        "=" => " is ",
        "/" => " or ",
        "°" => " degrees ",
        "%" => " per cent ",
        _ => m.Value,
    });

    // Arrows and separators are a short rest; what is drawn or marks up is nothing; brackets around nothing go too.
    private static string Tidy(string words)
    {
        words = Rest().Replace(words, ", ");
        words = Drawn().Replace(words, " ");
        words = Quote().Replace(words, " ");
        words = Empty().Replace(words, " ");
        words = Spaces().Replace(words, " ");
        words = BeforeStop().Replace(words, "$1");
        words = Stops().Replace(words, m => m.Value.FirstOrDefault(c => c is '.' or '?' or '!', m.Value[0]).ToString());
        return words.Trim(' ', ',', ';', ':', '-', '–', '—');
    }

    [GeneratedRegex(@"\s*\((?:(?:EUH|H|P)\d{3}[A-Za-z]{0,2}[\s,+;]*)+\)|\b(?:EUH|H|P)\d{3}[A-Za-z]{0,2}(?:\s*\+\s*(?:EUH|H|P)\d{3})*\b")]
    private static partial Regex Codes();

    [GeneratedRegex(@"\bVG (?=\d)")]
    private static partial Regex Grade();

    [GeneratedRegex(@"(?<=\d)[\u00A0\u2009\u202F](?=\d{3}(?!\d))")]
    private static partial Regex Grouping();

    [GeneratedRegex(@"(?<![\w.,])(\d+),(\d+)(?![\d]|[.,]\d)")]
    private static partial Regex DecimalComma();

    [GeneratedRegex(@"(?<![\w/.,])[123]/[234](?![\w/])")]
    private static partial Regex TypedFraction();

    [GeneratedRegex(@"(?<![\w/.,-])(\d+)/(\d+)(?![\w/])")]
    private static partial Regex Over();

    [GeneratedRegex(@"(?<=\d[½⅓⅔¼¾]?|[½⅓⅔¼¾])\s*–\s*(?=[\d½⅓⅔¼¾])")]
    private static partial Regex Span();

    [GeneratedRegex(@"(?<![\w.,-])(\d+(?:\.\d+)?)-(\d+(?:\.\d+)?)(?= ?" + Unit + ")")]
    private static partial Regex HyphenSpan();

    [GeneratedRegex(@"(?<![\w)])\+\s*(?=[\d½⅓⅔¼¾])")]
    private static partial Regex Plus();

    [GeneratedRegex(@"(?<![\w)-])-(?=[\d½⅓⅔¼¾])")]
    private static partial Regex Minus();

    [GeneratedRegex(@"[~≈]\s*(?=\d)")]
    private static partial Regex About();

    [GeneratedRegex(@"([<>])\s*(?=\d)")]
    private static partial Regex MoreOrLess();

    [GeneratedRegex(@"\b(\d+) d (\d{1,2}):(\d\d) h\b")]
    private static partial Regex DaysAndHours();

    [GeneratedRegex(@"(?<![\w:.])(\d+):(\d\d):(\d\d)(?![\w:])")]
    private static partial Regex HoursToSeconds();

    // After a day or a word for one it is the time of that day, and stays.
    [GeneratedRegex(@"(?<!(?:today|yesterday|tomorrow|at|from|since|until|Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sep|Oct|Nov|Dec|\d{4}|-\d\d) )(?<![\w:.])(\d+):(\d\d)(?![\w:])")]
    private static partial Regex MinutesAndSeconds();

    [GeneratedRegex(Number + @" ?([½⅓⅔¼¾]) ?" + Unit)]
    private static partial Regex MixedOfUnit();

    [GeneratedRegex(@"([½⅓⅔¼¾]) ?" + Unit)]
    private static partial Regex FractionOfUnit();

    [GeneratedRegex(Number + @" ?([½⅓⅔¼¾])")]
    private static partial Regex Mixed();

    [GeneratedRegex("[½⅓⅔¼¾]")]
    private static partial Regex Fraction();

    [GeneratedRegex(Number + " ?" + Unit)]
    private static partial Regex NumberOfUnit();

    // A question about a figure names its unit behind a comma.
    [GeneratedRegex(", (" + SpokenUnits.Written + @")(?=\s*[(?]|$)")]
    private static partial Regex BareUnit();

    // A compartment or a number of a job: letter and figures together are spelled, "A 1" is said like "a one".
    [GeneratedRegex(@"\b([A-Z])-(\d{1,6})\b")]
    private static partial Regex Label();

    [GeneratedRegex(@"(?<=\p{L})[-_‐‑](?=[\p{L}\d])|(?<=\d)[-_‐‑](?=\p{L})")]
    private static partial Regex Hyphen();

    [GeneratedRegex(@"\b(?:e\.g\.|i\.e\.|approx\.|incl\.)|&|×|=|°|%|(?<=\p{L})/(?=\p{L})")]
    private static partial Regex Abbreviation();

    [GeneratedRegex(@"\s*(?:[→›»|·•]|\s[–—-]\s)\s*")]
    private static partial Regex Rest();

    [GeneratedRegex(@"[^\w\s.,;:?!'""()\-–—+/\p{M}]")]
    private static partial Regex Drawn();

    [GeneratedRegex(@"""|(?<!\w)'|'(?!\w)|_+|(?<!\w)-+(?=\w)|--+")]
    private static partial Regex Quote();

    [GeneratedRegex(@"\(\s*[,;:]*\s*\)")]
    private static partial Regex Empty();

    [GeneratedRegex(@"\s+")]
    private static partial Regex Spaces();

    [GeneratedRegex(@" ([,.;:?!)])")]
    private static partial Regex BeforeStop();

    [GeneratedRegex(@"[,;:.?!](?:\s*[,;:.?!])+(?!\d)")]
    private static partial Regex Stops();
}
