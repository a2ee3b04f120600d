using ServiceRunner.Files.Journal;

namespace ServiceRunner.Files.Data;

/// <summary>A copy of the data folder as it stands at one moment, which nobody else writes to.</summary>
internal sealed class BackupCopy(DataFolder folder, Staging staging)
{
    public const string Name = "copy";
    private readonly string _copy = staging.In(Name);
    private JournalTail? _tail;

    /// <summary>
    /// The journal comes first: a text is kept before the line that pins it, so that no line is copied without its
    /// texts. Null when all is copied.
    /// </summary>
    public DataFault? Copy()
    {
        DurableFile.CreateFolder(_copy);
        if (CopyJournal() is { } fault) return fault;
        // On a full disk a writing is taken back and the next one goes over it, which a copy may catch half way.
        // Damage is what a second copy has as well.
        if (_tail!.Damage is not null && CopyJournal() is { } again) return again;
        foreach (string file in (string[])[DataFolder.Marker, BackupList.Workshop])
            if (Copy(folder.In(file), file) is { } unread) return unread;
        return CopyAll("kept", false) ?? CopyAll("owners", false) ?? CopyAll("procedures", true);
    }

    private DataFault? CopyJournal()
    {
        foreach (Segment segment in Segment.In(_copy)) File.Delete(segment.Path);
        foreach (Segment segment in Segment.In(folder.Path))
            if (Copy(segment.Path, segment.Name) is { } fault) return fault;
        _tail = new JournalTail(_copy, default, default, null);
        _tail.Read([], _ => { });
        return null;
    }

    /// <summary>Takes from the copy what is torn or damaged, and says what was damaged.</summary>
    public (List<DataFault> Damage, DataFault? Fault) MakeWhole()
    {
        List<DataFault> damage = [];
        string kept = Path.Combine(_copy, "kept");
        string[] texts = Directory.Exists(kept) ? Directory.GetFiles(kept) : [];
        foreach (string file in texts.Order(StringComparer.Ordinal))
        {
            string hash = Path.GetFileName(file);
            if (KeptTexts.HashOf(File.ReadAllBytes(file)) == hash) continue;
            damage.Add(new KeptTextChanged(hash));
            File.Delete(file);
        }
        if (_tail!.Torn is { } torn)
        {
            using FileStream file = File.Open(torn.Segment.Path, FileMode.Open);
            file.SetLength(torn.Offset);
        }
        return _tail.Damage is null ? (damage, null) : (damage, Recover(_copy, staging.In("whole"), damage));
    }

    private static DataFault? Recover(string copy, string whole, List<DataFault> damage)
    {
        if (DataFolder.Open(copy) is not FolderReady { Folder: var damaged }) return new Damaged(DataFolder.Marker, 0, Damage.NotALine);
        switch (JobLog.Recover(damaged, whole))
        {
            case Recovered recovered:
                damage.AddRange(recovered.Damage.Select(d => d.ToFault()));
                foreach (Segment segment in Segment.In(copy)) File.Delete(segment.Path);
                foreach (Segment segment in Segment.In(whole)) File.Move(segment.Path, Path.Combine(copy, segment.Name));
                return null;
            case RecoverRefused refused:
                return refused.Fault;
            default:
                throw new InvalidOperationException("an outcome of no kind");
        }
    }

    private DataFault? CopyAll(string name, bool inFoldersToo)
    {
        string from = folder.In(name);
        if (!Directory.Exists(from)) return null;
        EnumerationOptions options = new() { RecurseSubdirectories = inFoldersToo, MaxRecursionDepth = 8, IgnoreInaccessible = false };
        foreach (string file in Directory.EnumerateFiles(from, "*", options))
        {
            // A writing that is not finished, by this program.
            string relative = Path.GetRelativePath(folder.Path, file);
            if (relative.Split(Path.DirectorySeparatorChar).Any(p => p.EndsWith(".part", StringComparison.Ordinal))) continue;
            if (Copy(file, relative) is { } fault) return fault;
        }
        return null;
    }

    /// <summary>Copies a file as long as it is now; one that is gone meanwhile was erased.</summary>
    private DataFault? Copy(string from, string name)
    {
        FileStream source;
        try
        {
            source = new FileStream(from, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete, bufferSize: 0);
        }
        catch (Exception e) when (e is FileNotFoundException or DirectoryNotFoundException)
        {
            return null;
        }
        catch (Exception e) when (DurableFile.IsDisk(e))
        {
            return Unread(e, from);
        }
        using (source)
        {
            string to = Path.Combine(_copy, name);
            DurableFile.CreateFolder(Path.GetDirectoryName(to)!);
            using FileStream target = new(to, DurableFile.Options(FileMode.CreateNew, FileShare.None));
            byte[] block = new byte[64 << 10];
            for (long left = source.Length; left > 0;)
            {
                int read;
                try
                {
                    read = source.Read(block, 0, (int)Math.Min(block.Length, left));
                }
                catch (Exception e) when (DurableFile.IsDisk(e))
                {
                    return Unread(e, from);
                }
                if (read == 0) break;
                target.Write(block, 0, read);
                left -= read;
            }
        }
        return null;
    }

    private static ReadFailed Unread(Exception e, string from) => new(from, OperatingSystem.IsWindows() ? e.HResult & 0xFFFF : e.HResult);
}
