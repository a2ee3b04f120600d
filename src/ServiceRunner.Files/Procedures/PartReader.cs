using ServiceRunner.Core.Procedures;
using ServiceRunner.Core.Quantities;
using ServiceRunner.Files.Yaml;

namespace ServiceRunner.Files.Procedures;

/// <summary>Reads the list of parts.</summary>
internal static class PartReader
{
    private static readonly string[] Keys =
        ["part", "name", "compartment", "kind", "of", "set-with", "finished", "delicate", "seat", "under", "under-power", "jewels", "count", "stays"];

    public static void Read(ValueReader values, YEntry entry, List<Part> parts)
    {
        foreach (YNode item in values.Items(entry))
        {
            if (values.Map(item, "parts") is { } map) parts.Add(One(values, map));
        }
    }

    private static Part One(ValueReader values, YMap map)
    {
        Part part = new() { Id = new("", map.At), Name = "" };
        foreach (YEntry entry in map.Entries)
        {
            part = entry.Key.Value switch
            {
                "part" => part with { Id = values.Name(entry) ?? part.Id },
                "name" => part with { Name = values.Text(entry) },
                "compartment" => part with { Compartment = values.Text(entry) },
                "kind" => part with { Kind = values.Word(entry, Vocabulary.PartKinds)?.Value ?? part.Kind },
                "of" => part with { Of = values.Texts(entry) },
                "set-with" => part with { SetWith = values.Texts(entry) },
                "finished" => part with { Finished = values.Texts(entry) },
                "delicate" => part with { Delicate = values.WordsOf(entry, Vocabulary.Harms) },
                "seat" => part with { Seat = values.PlacedText(entry) },
                "under" => part with { Under = values.Texts(entry) },
                "under-power" => part with { UnderPower = values.Yes(entry) },
                "jewels" => part with { Jewels = values.Whole(entry, least: 0) ?? 0 },
                "count" => part with { Count = values.Whole(entry) ?? 1 },
                "stays" => part with { Stays = values.Yes(entry) },
                _ => Unknown(values, entry, part),
            };
        }
        if (map["part"] is null) values.Missing(map.At, "part", "a part");
        if (map["name"] is null) values.Missing(map.At, "name", "a part");
        return part;
    }

    private static Part Unknown(ValueReader values, YEntry entry, Part part)
    {
        values.Unknown(entry, "a part", Keys);
        return part;
    }
}
