using System.Globalization;

namespace ServiceRunner.Core.Quantities;

/// <summary>
/// A number as a person typed it, and what it means. The typed form is kept for the record: <c>0,030</c> says more
/// than 0.03. Point and comma are both decimal marks; a text that could also be thousands, such as <c>1,234</c> or
/// <c>1.234</c>, is ambiguous only with a comma: the point is the mark of the files, so <c>1.234</c> is read.
/// </summary>
public readonly record struct TypedNumber
{
    private TypedNumber(string asTyped, decimal value) => (AsTyped, Value) = (asTyped, value);

    /// <summary>The characters as typed, trimmed.</summary>
    public string AsTyped { get; }

    /// <summary>What they mean.</summary>
    public decimal Value { get; }

    /// <summary>A number that nobody typed, written in the shortest invariant form.</summary>
    public static TypedNumber Of(decimal value) => new(value.ToString(CultureInfo.InvariantCulture), value);

    /// <summary>Why a text is not a number.</summary>
    public enum Fault
    {
        /// <summary>It is a number.</summary>
        None,

        /// <summary>There is nothing.</summary>
        Empty,

        /// <summary>It is not a number at all.</summary>
        NotANumber,

        /// <summary>It could be read in two ways: a comma before exactly three digits, or both marks at once.</summary>
        Ambiguous,
    }

    /// <summary>Reads a decimal number with an optional sign (also the typographic minus).</summary>
    /// <param name="text">What was typed.</param>
    /// <param name="number">The number, if the result is <see cref="Fault.None"/>.</param>
    /// <returns>Why not, or <see cref="Fault.None"/>.</returns>
    public static Fault Read(string text, out TypedNumber number)
    {
        number = default;
        string typed = text.Trim();
        if (typed.Length == 0) return Fault.Empty;
        string plain = typed.Replace('\u2212', '-').TrimStart('+');
        if (plain.Length == 0 || (typed[0] == '+' && plain[0] is '+' or '-')) return Fault.NotANumber;
        int commas = plain.Count(c => c == ','), points = plain.Count(c => c == '.');
        if (plain.Any(c => !char.IsAsciiDigit(c) && c is not (',' or '.' or '-'))) return Fault.NotANumber;
        if (commas + points > 1) return plain.Any(char.IsAsciiDigit) ? Fault.Ambiguous : Fault.NotANumber;
        if (commas == 1 && ThousandsLike(plain)) return Fault.Ambiguous;
        if (!decimal.TryParse(plain.Replace(',', '.'), NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out decimal value))
            return Fault.NotANumber;
        number = new TypedNumber(typed, value);
        return Fault.None;
    }

    /// <inheritdoc/>
    public override string ToString() => AsTyped ?? "0";

    // 1,234 and 12,345: one to three digits that do not start with a nought, a comma, exactly three digits.
    private static bool ThousandsLike(string plain)
    {
        string digits = plain.TrimStart('-');
        int comma = digits.IndexOf(',');
        return comma is >= 1 and <= 3 && digits.Length - comma - 1 == 3 && digits[0] != '0';
    }
}
