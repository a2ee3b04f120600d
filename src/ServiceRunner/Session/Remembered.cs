using ServiceRunner.Files.Data;

namespace ServiceRunner.Session;

/// <summary>
/// What two keys chose, for the next start. It is no part of the record of the work, so it stands beside the log and in
/// no backup, and a disk that does not take it is not worth a word.
/// </summary>
/// <param name="Large">Large letters (F6).</param>
/// <param name="Quiet">Quiet (F8); null while nobody pressed it.</param>
internal sealed record Remembered(bool Large, bool? Quiet)
{
    /// <summary>The file in the data folder.</summary>
    public const string Name = "remembered";

    public static Remembered Read(DataFolder folder)
    {
        try
        {
            string[] lines = File.ReadAllLines(PathIn(folder));
            return new(lines.Contains("large yes"), lines.Contains("quiet yes") ? true : lines.Contains("quiet no") ? false : null);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return new(false, null);
        }
    }

    public void Save(DataFolder folder)
    {
        try
        {
            File.WriteAllText(PathIn(folder), $"large {(Large ? "yes" : "no")}\n{(Quiet is { } quiet ? $"quiet {(quiet ? "yes" : "no")}\n" : "")}");
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentOutOfRangeException)
        {
            // The next start is then as the last one was.
        }
    }

    private static string PathIn(DataFolder folder) => Path.Combine(folder.Path, Name);
}
