using System.Diagnostics;
using ServiceRunner.Core.Jobs;

namespace ServiceRunner.Voice;

/// <summary>The tones as files in a folder that only this user can read, made when first needed and thrown away at the end.</summary>
internal sealed class SoundFiles(string under) : IDisposable
{
    private const string Prefix = "servicerunner-sounds-";
    private string? _folder;

    /// <summary>The folder, once it is made.</summary>
    public string? Folder => _folder;

    /// <summary>The file of a tone. It is written again if somebody cleaned the folder up meanwhile.</summary>
    public string Of(Tone tone)
    {
        string file = Path.Combine(Made(), tone.Urgency switch { Urgency.Low => "low.wav", Urgency.Medium => "medium.wav", _ => "high.wav" });
        if (File.Exists(file)) return file;
        FileStreamOptions only = new() { Mode = FileMode.CreateNew, Access = FileAccess.Write };
        if (!OperatingSystem.IsWindows()) only.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        using FileStream stream = new(file, only);
        stream.Write(Wave.Bytes(tone.Samples(), Tone.Rate));
        return file;
    }

    private string Made()
    {
        if (_folder is not null && Directory.Exists(_folder)) return _folder;
        Sweep();
        string folder = Path.Combine(under, $"{Prefix}{Environment.ProcessId}-{Guid.NewGuid():N}");
        // Open to this user alone from the first moment.
        if (OperatingSystem.IsWindows()) Directory.CreateDirectory(folder);
        else Directory.CreateDirectory(folder, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
        return _folder = folder;
    }

    // A run that was killed left its folder behind. Those of other users stay, because they cannot be removed.
    private void Sweep()
    {
        foreach (string left in Directory.EnumerateDirectories(under, Prefix + "*"))
        {
            string number = Path.GetFileName(left)[Prefix.Length..].Split('-')[0];
            if (int.TryParse(number, out int id) && !Lives(id)) Remove(left);
        }
    }

    private static bool Lives(int id)
    {
        try
        {
            using Process process = Process.GetProcessById(id);
            return true;
        }
        catch (ArgumentException)
        {
            return false;
        }
    }

    private static void Remove(string folder)
    {
        try
        {
            Directory.Delete(folder, recursive: true);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // Not ours, or gone already.
        }
    }

    public void Dispose()
    {
        if (_folder is not null) Remove(_folder);
        _folder = null;
    }
}
