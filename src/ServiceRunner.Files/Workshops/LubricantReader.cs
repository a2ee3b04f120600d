using ServiceRunner.Core.Procedures;
using ServiceRunner.Core.Workshops;
using ServiceRunner.Files.Checks.Reading;
using ServiceRunner.Files.Yaml;

namespace ServiceRunner.Files.Workshops;

/// <summary>Reads the oils and greases on the shelf.</summary>
internal static class LubricantReader
{
    private static readonly string[] Keys = ["lubricant", "name", "roles", "grade", "viscosity", "grease", "good-for"];
    private static readonly string[] Roles = [.. Vocabulary.Roles.Where(r => r != OilingPoint.Never)];

    // ISO 3448: the mid-point kinematic viscosity at 40 °C in mm²/s is the grade's number.
    private static readonly int[] Grades = [2, 3, 5, 7, 10, 15, 22, 32, 46, 68, 100, 150, 220, 320, 460, 680, 1000, 1500, 2200, 3200];

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
                    case "viscosity": lubricant = lubricant with { Viscosity = Viscosity(values, inner) }; break;
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
        foreach (int grade in Grades)
        {
            if (number == grade.ToString(System.Globalization.CultureInfo.InvariantCulture)) return grade;
        }
        values.Add(WrongForm.Of(values.File, text.At, "grade", text.Value, $"like ISO VG 32; the grades are {string.Join(", ", Grades)}"));
        return null;
    }

    private static ViscosityAt? Viscosity(ValueReader values, YEntry entry)
    {
        if (values.Single(entry) is not { } text) return null;
        if (text.Value.Split(" at ") is [var viscosity, var temperature]
            && Amount(viscosity, "mm2/s", "mm²/s", "cSt") is { } amount && Amount(temperature, "°C") is { } celsius)
        {
            decimal? mm2 = values.Number(amount, text.At, "viscosity"), at = values.Number(celsius, text.At, "viscosity");
            if (mm2 is <= 0) values.Add(NotANumber.Range(values.File, text.At, "viscosity", text.Value, "more than 0 mm2/s"));
            else if (mm2 is { } square && at is { } degrees) return new ViscosityAt(square, degrees);
            return null;
        }
        values.Add(BadUnit.Of(values.File, text.At, "viscosity", text.Value, "120 mm2/s at 20 °C"));
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
