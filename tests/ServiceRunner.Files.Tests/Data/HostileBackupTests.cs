using System.IO.Compression;
using System.Security.Cryptography;
using System.Text;
using ServiceRunner.Files.Data;
using ServiceRunner.Files.Tests.Journal;

namespace ServiceRunner.Files.Tests.Data;

/// <summary>Files that are no backups, no longer whole, or made to do harm.</summary>
public sealed class HostileBackupTests : IDisposable
{
    private readonly LogBench _bench = new();
    private readonly string _place = Directory.CreateTempSubdirectory("hostile-").FullName;

    public HostileBackupTests()
    {
        _bench.ThreeLines();
        Assert.IsType<KeptText>(new KeptTexts(_bench.Folder).Put("steps: []"u8));
        Assert.Null(new Owners(_bench.Folder).Save("A1", new Owner("A. Fabricated", "12 Any Lane")));
        Assert.IsType<BackedUp>(Backup.Write(_bench.Folder, Target));
    }

    private string Target => Path.Combine(_place, "c.backup");

    private string Data => Path.Combine(_place, "data");

    private RestoreOutcome Read() => Restore.Read(Target, Data);

    private DataFault Refused()
    {
        DataFault fault = Assert.IsType<RestoreRefused>(Read()).Fault;
        Assert.Equal([Target], Directory.GetFileSystemEntries(_place));
        return fault;
    }

    private List<(string Name, byte[] Bytes)> Entries()
    {
        using ZipArchive zip = ZipFile.OpenRead(Target);
        return [.. zip.Entries.Select(e =>
        {
            using MemoryStream bytes = new();
            using (Stream stream = e.Open()) stream.CopyTo(bytes);
            return (e.FullName, bytes.ToArray());
        })];
    }

    private void Write(IEnumerable<(string Name, byte[] Bytes)> entries)
    {
        File.Delete(Target);
        using ZipArchive zip = ZipFile.Open(Target, ZipArchiveMode.Create);
        foreach ((string name, byte[] bytes) in entries)
        {
            using Stream stream = zip.CreateEntry(name).Open();
            stream.Write(bytes);
        }
    }

    /// <summary>With a list that fits: made by somebody who knows the format.</summary>
    private void Forge(IEnumerable<(string Name, byte[] Bytes)> entries, int version = 1)
    {
        List<(string Name, byte[] Bytes)> files = [.. entries.Where(e => e.Name != "servicerunner-backup")];
        string text = $"servicerunner-backup {version}\nbench {LogBench.BenchId}\n" + string.Concat(files.Select(f => $"file {Hash(f.Bytes)} {f.Bytes.Length} {f.Name}\n"));
        Write([("servicerunner-backup", Encoding.UTF8.GetBytes($"{text}end {Hash(Encoding.UTF8.GetBytes(text))}\n")), .. files]);
    }

    private static string Hash(byte[] bytes) => Convert.ToHexStringLower(SHA256.HashData(bytes));

    [Fact]
    public void A_forged_one_that_is_right_is_taken()
    {
        Forge(Entries());
        Assert.Equal(3, Assert.IsType<Restored>(Read()).Lines);
    }

    [Fact]
    public void Cut_off_anywhere_it_is_refused_and_nothing_is_made()
    {
        byte[] whole = File.ReadAllBytes(Target);
        for (int length = 0; length < whole.Length; length += 3)
        {
            File.WriteAllBytes(Target, whole[..length]);
            DataFault fault = Refused();
            Assert.True(length < 50 ? fault == new NotABackup(Target) : fault is BackupDamaged, $"cut at {length}: {fault}");
        }
    }

    [Fact]
    public void With_a_byte_changed_anywhere_it_is_refused_or_gives_the_same()
    {
        byte[] whole = File.ReadAllBytes(Target);
        string[] content = Content();
        int refused = 0;
        Random random = new(7);
        for (int at = 0; at < whole.Length; at++)
        {
            byte[] changed = [.. whole];
            changed[at] ^= (byte)(1 << random.Next(8));
            File.WriteAllBytes(Target, changed);
            switch (Read())
            {
                case RestoreRefused { Fault: BackupDamaged or NotABackup or BackupTooLarge or FormatFromTheFuture }:
                    refused++;
                    Assert.False(Directory.Exists(Data));
                    break;
                case Restored:
                    Assert.Equal(content, Content());
                    Directory.Delete(Data, recursive: true);
                    break;
                case var other:
                    Assert.Fail($"byte {at}: {other}");
                    break;
            }
        }
        // Times, attributes and the like change nothing that is restored.
        Assert.True(refused > whole.Length / 2, $"{refused} of {whole.Length}");

        string[] Content()
        {
            string from = Directory.Exists(Data) ? Data : _bench.Path;
            return [.. Directory.GetFiles(from, "*", SearchOption.AllDirectories).Select(f => Path.GetRelativePath(from, f))
                .Where(n => n.StartsWith("journal", StringComparison.Ordinal) || n.Contains(Path.DirectorySeparatorChar) || n == DataFolder.Marker).Order(StringComparer.Ordinal)
                .Select(n => $"{n} {Hash(File.ReadAllBytes(Path.Combine(from, n)))}")];
        }
    }

