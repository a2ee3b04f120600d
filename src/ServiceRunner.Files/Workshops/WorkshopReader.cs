using ServiceRunner.Core.Quantities;
using ServiceRunner.Core.Workshops;
using ServiceRunner.Files.Checks;
using ServiceRunner.Files.Checks.Reading;
using ServiceRunner.Files.Procedures;
using ServiceRunner.Files.Yaml;

namespace ServiceRunner.Files.Workshops;

/// <summary>What came of reading a workshop file.</summary>
/// <param name="Workshop">As much of it as could be read; null if nothing could. Ask <see cref="HasErrors"/> before using it.</param>
/// <param name="Source">The text; null if there was none.</param>
/// <param name="Diagnostics">What is wrong with how it is written, in the order of the file.</param>
public sealed record ReadWorkshop(Workshop? Workshop, SourceText? Source, IReadOnlyList<Diagnostic> Diagnostics)
{
    /// <summary>True if it cannot be used.</summary>
    public bool HasErrors => Workshop is null || Diagnostics.Any(d => d.Severity == Severity.Error);
}

/// <summary>Reads the workshop file. See docs/workshop-file.md.</summary>
public static class WorkshopReader
{
    private static readonly string[] Keys =
        ["workshop", "format", "name", "people", "room", "liquids", "jars", "machines", "lubricants", "instruments", "pedal", "voice", "reasons-for", "witness", "prefers", "numbers-begin", "currency"];

    private static readonly string[] Needed = ["workshop", "format", "name", "people"];

    /// <summary>Reads a text.</summary>
    public static ReadWorkshop Read(string name, string text) => Read(LoadedFile.OfText(name, name, text));

    /// <summary>Reads a file.</summary>
    public static ReadWorkshop ReadFile(string path) => Read(LoadedFile.OfPath(path, path));

    internal static ReadWorkshop Read(LoadedFile file)
    {
        YMap? root = file.TakeRoot();
        List<Diagnostic> found = [.. file.Found];
        Workshop? workshop = root is null ? null : Read(new ValueReader(file.ShownAs, found), root);
        found.Sort((a, b) => (a.Place.Line, a.Place.Column).CompareTo((b.Place.Line, b.Place.Column)));
        return new ReadWorkshop(workshop, file.Source, found);
    }

    private static Workshop Read(ValueReader values, YMap root)
    {
        Workshop workshop = new() { Id = new("", root.At), Name = "", People = [] };
        foreach (YEntry entry in root.Entries)
        {
            switch (entry.Key.Value)
            {
                case "workshop": workshop = workshop with { Id = values.Name(entry) ?? workshop.Id }; break;
                case "format": HeadReader.Format(values, entry); break;
                case "name": workshop = workshop with { Name = values.Text(entry) }; break;
                case "people": workshop = workshop with { People = People(values, entry) }; break;
                case "room": workshop = workshop with { Room = Room(values, entry) }; break;
                case "liquids": workshop = workshop with { Liquids = LiquidReader.Liquids(values, entry) }; break;
                case "jars": workshop = workshop with { Jars = LiquidReader.Jars(values, entry) }; break;
                case "machines": workshop = workshop with { Machines = LiquidReader.Machines(values, entry) }; break;
                case "lubricants": workshop = workshop with { Lubricants = LubricantReader.Read(values, entry) }; break;
                case "instruments": workshop = workshop with { Instruments = InstrumentReader.Read(values, entry) }; break;
                case "pedal": workshop = workshop with { Pedal = BenchReader.Pedal(values, entry) }; break;
                case "voice": workshop = workshop with { Voice = BenchReader.Voice(values, entry) }; break;
                case "reasons-for": workshop = workshop with { ReasonsFor = values.WordsOf(entry, Core.Jobs.Deviation.Kinds) }; break;
                case "witness": workshop = workshop with { Witness = Witness(values, entry) }; break;
                case "prefers": workshop = workshop with { Prefers = Prefers(values, entry) }; break;
                case "numbers-begin": workshop = workshop with { NumberPrefix = values.Text(entry) }; break;
                case "currency": workshop = workshop with { Currency = values.Text(entry) }; break;
                default: values.Unknown(entry, "a workshop", Keys); break;
            }
        }
        foreach (string key in Needed)
        {
            if (root[key] is null) values.Missing(root.At, key, "a workshop", key == "format" ? "This version writes format: 1." : "");
        }
        return workshop;
    }

    private static List<Person> People(ValueReader values, YEntry entry)
    {
        List<Person> people = [];
        foreach (YNode item in values.Items(entry))
        {
            if (values.Map(item, "people") is not { } map) continue;
            Placed<string> initials = new("", map.At);
            string name = "";
            bool reviews = false;
            foreach (YEntry inner in map.Entries)
            {
                switch (inner.Key.Value)
                {
                    case "initials": initials = Initials(values, inner) ?? initials; break;
                    case "name": name = values.Text(inner); break;
                    case "reviews": reviews = values.Yes(inner); break;
                    default: values.Unknown(inner, "a person", ["initials", "name", "reviews"]); break;
                }
            }
            if (map["initials"] is null) values.Missing(map.At, "initials", "a person");
            if (map["name"] is null) values.Missing(map.At, "name", "a person");
            people.Add(new Person(initials, name, reviews));
        }
        return people;
    }

    // The log knows people by their initials: letters and digits only, so that they can stand anywhere.
    private static Placed<string>? Initials(ValueReader values, YEntry entry)
    {
        if (values.PlacedText(entry) is not { } text) return null;
        if (text.Value.Length > 6 || !text.Value.All(char.IsLetterOrDigit))
            values.Add(WrongForm.Of(values.File, text.At, "initials", text.Value, "with one to six letters or digits"));
        return text;
    }

    private static Room? Room(ValueReader values, YEntry entry)
    {
        if (values.Map(entry.Value, "room") is not { } map) return null;
        Room room = new(null, null, null);
        foreach (YEntry inner in map.Entries)
        {
            switch (inner.Key.Value)
            {
                case "volume": room = room with { CubicMetres = values.Quantity(inner, "38 m3", "m3", "m³") }; break;
                case "air-changes": room = room with { AirChangesPerHour = values.Quantity(inner, "3 per hour", "per hour", "/h") }; break;
                case "temperature": room = room with { Celsius = values.Celsius(inner) }; break;
                default: values.Unknown(inner, "'room'", ["volume", "air-changes", "temperature"]); break;
            }
        }
        return room;
    }

    private static WitnessWish Witness(ValueReader values, YEntry entry) =>
        values.Word(entry, ["wanted", "optional", "never"])?.Value switch { "wanted" => WitnessWish.Wanted, "never" => WitnessWish.Never, _ => WitnessWish.Optional };

    private static Dictionary<string, string> Prefers(ValueReader values, YEntry entry)
    {
        Dictionary<string, string> prefers = new(StringComparer.Ordinal);
        if (values.Map(entry.Value, "prefers") is not { } map) return prefers;
        foreach (YEntry inner in map.Entries) prefers[values.Name(inner.Key, "prefers").Value] = values.Text(inner);
        return prefers;
    }
}
