using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Files.Checks.Reading;

internal static class YamlSyntax
{
    public static readonly Rule Rule = new(
        "yaml-syntax", Severity.Error, "The text cannot be read as YAML",
        "A bracket, a quotation mark, a colon or the indentation is not as it should be. Nothing after this place can be " +
        "read, so that further faults may show once it is put right.");

    // What the parser says (a part of it), what we say, and what helps.
    private static readonly (string Part, string Message, string Hint)[] Sentences =
    [
        ("found invalid mapping",
            "a colon stands here where it cannot be read",
            "Put a text that has a colon and a blank in it into quotation marks; lines of one list of keys are indented alike."),
        ("cannot start any token", "a text cannot begin with this character", "Put it into quotation marks."),
        ("',' or ']'", "the list in brackets goes wrong here: a comma or ] is missing", "In brackets, values are parted by commas and the list ends with ]."),
        ("',' or '}'", "the keys in braces go wrong here: a comma or } is missing", "In braces, keys are parted by commas and end with }."),
        ("did not find expected '-' indicator",
            "a list goes on here with something that has no hyphen",
            "Indent it under the list's last item, or begin it with a hyphen."),
        ("did not find expected key", "a key was expected here", "Lines of one list of keys are indented alike, and each has a key and a colon."),
        ("quoted scalar, found unexpected end", "a quotation mark is opened here and never closed", "Close it."),
        ("unknown escape character",
            "a backslash in double quotation marks is followed by a character that means nothing here",
            "Use single quotation marks, or write the backslash twice."),
        ("could not find expected ':'", "a key without its colon", "A key is followed by a colon and a blank."),
        ("indentation", "the indentation goes wrong here", "Lines of one list of keys are indented alike."),
        ("did not find expected <document start>", "something stands here after the end of the text", "Indent it as the lines before it."),
    ];

    public static Diagnostic From(string file, string text, Place at, string parserSays, Place? opened)
    {
        if (TabFrom(text, at, parserSays) is { } tab)
            return Rule.At(file, tab, "a tab is used for indentation", "Use blanks: two for each level.");
        foreach ((string part, string message, string hint) in Sentences)
        {
            if (!parserSays.Contains(part, StringComparison.Ordinal)) continue;
            bool bracket = part[0] == '\'' && opened is not null && opened != at;
            return Rule.At(file, at, message, bracket ? $"{hint} It was opened in line {opened!.Value.Line}, column {opened.Value.Column}." : hint);
        }
        if (opened is { } open)
            return Rule.At(file, open, "a bracket or brace is opened here and not closed", "Close it before the next key.");
        return Rule.At(file, at, "the text cannot be read from here on", "Look for a bracket, a quotation mark or a colon too many or too few.");
    }

    // The parser names the place of a tab only roughly: the first line near it that is indented with one is meant.
    private static Place? TabFrom(string text, Place at, string parserSays)
    {
        if (!parserSays.Contains("tab", StringComparison.Ordinal) && !parserSays.Contains("cannot start any token", StringComparison.Ordinal)) return null;
        int line = 1;
        foreach (ReadOnlySpan<char> content in text.AsSpan().EnumerateLines())
        {
            int indent = content.IndexOfAnyExcept(' ', '\t');
            int tab = content.IndexOf('\t');
            if (line >= at.Line && tab >= 0 && tab < indent) return new Place(line, tab + 1);
            if (line > at.Line + 1) return null;
            line++;
        }
        return null;
    }
}
