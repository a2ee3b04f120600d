using System.Globalization;
using ServiceRunner.Core.Quantities;
using ServiceRunner.Core.Workshops;
using ServiceRunner.Files.Checks.Reading;
using ServiceRunner.Files.Yaml;

namespace ServiceRunner.Files.Workshops;

/// <summary>Reads what measures.</summary>
internal static class InstrumentReader
{
    private static readonly string[] Keys = ["instrument", "name", "unit", "checked"];

    public static List<Instrument> Read(ValueReader values, YEntry entry)
    {
        List<Instrument> instruments = [];
        foreach (YNode item in values.Items(entry))
        {
            if (values.Map(item, "instruments") is not { } map) continue;
            Instrument instrument = new(new Placed<string>("", map.At), "", [], null);
            foreach (YEntry inner in map.Entries)
            {
                switch (inner.Key.Value)
                {
                    case "instrument": instrument = instrument with { Id = values.Name(inner) ?? instrument.Id }; break;
                    case "name": instrument = instrument with { Name = values.Text(inner) }; break;
                    case "unit": instrument = instrument with { Units = values.Texts(inner) }; break;
                    case "checked": instrument = instrument with { Checked = Day(values, inner) }; break;
                    default: values.Unknown(inner, "an instrument", Keys); break;
                }
            }
            LiquidReader.Need(values, map, "an instrument", "instrument", "name", "unit");
            instruments.Add(instrument);
        }
        return instruments;
    }

    private static DateOnly? Day(ValueReader values, YEntry entry)
    {
        if (values.Single(entry) is not { } text) return null;
        if (DateOnly.TryParseExact(text.Value.Trim(), "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly day)) return day;
        values.Add(WrongForm.Of(values.File, text.At, entry.Key.Value, text.Value, "as a day, like 2026-01-15"));
        return null;
    }
}
