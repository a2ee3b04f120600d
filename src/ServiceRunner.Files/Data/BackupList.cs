using System.Globalization;
using System.Security.Cryptography;
using System.Text;

namespace ServiceRunner.Files.Data;

/// <summary>A file of a backup, with the SHA-256 of its bytes in hex.</summary>
internal sealed record BackupEntry(string Name, long Size, string Hash);

/// <summary>
/// The first entry of a backup: what must be in it. A zip's own sums are not looked at by every reader, and do not show
/// that a file was left out.
/// </summary>
internal sealed record BackupList(string Bench, IReadOnlyList<BackupEntry> Entries)
{
    public const string Name = "servicerunner-backup";
    public const int Version = 1;
    public const string Workshop = "workshop.yaml";
    private const string First = Name + " ";

    public byte[] Write()
    {
        StringBuilder text = new(string.Create(CultureInfo.InvariantCulture, $"{First}{Version}\nbench {Bench}\n"));
        foreach (BackupEntry e in Entries) text.Append(CultureInfo.InvariantCulture, $"file {e.Hash} {e.Size} {e.Name}\n");
        return Encoding.UTF8.GetBytes($"{text}end {HashOf(text.ToString())}\n");
    }

    /// <summary>Reads a list; null when it is not as it was written. A list of a later version is only known to be one.</summary>
    public static (BackupList? List, int Version) Read(byte[] bytes)
    {
        string text = Encoding.UTF8.GetString(bytes);
        string[] lines = text.Split('\n');
        if (lines.Length < 4 || !lines[0].StartsWith(First, StringComparison.Ordinal)
            || !int.TryParse(lines[0][First.Length..], NumberStyles.None, CultureInfo.InvariantCulture, out int version)) return (null, 0);
        if (version > Version) return (null, version);
        string end = $"end {HashOf(text[..(text.LastIndexOf("\nend ", StringComparison.Ordinal) + 1)])}";
        if (lines[^1].Length > 0 || lines[^2] != end || !lines[1].StartsWith("bench ", StringComparison.Ordinal)) return (null, version);
        List<BackupEntry> entries = [];
        foreach (string line in lines[2..^2])
        {
            string[] words = line.Split(' ', 4);
            if (words is not ["file", { Length: 64 }, _, _] || !long.TryParse(words[2], NumberStyles.None, CultureInfo.InvariantCulture, out long size)) return (null, version);
            entries.Add(new BackupEntry(words[3], size, words[1]));
        }
        return (new BackupList(lines[1][6..], entries), version);
    }

    /// <summary>
    /// Whether a name is one that a data folder has. All others are left alone: nothing that leads out of the folder
    /// can pass.
    /// </summary>
    public static bool IsKnown(string name)
    {
        string[] parts = name.Split('/');
        return parts switch
        {
            [DataFolder.Marker or Workshop] => true,
            [var file] => IsJournal(file),
            ["kept", var file] => file.Length == 64 && file.All(char.IsAsciiHexDigitLower),
            ["owners", var file] => file.EndsWith(".json", StringComparison.Ordinal) && Owners.IsId(file[..^5]),
            ["procedures", .. var rest] => rest.Length is > 0 and <= 9 && rest.All(IsPlain),
            _ => false,
        };
    }

    public static bool IsJournal(string name) =>
        name.Length == 16 && name.StartsWith("journal-", StringComparison.Ordinal) && name.EndsWith(".log", StringComparison.Ordinal) && name[8..12].All(char.IsAsciiDigit);

    private static bool IsPlain(string part) =>
        part.Length is > 0 and <= 200 && part[0] != '.' && part[^1] is not ('.' or ' ') && !part.Any(c => char.IsControl(c) || char.IsSurrogate(c) || c is '\\' or ':' or '*' or '?' or '"' or '<' or '>' or '|' or '\uFFFD');

    private static string HashOf(string text) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text)));
}
