using System.Globalization;
using System.Runtime.CompilerServices;
using System.Text;
using ServiceRunner.Files.Sentences;

namespace ServiceRunner.Files.Reports;

/// <summary>
/// A piece of a page. It can only be made from an interpolated string: what stands in the source is markup, what stands
/// in a hole is text and is escaped, unless it is such a piece itself. So nothing that was typed can become markup.
/// </summary>
internal readonly struct Html
{
    private readonly string? _markup;

    private Html(string markup) => _markup = markup;

    /// <summary>Makes a piece.</summary>
    public static Html Of(HtmlHoles pieces) => new(pieces.Text);

    /// <summary>Pieces one after the other.</summary>
    public static Html All(IEnumerable<Html> pieces) => new(string.Concat(pieces));

    /// <summary>Pieces with the same one between them.</summary>
    public static Html Between(string text, IEnumerable<Html> pieces) => new(string.Join(Escaped(text), pieces));

    /// <summary>A piece, or nothing.</summary>
    public static Html If(bool condition, Func<Html> piece) => condition ? piece() : default;

    /// <inheritdoc/>
    public override string ToString() => _markup ?? "";

    internal static string Escaped(string text)
    {
        StringBuilder escaped = new(text.Length);
        foreach (Rune rune in text.EnumerateRunes()) // a lone surrogate comes as U+FFFD
        {
            switch (rune.Value)
            {
                case '&': escaped.Append("&amp;"); break;
                case '<': escaped.Append("&lt;"); break;
                case '>': escaped.Append("&gt;"); break;
                case '"': escaped.Append("&quot;"); break;
                case '\'': escaped.Append("&#39;"); break;
                default: escaped.Append(PlainText.Moves(rune) ? "·" : rune.ToString()); break;
            }
        }
        return escaped.ToString();
    }
}

/// <summary>Gathers the pieces of an <see cref="Html"/>.</summary>
[InterpolatedStringHandler]
internal readonly ref struct HtmlHoles(int literalLength, int formattedCount)
{
    private readonly StringBuilder _text = new(literalLength + 24 * formattedCount);

    public string Text => _text.ToString();

    // A source file may have come with other line ends, and a browser hashes the style sheet with these.
    public void AppendLiteral(string markup) => _text.Append(markup.ReplaceLineEndings("\n"));

    public void AppendFormatted(string text) => _text.Append(Html.Escaped(text));

    public void AppendFormatted(int number) => _text.Append(CultureInfo.InvariantCulture, $"{number}");

    // Tenths are finer than a printer's dot at the size of the maps.
    public void AppendFormatted(double number) => _text.Append(Math.Round(number, 1).ToString(CultureInfo.InvariantCulture));

    public void AppendFormatted(Html piece) => _text.Append(piece.ToString());

    public void AppendFormatted(IEnumerable<Html> pieces)
    {
        foreach (Html piece in pieces) _text.Append(piece.ToString());
    }
}
