using System.Globalization;
using Microsoft.Win32.SafeHandles;
using ServiceRunner.Files.Data;
using ServiceRunner.Files.Index;
using ServiceRunner.Files.Machine;

namespace ServiceRunner.Files.Journal;

/// <summary>Opens a log: takes the lock, looks whether index and journal agree, deals with a torn end, refuses damage.</summary>
internal sealed class Opening(DataFolder folder, OpenMode mode, LogParts parts, TimeProvider clock)
{
    private readonly List<LogNote> _notes = [];

    public OpenOutcome Run()
    {
        bool done = false;
        try
        {
            OpenOutcome outcome = mode == OpenMode.Own ? Own() : Beside();
            done = outcome is Opened;
            return outcome;
        }
        catch (Exception e) when (DurableFile.IsDisk(e))
        {
            return new OpenRefused(DurableFile.FaultOf(e, folder.In(DataFolder.Marker)));
        }
        finally
        {
            if (!done) parts.Dispose();
        }
    }

    private OpenOutcome Own()
    {
        (parts.Lock, DataFault? taken) = FolderLock.Take(folder, clock);
        if (taken is not null) return new OpenRefused(taken);
        JournalTail tail = WithIndex();
        if (tail.Damage is { } damage) return new OpenRefused(damage.ToFault());
        if (tail.Torn is { } torn && SetAside(torn.Segment, torn.Offset) is { } fault) return new OpenRefused(fault);
        parts.Writer = new JournalWriter(folder.Path);
        parts.StartWriter();
        return Ready(tail);
    }

    private OpenOutcome Beside()
    {
        if (!Directory.Exists(folder.Path)) return new OpenRefused(new FolderMissing(folder.Path));
        JournalTail tail = parts.BuildIndex(onDisk: false);
        if (tail.Damage is { } damage) _notes.Add(new ReadsUpTo(damage.ToFault()));
        return Ready(tail);
    }

    private Opened Ready(JournalTail tail)
    {
        string bench = tail.Bench ?? folder.Bench;
        if (bench != folder.Bench) _notes.Add(new BenchDiffers(folder.Bench, bench));
        return new Opened(new JobLog(parts, mode, bench, tail.Head, _notes));
    }

    private JournalTail WithIndex()
    {
        (IndexHead head, RebuildReason? why) = parts.OpenIndex();
        if (why is null)
        {
            try
            {
                return parts.ReadOn(head.Head, parts.Reader.ReadLine(head.Place)!.Bench);
            }
            catch (Exception e) when (e is LiteDB.LiteException or IndexUnusableException)
            {
                why = RebuildReason.Unreadable;
                parts.DropIndex();
            }
        }
        JournalTail tail = parts.BuildIndex(onDisk: true);
        if (tail.Head.Sequence > 0 || why != RebuildReason.Missing) _notes.Add(new IndexRebuilt(why.Value, tail.Head.Sequence));
        if (head.Head.Sequence > tail.Head.Sequence) _notes.Add(new EndsBeforeIndex(head.Head.Sequence, tail.Head.Sequence));
        return tail;
    }

    /// <summary>Moves what was never acknowledged beside the journal. It is copied before it is cut.</summary>
    private DataFault? SetAside(Segment segment, long offset)
    {
        using SafeFileHandle file = DurableFile.OpenOwn(segment.Path);
        long length = RandomAccess.GetLength(file) - offset;
        byte[] bytes = new byte[length];
        int read = RandomAccess.Read(file, bytes, offset);
        string name = FreeName(string.Create(CultureInfo.InvariantCulture, $"torn-{segment.Name}-{offset}"));
        if (DurableFile.Write(folder.In(name), bytes.AsSpan(0, read)) is { } fault) return fault;
        RandomAccess.SetLength(file, offset);
        if (Kernel.Sync(file) is var error and not 0) return new SyncFailed(segment.Name, error);
        _notes.Add(new TornTail(segment.Name, offset, length, name));
        return null;
    }

    private string FreeName(string stem)
    {
        string name = stem + ".bin";
        for (int i = 2; File.Exists(folder.In(name)); i++) name = string.Create(CultureInfo.InvariantCulture, $"{stem}-{i}.bin");
        return name;
    }
}
