using System.IO.Compression;
using System.Security.Cryptography;
using System.Text;

namespace ServiceRunner.Files.Data;

/// <summary>
/// A backup, opened and wholly verified: the list, every file's hash, every line of the journal with both its chains,
/// every kept text. It may come from anywhere, so nothing that it says of itself is believed.
/// </summary>
internal sealed class BackupFile : IDisposable
{
    private const long MostInOne = 4L << 30, MostSuspicious = 100 << 20, MostTimes = 200, LongestList = 256 << 20;
    private readonly string _path;
    private readonly FileStream _stream;
    private readonly ZipArchive _zip;
    private readonly List<(BackupEntry Entry, ZipArchiveEntry Zipped)> _files = [];
    private readonly List<string> _ignored = [];

    private BackupFile(string path, FileStream stream, ZipArchive zip) => (_path, _stream, _zip) = (path, stream, zip);

    public string Bench { get; private set; } = "";
    public long Lines { get; private set; }
    public int Logs { get; private set; }

    /// <summary>What is in it and is no part of a data folder.</summary>
    public IReadOnlyList<string> Ignored => _ignored;

    /// <summary>Opens and verifies a backup; or the fault, and then it is closed.</summary>
    public static (BackupFile? File, DataFault? Fault) Open(string path)
    {
        FileStream? stream = null;
        BackupFile? file = null;
        DataFault? fault;
        try
        {
            if (Directory.Exists(path)) return (null, new NotABackup(path));
            stream = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.Read);
            file = new BackupFile(path, stream, new ZipArchive(stream, ZipArchiveMode.Read, leaveOpen: true));
            fault = file.Verify();
        }
        catch (Exception e) when (IsBadZip(e) || DurableFile.IsDisk(e))
        {
            fault = FaultOf(e, path, file is null);
        }
        if (fault is null) return (file, null);
        file?.Dispose();
        stream?.Dispose();
        return (null, fault);
    }

    /// <summary>Writes what is in it into a folder, each file on the disk when this returns.</summary>
    public DataFault? Unpack(string folder)
    {
        try
        {
            foreach ((BackupEntry entry, ZipArchiveEntry zipped) in _files)
            {
                string to = Path.Combine([folder, .. entry.Name.Split('/')]);
                DurableFile.CreateFolder(Path.GetDirectoryName(to)!);
                using Stream from = Reading(entry, zipped);
                if (Unpack(from, entry, to) is { } fault) return fault;
            }
            foreach (string made in (string[])[.. Directory.GetDirectories(folder, "*", SearchOption.AllDirectories), folder])
                if (DurableFile.SyncFolderOf(Path.Combine(made, DataFolder.Marker)) is { } fault) return fault;
            return null;
        }
        catch (Exception e) when (IsBadZip(e))
        {
            return new BackupDamaged(_path, "");
        }
        catch (Exception e) when (DurableFile.IsDisk(e))
        {
            return DurableFile.FaultOf(e, Path.Combine(folder, DataFolder.Marker));
        }
    }

    private DataFault? Unpack(Stream from, BackupEntry entry, string to)
    {
        using IncrementalHash hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        using FileStream file = new(to, DurableFile.Options(FileMode.CreateNew, FileShare.None));
        byte[] block = new byte[64 << 10];
        while (from.Read(block) is > 0 and int read)
        {
            hash.AppendData(block, 0, read);
            try
            {
                file.Write(block, 0, read);
            }
            catch (Exception e) when (DurableFile.IsDisk(e))
            {
                return DurableFile.FaultOf(e, to);
            }
        }
        // It was verified before, but the disk that it lies on may give other bytes the second time.
        if (Convert.ToHexStringLower(hash.GetHashAndReset()) != entry.Hash) return new BackupDamaged(_path, entry.Name);
        return Machine.Kernel.Sync(file.SafeFileHandle) is var error and not 0 ? new SyncFailed(Path.GetFileName(to), error) : null;
    }

    private DataFault? Verify()
    {
        if (_zip.GetEntry(BackupList.Name) is not { } listed) return new NotABackup(_path);
        if (listed.Length > LongestList || IsSuspicious(listed.Length, listed.CompressedLength)) return new BackupTooLarge(_path, BackupList.Name);
        (BackupList? list, int version) = BackupList.Read(AllOf(listed));
        if (list is null) return version > BackupList.Version ? new FormatFromTheFuture(version) : new BackupDamaged(_path, BackupList.Name);
        Bench = list.Bench;
        return Match(list) ?? Measure() ?? VerifyMarker() ?? VerifyFiles();
    }

    /// <summary>Puts the list and the zip's entries together.</summary>
    private DataFault? Match(BackupList list)
    {
        Dictionary<string, ZipArchiveEntry> zipped = new(StringComparer.Ordinal);
        foreach (ZipArchiveEntry entry in _zip.Entries)
            if (!zipped.TryAdd(entry.FullName, entry)) return new BackupDamaged(_path, entry.FullName);
        zipped.Remove(BackupList.Name);
        foreach (BackupEntry entry in list.Entries)
        {
            if (!BackupList.IsKnown(entry.Name)) continue;
            if (!zipped.Remove(entry.Name, out ZipArchiveEntry? found) || found.Length != entry.Size) return new BackupDamaged(_path, entry.Name);
            _files.Add((entry, found));
        }
        _ignored.AddRange(zipped.Keys.Order(StringComparer.Ordinal));
        return null;
    }

    private DataFault? Measure()
    {
        foreach ((BackupEntry entry, ZipArchiveEntry zipped) in _files)
            if (entry.Size > MostInOne || IsSuspicious(entry.Size, zipped.CompressedLength)) return new BackupTooLarge(_path, entry.Name);
        // Entries may lie over one another, so that each looks modest.
        return IsSuspicious(_files.Sum(f => f.Entry.Size), _stream.Length) ? new BackupTooLarge(_path, "all of it") : null;
    }

    private static bool IsSuspicious(long size, long packed) => size > MostSuspicious && size / MostTimes > packed;

    private DataFault? VerifyMarker()
    {
        if (_files.Find(f => f.Entry.Name == DataFolder.Marker) is not ({ } entry, { } zipped) || entry.Size > 10_000) return new BackupDamaged(_path, DataFolder.Marker);
        (_, DataFault? fault) = DataFolder.ReadMarker(Encoding.UTF8.GetString(AllOf(zipped)).Split('\n'));
        return fault is Damaged ? new BackupDamaged(_path, DataFolder.Marker) : fault;
    }

    private DataFault? VerifyFiles()
    {
        BackupJournal journal = new();
        foreach ((BackupEntry entry, ZipArchiveEntry zipped) in _files.OrderBy(f => f.Entry.Name, StringComparer.Ordinal))
        {
            using (Stream stream = Reading(entry, zipped))
                if (Convert.ToHexStringLower(SHA256.HashData(stream)) != entry.Hash) return new BackupDamaged(_path, entry.Name);
            if (entry.Name.StartsWith("kept/", StringComparison.Ordinal) && entry.Name[5..] != entry.Hash) return new BackupDamaged(_path, entry.Name);
            if (!BackupList.IsJournal(entry.Name)) continue;
            using Stream lines = Reading(entry, zipped);
            if (!journal.Follow(lines)) return new BackupDamaged(_path, entry.Name);
        }
        (Lines, Logs) = (journal.Lines, journal.Subjects);
        return journal.IsEnded ? null : new BackupDamaged(_path, "the journal's end");
    }

    private static byte[] AllOf(ZipArchiveEntry entry)
    {
        using Stream stream = new BoundedStream(entry.Open(), entry.Length);
        using MemoryStream all = new();
        stream.CopyTo(all);
        return all.ToArray();
    }

    private static BoundedStream Reading(BackupEntry entry, ZipArchiveEntry zipped) => new(zipped.Open(), entry.Size);

    private static bool IsBadZip(Exception e) =>
        e is InvalidDataException or EndOfStreamException or NotSupportedException or ArgumentException or OverflowException or IndexOutOfRangeException;

    private static DataFault FaultOf(Exception e, string path, bool beforeOpen) => e switch
    {
        FileNotFoundException or DirectoryNotFoundException => new BackupMissing(path),
        _ when IsBadZip(e) => beforeOpen && !BeginsAsBackup(path) ? new NotABackup(path) : new BackupDamaged(path, ""),
        _ => new ReadFailed(path, OperatingSystem.IsWindows() ? e.HResult & 0xFFFF : e.HResult),
    };

    /// <summary>A zip's directory lies at its end: of one that was cut off, only the first entry's name can still be told.</summary>
    private static bool BeginsAsBackup(string path)
    {
        Span<byte> head = stackalloc byte[30 + 20];
        using FileStream file = new(path, FileMode.Open, FileAccess.Read, FileShare.Read);
        return file.ReadAtLeast(head, head.Length, throwOnEndOfStream: false) == head.Length
            && head[30..].SequenceEqual(Encoding.ASCII.GetBytes(BackupList.Name));
    }

    public void Dispose()
    {
        _zip.Dispose();
        _stream.Dispose();
    }
}
