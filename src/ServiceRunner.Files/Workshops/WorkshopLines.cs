using ServiceRunner.Files.Procedures;
using ServiceRunner.Files.Yaml;

namespace ServiceRunner.Files.Workshops;

/// <summary>In which line of a workshop file something stands, for whoever wants to change it.</summary>
public sealed class WorkshopLines
{
    private readonly YMap? _root;

    private WorkshopLines(YMap? root) => _root = root;

    /// <summary>Reads a file; one that cannot be read has no lines.</summary>
    public static WorkshopLines Read(string path) => new(LoadedFile.OfPath(path, path).TakeRoot());

    /// <summary>The line of a key, at the top or within another one; null if it is not in the file.</summary>
    public int? Line(string key, string within = "") =>
        (within.Length == 0 ? _root : _root?[within] as YMap)?.Entries.FirstOrDefault(e => e.Key.Value == key)?.Key.At.Line;
}
