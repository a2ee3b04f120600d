using System.Text;
using ServiceRunner.Files.Data;
using ServiceRunner.Files.Journal;
using ServiceRunner.Files.Machine;

namespace ServiceRunner.Files.Index;

/// <summary>
/// The index's file and whether it can be trusted. LiteDB survives a killed process, but not a machine that stops: so
/// a mark names the boot in which the file was written to, and a mark of another boot condemns it.
/// </summary>
internal sealed class IndexFile(DataFolder folder)
{
    private readonly Lock _gate = new();
    private bool _marked;

    /// <summary>The index as it was left; or why it cannot be used.</summary>
    public (JournalIndex? Index, RebuildReason Why) Open()
    {
        string boot = Kernel.Boot();
        try
        {
            if (!File.Exists(folder.IndexFile)) return (null, RebuildReason.Missing);
            _marked = File.Exists(folder.IndexInUse);
            if (_marked && (boot.Length == 0 || File.ReadAllText(folder.IndexInUse) != boot)) return (null, RebuildReason.MachineStopped);
        }
        catch (Exception e) when (DurableFile.IsDisk(e))
        {
            return (null, RebuildReason.Unreadable);
        }
        JournalIndex? index = null;
        try
        {
            index = JournalIndex.OnDisk(folder.IndexFile, folder.IndexLog, MayWrite);
            if (index.Head() is not null) return (index, default);
            index.Close();
            return (null, RebuildReason.DoesNotMatch);
        }
        catch (Exception)
        {
            // A broken LiteDB file throws anything.
            index?.Abandon();
            return (null, RebuildReason.Unreadable);
        }
    }

    /// <summary>An empty index; in memory when the disk takes none, which a full disk must not prevent from working.</summary>
    public JournalIndex Fresh()
    {
        try
        {
            Delete();
            if (!Mark()) return JournalIndex.InMemory();
            return JournalIndex.OnDisk(folder.IndexFile, folder.IndexLog, MayWrite);
        }
        catch (Exception)
        {
            return JournalIndex.InMemory();
        }
    }

    /// <summary>Closes an index that is whole, and takes the mark away once it is on the disk.</summary>
    public void Close(JournalIndex index)
    {
        try
        {
            bool synced = index.Close();
            if (!_marked || !File.Exists(folder.IndexFile)) return;
            if (!synced) Delete();
            File.Delete(folder.IndexInUse);
            _ = Kernel.SyncFolder(folder.Path);
        }
        catch (Exception)
        {
            // The mark stays or the file goes: either way the next opening does not trust it.
            TryDelete();
        }
    }

    /// <summary>Lets go of an index that is wrong; its file goes first, in case the process does not get further.</summary>
    public void ThrowAway(JournalIndex index, bool onDisk = true)
    {
        if (onDisk && !OperatingSystem.IsWindows()) TryDelete();
        index.Abandon();
        if (onDisk) TryDelete();
    }

    private void TryDelete()
    {
        try
        {
            Delete();
        }
        catch (Exception e) when (DurableFile.IsDisk(e))
        {
            // Its head will not match, or its mark condemns it.
        }
    }

    private void Delete()
    {
        File.Delete(folder.IndexLog);
        File.Delete(folder.IndexFile);
    }

    // An opening that only reads needs no mark, nor the two syncs that it costs: they would be waited for before the first frame.
    private bool MayWrite()
    {
        // LiteDB writes its two files from different threads.
        lock (_gate) return _marked || Mark();
    }

    private bool Mark()
    {
        _marked = DurableFile.Write(folder.IndexInUse, Encoding.ASCII.GetBytes(Kernel.Boot())) is null;
        return _marked;
    }
}
