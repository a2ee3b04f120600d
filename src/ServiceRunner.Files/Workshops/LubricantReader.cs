using System.Globalization;
using ServiceRunner.Core.Lubricants;
using ServiceRunner.Core.Procedures;
using ServiceRunner.Core.Quantities;
using ServiceRunner.Core.Workshops;
using ServiceRunner.Files.Checks.Reading;
using ServiceRunner.Files.Yaml;

namespace ServiceRunner.Files.Workshops;

/// <summary>Reads the oils and greases on the shelf.</summary>
internal static class LubricantReader
{
    private static readonly string[] Keys = ["lubricant", "name", "roles", "grade", "viscosity", "viscosity-index", "grease", "good-for"];
    private static readonly string[] Roles = [.. Vocabulary.Roles.Where(r => r != OilingPoint.Never)];

    public static List<Lubricant> Read(ValueReader values, YEntry entry)
    {
        List<Lubricant> lubricants = [];
        foreach (YNode item in values.Items(entry))
        {
            if (values.Map(item, "lubricants") is not { } map) continue;
            Lubricant lubricant = new() { Id = new("", map.At), Name = "", Roles = [] };
            foreach (YEntry inner in map.Entries)
            {
                switch (inner.Key.Value)
                {
                    case "lubricant": lubricant = lubricant with { Id = values.Name(inner) ?? lubricant.Id }; break;
                    case "name": lubricant = lubricant with { Name = values.Text(inner) }; break;
                    case "roles": lubricant = lubricant with { Roles = values.WordsOf(inner, Roles) }; break;
                    case "grade": lubricant = lubricant with { IsoGrade = Grade(values, inner) }; break;
                    case "viscosity": lubricant = Viscosities(values, inner, lubricant); break;
                    case "viscosity-index": lubricant = lubricant with { ViscosityIndex = Index(values, inner) }; break;
                    case "grease": lubricant = lubricant with { Grease = values.Yes(inner) }; break;
                    case "good-for": lubricant = lubricant with { GoodForDays = Days(values, inner) }; break;
                    default: values.Unknown(inner, "a lubricant", Keys); break;
                }
            }
            LiquidReader.Need(values, map, "a lubricant", "lubricant", "name", "roles");
            lubricants.Add(lubricant);
        }
        return lubricants;
    }

    private static int? Grade(ValueReader values, YEntry entry)
    {
        if (values.Single(entry) is not { } text) return null;
        const string prefix = "ISO VG ";
        string number = text.Value.StartsWith(prefix, StringComparison.Ordinal) ? text.Value[prefix.Length..].Trim() : "";
        foreach (int grade in IsoGrade.All)
        {
            if (number == grade.ToString(CultureInfo.InvariantCulture)) return grade;
        }
        values.Add(WrongForm.Of(values.File, text.At, "grade", text.Value, $"like ISO VG 32; the grades are {string.Join(", ", IsoGrade.All)}"));
        return null;
    }

    // One viscosity, or two at two temperatures.
    private static Lubricant Viscosities(ValueReader values, YEntry entry, Lubricant lubricant)
    {
        List<Placed<string>> texts = values.Texts(entry);
        if (texts.Count > 2) values.Add(WrongForm.Count(values.File, entry.Value.At, "viscosity", 2, texts.Count, "like [120 mm2/s at 20 °C, 12 mm2/s at 100 °C]"));
        if (texts.Count is 0 or > 2) return lubricant;
        List<ViscosityAt?> read = [.. texts.Select(t => Viscosity(values, t))];
        if (read is [{ } one, { } other] && ViscosityLine.Through(one, other) is null)
            values.Add(WrongForm.Of(values.File, texts[1].At, "viscosity", texts[1].Value, "at another temperature than the first, with less at the higher one, and 2 mm2/s or more"));
        return lubricant with { Viscosity = read[0], SecondViscosity = read.Count > 1 ? read[1] : null };
    }

    private static ViscosityAt? Viscosity(ValueReader values, Placed<string> text)
    {
        if (text.Value.Split(" at ") is [var viscosity, var temperature]
            && Amount(viscosity, "mm2/s", "mm²/s", "cSt") is { } amount && Amount(temperature, "°C") is { } celsius)
        {
            decimal? mm2 = values.Number(amount, text.At, "viscosity"), at = values.Number(celsius, text.At, "viscosity");
            if (mm2 is <= 0) values.Add(NotANumber.Range(values.File, text.At, "viscosity", text.Value, "more than 0 mm2/s"));
            else if (at is < -50 or > 200) values.Add(NotANumber.Range(values.File, text.At, "viscosity", text.Value, "at -50 to 200 °C"));
            else if (mm2 is { } square && at is { } degrees) return new ViscosityAt(square, degrees);
            return null;
        }
        values.Add(BadUnit.Of(values.File, text.At, "viscosity", text.Value, "120 mm2/s at 20 °C"));
        return null;
    }

    private static decimal? Index(ValueReader values, YEntry entry)
    {
        if (values.Number(entry) is not { } index) return null;
        (decimal least, decimal most) = ViscosityIndex.Range;
        if (index >= least && index <= most) return index;
        values.Add(NotANumber.Range(values.File, entry.Value.At, "viscosity-index", ((YText)entry.Value).Value, string.Create(CultureInfo.InvariantCulture, $"from {least} to {most}")));
        return null;
    }

    private static string? Amount(string text, params ReadOnlySpan<string> units)
    {
        foreach (string unit in units)
        {
            if (text.TrimEnd().EndsWith(unit, StringComparison.Ordinal)) return text.TrimEnd()[..^unit.Length].Trim();
        }
        return null;
    }

    private static int? Days(ValueReader values, YEntry entry)
    {
        if (entry.Value is YText { Value: var text } && text.TrimEnd().EndsWith('y'))
            return values.Quantity(entry, "2 y or 730 d", "y") is { } years and > 0 and <= 100 ? (int)Math.Round(years * 365) : null;
        return values.Duration(entry) is { } length ? (int)Math.Ceiling(length.TotalDays) : null;
    }
}
