using System.Text;
using ServiceRunner.Files.Machine;

namespace ServiceRunner.Verbs;

/// <summary>The file that --out names.</summary>
internal static class OutFile
{
    // Aside first, then into its place: whoever has an older one there keeps it until the new one is whole.
    public static int Write(string file, string text)
    {
        string? aside = null;
        try
        {
            string target = new FileInfo(file) is { LinkTarget: not null } link ? link.ResolveLinkTarget(returnFinalTarget: true)!.FullName : Path.GetFullPath(file);
            if (Directory.Exists(target)) return Refuse($"{file} is a folder; name a file with --out.", ExitCodes.NotThere);
            string folder = Path.GetDirectoryName(target)!;
            if (!Directory.Exists(folder)) return Refuse($"there is no folder {folder} to write {Path.GetFileName(target)} into.", ExitCodes.NotThere);
            bool replaces = File.Exists(target);
            if (replaces && !IsFile(target)) return Refuse($"{file} is no file that could be replaced, but a pipe or a device; name another one with --out.", ExitCodes.NotThere);
            string part = Path.Combine(folder, $".{Path.GetFileName(target)}.{Identity.New()}");
            using (FileStream stream = new(part, FileMode.CreateNew, FileAccess.Write))
            {
                aside = part;
                stream.Write(Encoding.UTF8.GetBytes(text));
                stream.Flush(flushToDisk: true);
            }
            File.Move(part, target, overwrite: replaces);
            aside = null;
            Console.Error.WriteLine($"servicerunner: {(replaces ? "replaced" : "wrote")} {file}.");
            return ExitCodes.Done;
        }
        catch (UnauthorizedAccessException)
        {
            return Refuse($"{file} cannot be written: you have no permission there; name another one with --out.", ExitCodes.Folder);
        }
        catch (Exception e) when (e is IOException or ArgumentException or NotSupportedException)
        {
            return Refuse($"{file} could not be written ({e.Message.TrimEnd('.')}); what was there is as it was.", ExitCodes.Folder);
        }
        finally
        {
            if (aside is not null) File.Delete(aside);
        }
    }

    // .NET calls pipes and devices files too. They are opened for both ways, because then a pipe does not wait for its
    // other end. A device may be seekable and yet must not be replaced: what lies in /dev itself is left alone.
    private static bool IsFile(string path)
    {
        using FileStream stream = new(path, FileMode.Open, FileAccess.ReadWrite, FileShare.ReadWrite | FileShare.Delete);
        return stream.CanSeek && Path.GetDirectoryName(path) != "/dev";
    }

    private static int Refuse(string sentence, int exit)
    {
        Console.Error.WriteLine($"servicerunner: {sentence}");
        return exit;
    }
}
