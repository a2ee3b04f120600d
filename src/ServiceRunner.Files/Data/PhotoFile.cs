namespace ServiceRunner.Files.Data;

/// <summary>A picture as it lies on a disk, read to be kept; or why it cannot be.</summary>
/// <param name="Name">The file's name without its folders.</param>
/// <param name="Bytes">Its bytes.</param>
/// <param name="Complaint">Why it cannot be taken, as a sentence; empty if it can.</param>
public sealed record PhotoFile(string Name, byte[] Bytes, string Complaint)
{
    /// <summary>The largest picture that is kept, in bytes: 20 MB.</summary>
    public const int Largest = 20_000_000;

    /// <summary>Reads a JPEG or PNG file.</summary>
    public static PhotoFile Read(string typed)
    {
        string path = typed.Trim().Trim('"', '\'');
        if (path.StartsWith("~/", StringComparison.Ordinal)) path = Path.Combine(Environment.GetFolderPath(Environment.SpecialFolder.UserProfile), path[2..]);
        try
        {
            FileInfo file = new(path);
            if (Directory.Exists(path)) return Unfit($"{path} is a folder; name the picture in it.");
            if (!file.Exists) return Unfit($"There is no file {path}.");
            if (file.Length > Largest) return Unfit($"{file.Name} has {file.Length / 1_000_000} MB; a picture may have {Largest / 1_000_000} MB at most.");
            byte[] bytes = File.ReadAllBytes(path);
            return Kind(bytes).Length == 0 ? Unfit($"{file.Name} is neither a JPEG nor a PNG picture.") : new PhotoFile(file.Name, bytes, "");
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return Unfit($"{path} cannot be read ({e.Message.TrimEnd('.')}).");
        }
    }

    /// <summary>The media type of a picture by its first bytes; empty if it is neither JPEG nor PNG.</summary>
    public static string Kind(ReadOnlySpan<byte> bytes) =>
        bytes.StartsWith(Jpeg) ? "image/jpeg" : bytes.StartsWith(Png) ? "image/png" : "";

    private static ReadOnlySpan<byte> Jpeg => [0xFF, 0xD8, 0xFF];

    private static ReadOnlySpan<byte> Png => [0x89, (byte)'P', (byte)'N', (byte)'G', 0x0D, 0x0A, 0x1A, 0x0A];

    private static PhotoFile Unfit(string complaint) => new("", [], complaint);
}
