using System.Buffers;
using ServiceRunner.Files.Data;

namespace ServiceRunner.Files.Journal;

/// <summary>
/// Copies what is whole of a damaged journal into a new folder: every subject's lines as far as its own chain holds.
/// Bodies stay byte for byte; each envelope names the line's number in the damaged journal.
/// </summary>
internal static class Recovery
{
    private const int Batch = 1_000;

    public static RecoverOutcome Run(DataFolder from, string to)
    {
        if (Directory.Exists(to) && Directory.EnumerateFileSystemEntries(to).Any()) return new RecoverRefused(new NotADataFolder(to));
        FolderOutcome made = DataFolder.Create(to, from.Bench);
        if (made is FolderRefused refused) return new RecoverRefused(refused.Fault);
        DataFolder folder = ((FolderReady)made).Folder;
        try
        {
            DataFault? fault = CopyFiles(from.Kept, folder.Kept) ?? CopyFiles(from.Owners, folder.Owners);
            return fault is null ? CopyLines(from, folder) : new RecoverRefused(fault);
        }
        catch (Exception e) when (DurableFile.IsDisk(e))
        {
            return new RecoverRefused(DurableFile.FaultOf(e, folder.Path));
        }
    }

    private static RecoverOutcome CopyLines(DataFolder from, DataFolder folder)
    {
        using JournalWriter writer = new(folder.Path);
        Dictionary<string, SubjectHead> subjects = [];
        SortedSet<string> cut = new(StringComparer.Ordinal);
        List<ScannedDamage> damage = [];
        ArrayBufferWriter<byte> buffer = new();
        LogHead head = default;
        int year = 0, waiting = 0;
        foreach (ScanItem item in WithoutTornAppend(JournalScan.Whole(from.Path)))
        {
            if (item is ScannedDamage found) damage.Add(found);
            if (item is not ScannedLine line) continue;
            SubjectHead last = subjects.GetValueOrDefault(line.Line.Subject);
            if (line.Line.SubjectSequence != last.N + 1 || line.Line.PreviousBody != last.Hash)
            {
                cut.Add(line.Line.Subject);
                continue;
            }
            if ((waiting == Batch || line.Place.Year != year) && Flush(writer, buffer, year, ref waiting) is { } fault) return new RecoverRefused(fault);
            year = line.Place.Year;
            LineCodec.Place place = new(folder.Bench, head.Sequence + 1, head.Hash, 0, line.Line.ImportedBy, line.Line.Sequence);
            head = new LogHead(place.Sequence, LineCodec.Write(buffer, line.Line.Body.Span, line.Line.BodyHash, place));
            subjects[line.Line.Subject] = new SubjectHead(line.Line.SubjectSequence, line.Line.BodyHash);
            waiting++;
        }
        return Flush(writer, buffer, year, ref waiting) is { } refused ? new RecoverRefused(refused) : new Recovered(folder, head.Sequence, damage, [.. cut]);
    }

    private static DataFault? Flush(JournalWriter writer, ArrayBufferWriter<byte> buffer, int year, ref int waiting)
    {
        if (waiting == 0) return null;
        (_, DataFault? fault) = writer.Append(buffer.WrittenSpan, year);
        buffer.ResetWrittenCount();
        waiting = 0;
        return fault;
    }

    /// <summary>An append that the end of the journal leaves unfinished was never acknowledged, and its first lines go with it.</summary>
    private static IEnumerable<ScanItem> WithoutTornAppend(IEnumerable<ScanItem> items)
    {
        List<ScanItem> held = [];
        foreach (ScanItem item in items)
        {
            held.Add(item);
            if (item is ScannedLine { Line.More: > 0 } or ScannedDamage { What: Damage.Unfinished }) continue;
            foreach (ScanItem whole in held) yield return whole;
            held.Clear();
        }
        foreach (ScanItem item in held.OfType<ScannedDamage>()) yield return item;
    }

    private static DataFault? CopyFiles(string from, string to)
    {
        if (!Directory.Exists(from)) return null;
        DurableFile.CreateFolder(to);
        foreach (string file in Directory.EnumerateFiles(from))
        {
            if (DurableFile.Write(Path.Combine(to, Path.GetFileName(file)), File.ReadAllBytes(file)) is { } fault) return fault;
        }
        return DurableFile.SyncFolderOf(to);
    }
}
