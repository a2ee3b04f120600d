using System.Runtime.CompilerServices;
using System.Text;
using DiffPlex.DiffBuilder;
using DiffPlex.DiffBuilder.Model;
using Xunit.Sdk;

namespace ServiceRunner.Tests.Shared;

/// <summary>
/// Compares a text with NAME.verified.txt beside the test. If they differ, or the file is missing, it writes
/// NAME.received.txt and fails. To accept: rename received to verified, or run once with SNAPSHOT_ACCEPT=1 (not in CI).
/// </summary>
public static class Snapshot
{
    public static void Verify(string received, string? name = null, [CallerFilePath] string file = "", [CallerMemberName] string test = "")
    {
        string folder = Path.Combine(Path.GetDirectoryName(file)!, "pictures");
        string stem = Path.Combine(folder, $"{Path.GetFileNameWithoutExtension(file)}.{test}{(name is null ? "" : "." + name)}");
        Compare(received, stem + ".verified.txt", stem + ".received.txt");
    }

    public static void Compare(string received, string verifiedFile, string receivedFile)
    {
        received = received.ReplaceLineEndings("\n");
        string? verified = File.Exists(verifiedFile) ? File.ReadAllText(verifiedFile).ReplaceLineEndings("\n") : null;
        if (verified == received)
        {
            File.Delete(receivedFile);
            return;
        }
        bool ci = Environment.GetEnvironmentVariable("CI") is not null;
        bool accept = !ci && Environment.GetEnvironmentVariable("SNAPSHOT_ACCEPT") is not null;
        if (!ci)
        {
            Directory.CreateDirectory(Path.GetDirectoryName(verifiedFile)!);
            File.WriteAllText(accept ? verifiedFile : receivedFile, received);
        }
        if (accept) return;
        throw new XunitException(verified is null
            ? $"{Path.GetFileName(verifiedFile)} is missing. Received:\n{received}"
            : $"{Path.GetFileName(verifiedFile)} differs:\n{Diff(verified, received)}");
    }

    private static string Diff(string verified, string received)
    {
        List<DiffPiece> lines = InlineDiffBuilder.Diff(verified, received).Lines;
        StringBuilder text = new();
        for (int i = 0; i < lines.Count; i++)
        {
            bool near = lines.Skip(Math.Max(0, i - 2)).Take(5).Any(l => l.Type != ChangeType.Unchanged);
            if (!near) continue;
            text.Append(lines[i].Type switch { ChangeType.Inserted => "+ ", ChangeType.Deleted => "- ", _ => "  " }).Append(lines[i].Text).Append('\n');
        }
        return text.ToString();
    }
}
