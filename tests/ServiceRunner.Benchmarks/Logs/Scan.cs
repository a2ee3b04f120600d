using System.Security.Cryptography;
using ServiceRunner.Files.Journal;

namespace ServiceRunner.Benchmarks.Logs;

/// <summary>
/// What an audit does to the whole journal: each line read, its two hashes and its place in two chains verified. The floor
/// reads the same bytes in blocks and hashes them once.
/// </summary>
internal static class Scan
{
    private const int Lines = 100_000, Rounds = 7;

    public static void Run()
    {
        using Disk disk = new();
        disk.Say();
        string folder = disk.In("log");
        long lines = YearsOfWork.Make(folder, Lines), bytes = Directory.EnumerateFiles(folder, "journal-*.log").Sum(f => new FileInfo(f).Length);
        Pairs pairs = new($"{lines:N0} lines, {bytes >> 20} MiB, audited", "read and one SHA-256", "ms");
        pairs.Run(Rounds, () => Audit(folder), () => Bare(folder));
        pairs.Print();
        Pairs.Line("lines a second", $"{lines / pairs.Ours * 1000:N0}");
    }

    private static double Audit(string folder) => Pairs.Milliseconds(() =>
    {
        if (JobLog.Scan(folder).Any(i => i is ScannedDamage)) throw new InvalidOperationException("the log that was made is damaged");
    });

    private static double Bare(string folder) => Pairs.Milliseconds(() =>
    {
        byte[] block = new byte[80_000];
        foreach (string file in Directory.EnumerateFiles(folder, "journal-*.log").Order(StringComparer.Ordinal))
        {
            using IncrementalHash hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
            using FileStream stream = new(file, FileMode.Open, FileAccess.Read, FileShare.ReadWrite, bufferSize: 0);
            while (stream.Read(block) is > 0 and int read) hash.AppendData(block, 0, read);
        }
    });
}
