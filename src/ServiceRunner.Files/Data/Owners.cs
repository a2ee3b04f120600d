using System.Buffers;
using System.Text.Json;

namespace ServiceRunner.Files.Data;

/// <summary>An owner's name and how to reach them. None of it ever stands in the journal.</summary>
/// <param name="Name">As they are called.</param>
/// <param name="Contact">How to reach them in any other way than those below.</param>
public sealed record Owner(string Name, string Contact = "")
{
    public string Telephone { get; init; } = "";
    public string Mail { get; init; } = "";
    public string Address { get; init; } = "";

    /// <summary>How to reach them, one line each; only what was given.</summary>
    public IEnumerable<string> Lines => new[] { Telephone, Mail, Address, Contact }.Where(l => l.Length > 0);

    /// <summary>True if nothing is known of them.</summary>
    public bool IsNobody => Name.Length == 0 && !Lines.Any();
}

/// <summary>
/// Owners beside the log, one file each, by id. The journal holds the id only, so that a person can be erased and
/// every chain stays whole.
/// </summary>
public sealed class Owners(DataFolder folder)
{
    /// <summary>Saves an owner; null when it is on the disk.</summary>
    public DataFault? Save(string id, Owner owner)
    {
        ArrayBufferWriter<byte> json = new();
        using (Utf8JsonWriter writer = new(json))
        {
            writer.WriteStartObject();
            writer.WriteNumber("v", 2);
            writer.WriteString("name", owner.Name);
            Line(writer, "telephone", owner.Telephone);
            Line(writer, "mail", owner.Mail);
            Line(writer, "address", owner.Address);
            Line(writer, "contact", owner.Contact);
            writer.WriteEndObject();
        }
        try
        {
            bool isNew = !Directory.Exists(folder.Owners);
            DurableFile.CreateFolder(folder.Owners);
            DataFault? fault = DurableFile.Write(PathOf(id), json.WrittenSpan);
            return isNew ? fault ?? DurableFile.SyncFolderOf(folder.Owners) : fault;
        }
        catch (Exception e) when (DurableFile.IsDisk(e))
        {
            return DurableFile.FaultOf(e, folder.Owners);
        }
    }

    /// <summary>The owner; null when there is none, or none any more, or the file cannot be read.</summary>
    public Owner? Find(string id)
    {
        try
        {
            if (!IsId(id) || !File.Exists(PathOf(id))) return null;
            using JsonDocument json = JsonDocument.Parse(File.ReadAllBytes(PathOf(id)));
            JsonElement root = json.RootElement;
            // Version 1 had a name and one line of contact.
            return new Owner(Text(root, "name"), Text(root, "contact")) { Telephone = Text(root, "telephone"), Mail = Text(root, "mail"), Address = Text(root, "address") };
        }
        catch (Exception e) when (DurableFile.IsDisk(e) || e is JsonException or InvalidOperationException)
        {
            return null;
        }
    }

    /// <summary>Erases an owner; null when that is on the disk, also when there was none.</summary>
    public DataFault? Erase(string id)
    {
        try
        {
            if (!IsId(id) || !Directory.Exists(folder.Owners)) return null;
            File.Delete(PathOf(id));
            File.Delete(PathOf(id) + ".part");
            return DurableFile.SyncFolderOf(PathOf(id));
        }
        catch (Exception e) when (DurableFile.IsDisk(e))
        {
            return DurableFile.FaultOf(e, PathOf(id));
        }
    }

    public IReadOnlyList<string> Ids() => !Directory.Exists(folder.Owners)
        ? []
        : [.. Directory.EnumerateFiles(folder.Owners, "*.json").Select(f => Path.GetFileNameWithoutExtension(f)).Order(StringComparer.Ordinal)];

    private string PathOf(string id) =>
        IsId(id) ? Path.Combine(folder.Owners, id + ".json") : throw new ArgumentException("An owner's id is letters and digits.", nameof(id));

    /// <summary>An id comes from the journal, perhaps from another bench: it must not become a path.</summary>
    internal static bool IsId(string id) => id.Length is > 0 and <= 64 && id.All(char.IsAsciiLetterOrDigit);

    private static void Line(Utf8JsonWriter writer, string key, string line)
    {
        if (line.Length > 0) writer.WriteString(key, line);
    }

    private static string Text(JsonElement json, string key) =>
        json.TryGetProperty(key, out JsonElement value) && value.ValueKind == JsonValueKind.String ? value.GetString()! : "";
}