    [Theory]
    [InlineData("../outside.txt")]
    [InlineData("/tmp/outside.txt")]
    [InlineData("procedures/../../outside.yaml")]
    [InlineData("procedures/..\\..\\outside.yaml")]
    [InlineData("procedures//x.yaml")]
    [InlineData("C:\\outside.txt")]
    [InlineData("owners/../lock")]
    [InlineData("kept/AB")]
    [InlineData("index.db")]
    [InlineData("procedures/")]
    public void A_name_that_leads_elsewhere_is_not_followed(string name)
    {
        List<(string, byte[])> entries = Entries();
        foreach (bool listed in new[] { true, false })
        {
            if (listed) Forge([.. entries, (name, "x"u8.ToArray())]);
            else Write([.. entries, (name, "x"u8.ToArray())]);
            Restored back = Assert.IsType<Restored>(Read());
            Assert.Equal([name], back.Ignored);
            Assert.Equal([Target, Data], Directory.GetFileSystemEntries(_place).Order(StringComparer.Ordinal));
            Assert.Equal(["journal-2026.log", "kept", "owners", DataFolder.Marker], Directory.GetFileSystemEntries(Data).Select(e => Path.GetFileName(e)!).Order(StringComparer.Ordinal));
            Directory.Delete(Data, recursive: true);
        }
    }

    [Fact]
    public void Something_else_is_no_backup()
    {
        foreach (byte[] bytes in (byte[][])[[], "dear"u8.ToArray(), RandomNumberGenerator.GetBytes(5000)])
        {
            File.WriteAllBytes(Target, bytes);
            Assert.Equal(new NotABackup(Target), Refused());
        }
        Write([("a.txt", "x"u8.ToArray())]);
        Assert.Equal(new NotABackup(Target), Refused());
        Assert.Equal(new BackupMissing(Path.Combine(_place, "none")), Assert.IsType<RestoreRefused>(Restore.Read(Path.Combine(_place, "none"), Data)).Fault);
        Assert.Equal(new NotABackup(_place), Assert.IsType<RestoreRefused>(Restore.Read(_place, Data)).Fault);
    }

    [Fact]
    public void What_is_forged_inside_is_refused()
    {
        List<(string Name, byte[] Bytes)> entries = Entries();
        foreach ((string name, byte[] bytes) in entries.Where(e => e.Name.StartsWith("journal", StringComparison.Ordinal) || e.Name.StartsWith("kept", StringComparison.Ordinal) || e.Name == DataFolder.Marker))
        {
            Forge(entries.Select(e => e.Name == name ? (e.Name, bytes[..^1]) : e));
            if (name != DataFolder.Marker) Assert.Equal(new BackupDamaged(Target, name), Refused());
            Forge(entries.Select(e => e.Name == name ? (e.Name, [(byte)'x', .. bytes[1..]]) : e));
            Assert.Equal(new BackupDamaged(Target, name), Refused());
        }
        Forge(entries.Where(e => e.Name != DataFolder.Marker));
        Assert.Equal(new BackupDamaged(Target, DataFolder.Marker), Refused());
        Forge([.. entries, entries[^1]]);
        Assert.IsType<BackupDamaged>(Refused());
        byte[] journal = entries.Single(e => e.Name.StartsWith("journal", StringComparison.Ordinal)).Bytes;
        int second = Array.IndexOf(journal, (byte)'\n') + 1;
        Forge(entries.Select(e => e.Bytes == journal ? (e.Name, journal[second..]) : e));
        Assert.Equal(new BackupDamaged(Target, "journal-2026.log"), Refused());
    }

    [Fact]
    public void What_a_later_version_made_is_refused()
    {
        List<(string Name, byte[] Bytes)> entries = Entries();
        Forge(entries, version: 2);
        Assert.Equal(new FormatFromTheFuture(2), Refused());
        Forge(entries.Select(e => e.Name == DataFolder.Marker ? (e.Name, "3\nbench X\n"u8.ToArray()) : e));
        Assert.Equal(new FormatFromTheFuture(3), Refused());
    }

    [Fact]
    public void What_would_fill_the_disk_is_refused()
    {
        List<(string Name, byte[] Bytes)> entries = Entries();
        Forge([.. entries, ("workshop.yaml", new byte[101 << 20])]);
        Assert.Equal(new BackupTooLarge(Target, "workshop.yaml"), Refused());
        Forge([.. entries, .. Enumerable.Range(1, 3).Select(i => ($"procedures/{i}.yaml", new byte[40 << 20]))]);
        Assert.Equal(new BackupTooLarge(Target, "all of it"), Refused());
        Write([("servicerunner-backup", new byte[101 << 20]), .. entries.Skip(1)]);
        Assert.Equal(new BackupTooLarge(Target, "servicerunner-backup"), Refused());
    }

    [Fact]
    public void Nothing_is_restored_over_something_else()
    {
        Directory.CreateDirectory(Data);
        File.WriteAllText(Path.Combine(Data, "letter.txt"), "dear");
        Assert.Equal(new RestoreNotEmpty(Data), Assert.IsType<RestoreRefused>(Read()).Fault);
        Assert.Equal(["letter.txt"], Directory.GetFileSystemEntries(Data).Select(Path.GetFileName));
        File.Delete(Path.Combine(Data, "letter.txt"));
        Assert.IsType<Restored>(Restore.Read(Target, Data + Path.DirectorySeparatorChar));
    }

    public void Dispose()
    {
        _bench.Dispose();
        Directory.Delete(_place, recursive: true);
    }
}
