using System.Globalization;
using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Files.Checks;

/// <summary>
/// Diagnostics as text, one a line in the form that editors and compilers have made usual, with its hint under it, and a
/// sentence at the end.
/// </summary>
public static class DiagnosticText
{
    /// <summary>Writes them all.</summary>
    /// <param name="diagnostics">In the order to be written.</param>
    /// <param name="files">How many files were looked at.</param>
    /// <param name="to">Takes the text.</param>
    public static void Write(IEnumerable<Diagnostic> diagnostics, int files, TextWriter to)
    {
        List<Diagnostic> all = [.. diagnostics];
        foreach (Diagnostic diagnostic in all) to.Write(Line(diagnostic));
        to.Write(Summary(all, files) + "\n");
    }

    /// <summary>One of them with its hint, each line ended.</summary>
    public static string Line(Diagnostic diagnostic)
    {
        string place = diagnostic.Place == default ? "" : string.Create(CultureInfo.InvariantCulture, $":{diagnostic.Place.Line}:{diagnostic.Place.Column}");
        string line = $"{Plain(diagnostic.File)}{place}: {Name(diagnostic.Severity)} {diagnostic.Code}: {Plain(diagnostic.Message)}\n";
        return diagnostic.Hint.Length == 0 ? line : $"{line}    {Plain(diagnostic.Hint)}\n";
    }

    /// <summary><c>3 files looked at: 1 error, 2 warnings.</c></summary>
    public static string Summary(IReadOnlyCollection<Diagnostic> diagnostics, int files)
    {
        if (files == 0 && diagnostics.Count == 0) return "No procedure or workshop file was found.";
        string[] counts =
        [
            .. from severity in (Severity[])[Severity.Error, Severity.Warning, Severity.Note]
               let count = diagnostics.Count(d => d.Severity == severity)
               where count > 0
               select Words.Count(count, Name(severity)),
        ];
        return $"{Words.Count(files, "file")} looked at: {(counts.Length == 0 ? "nothing to say" : string.Join(", ", counts))}.";
    }

    /// <summary>The word for a severity.</summary>
    public static string Name(Severity severity) => severity switch
    {
        Severity.Error => "error",
        Severity.Warning => "warning",
        _ => "note",
    };

    // What a file says is shown on a terminal: nothing of it may move the cursor or ring the bell.
    private static string Plain(string text)
    {
        if (!text.AsSpan().ContainsAnyInRange('\0', '\u001F') && Reading.ControlCharacter.In(text) is null) return text;
        return string.Concat(text.Select(c => c < ' ' || Reading.ControlCharacter.In(c.ToString()) is not null ? '\uFFFD' : c));
    }
}
