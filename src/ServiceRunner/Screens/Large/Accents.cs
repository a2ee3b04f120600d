namespace ServiceRunner.Screens.Large;

/// <summary>
/// Marks over and under letters. Tall letters have no room for a mark: capitals are drawn lower under it, other tall
/// letters stand without it. The pairs are listed here because the program runs without the tables of languages.
/// </summary>
internal static class Accents
{
    // The marks as they stand in the top row, or in the lowest (¸).
    private static readonly Dictionary<char, string> Marks = new()
    {
        ['´'] = "..##", ['`'] = "##..", ['^'] = ".##.", ['¨'] = "#..#", ['~'] = "#.##", ['˚'] = ".##.", ['¯'] = "####", ['˙'] = ".##.", ['¸'] = ".##.",
    };

    private static readonly Dictionary<char, char> Combining = new()
    {
        ['\u0301'] = '´', ['\u0300'] = '`', ['\u0302'] = '^', ['\u0308'] = '¨', ['\u0303'] = '~', ['\u030A'] = '˚', ['\u0304'] = '¯', ['\u0307'] = '˙', ['\u0327'] = '¸', ['\u0328'] = '¸',
    };

    // A blank for marks that would not be told from others in one row, and for strokes through a letter: they are left off.
    private static readonly (char Mark, string Whole, string Base)[] Families =
    [
        ('´', "áéíóúýćńśźŕĺÁÉÍÓÚÝĆŃŚŹŔĹ", "aeıouycnszrlAEIOUYCNSZRL"),
        ('`', "àèìòùÀÈÌÒÙ", "aeıouAEIOU"),
        ('^', "âêîôûŵŷÂÊÎÔÛŴŶ", "aeıouwyAEIOUWY"),
        ('¨', "äëïöüÿÄËÏÖÜŸőűŐŰ", "aeıouyAEIOUYouOU"),
        ('~', "ãñõÃÑÕ", "anoANO"),
        ('˚', "åůÅŮ", "auAU"),
        ('¯', "āēīōūĀĒĪŌŪ", "aeıouAEIOU"),
        ('˙', "ċėġżĊĖĠŻİ", "cegzCEGZI"),
        ('¸', "çşţąęįÇŞŢĄĘĮ", "cstaeiCSTAEI"),
        (' ', "čďěňřšťžČĎĚŇŘŠŤŽăĂğĞľĽłŁøØđĐðÐħĦŧŦ", "cdenrstzCDENRSTZaAgGlLlLoOdDdDhHtT"),
    ];

    private static readonly Dictionary<char, (char Base, char Mark)> Composed = Families
        .SelectMany(f => f.Whole.Zip(f.Base, (whole, letter) => (whole, (letter, f.Mark)))).ToDictionary();

    /// <summary>All letters that are drawn from another one.</summary>
    public static IEnumerable<char> Letters => Composed.Keys;

    /// <summary>What a letter is composed of; the mark is a blank where it is left off.</summary>
    public static bool TryTakeApart(char whole, out char letter, out char mark)
    {
        bool known = Composed.TryGetValue(whole, out (char Base, char Mark) parts);
        (letter, mark) = parts;
        return known;
    }

    /// <summary>The mark that a combining character stands for, or a blank.</summary>
    public static char OfCombining(char combining) => Combining.GetValueOrDefault(combining, ' ');

    /// <summary>A letter with a mark, or the letter alone where the mark finds no room.</summary>
    public static string[] Put(char mark, string[] letter, bool isCapital)
    {
        if (!Marks.TryGetValue(mark, out string? shape)) return letter;
        int width = Math.Max(letter[0].Length, shape.Length);
        string[] rows = [.. letter.Select(r => Centred(r, width))];
        int at = mark == '¸' ? LargeLetters.Pixels - 1 : 0;
        if (at == 0 && isCapital) rows = [new string('.', width), new string('.', width), rows[0], rows[2], rows[3], rows[4], rows[6], rows[7]];
        if (Array.Exists(at == 0 ? rows[..2] : rows[at..], r => r.Contains('#', StringComparison.Ordinal))) return letter;
        rows[at] = Centred(shape, width);
        return rows;
    }

    private static string Centred(string row, int width) => row.PadLeft((width + row.Length) / 2, '.').PadRight(width, '.');
}
