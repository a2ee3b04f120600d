using Microsoft.Win32.SafeHandles;
using ServiceRunner.Core.Jobs;
using ServiceRunner.Session;

namespace ServiceRunner.Benchmarks.Logs;

/// <summary>
/// A step decided, encoded, appended, synced and folded, against as many bytes appended and synced and nothing else, to a
/// file of its own in the same folder. What is offered next is not measured: the screen asked that before the key.
/// </summary>
internal sealed class Append : IDisposable
{
    private const int Rounds = 8;

    private readonly TimeSpan _rest;
    private readonly string _folder;
    private readonly MadeBench _bench;
    private readonly OpenJob _job;
    private readonly Repairer _repairer;
    private readonly SafeFileHandle _bare;
    private long _bareEnd, _journalEnd;

    private Append(string folder, TimeSpan rest)
    {
        (_folder, _rest) = (folder, rest);
        _bench = new MadeBench(folder);
        _job = _bench.Book("Q26-001");
        _repairer = new Repairer(_bench, _job);
        _bare = File.OpenHandle(Path.Combine(folder, "bare"), FileMode.CreateNew, FileAccess.ReadWrite);
        for (int i = 0; i < 50; i++) Bare(Step().Bytes);
    }

    public static void Run()
    {
        using Disk disk = new();
        disk.Say();
        using (Append append = new(disk.In("one"), TimeSpan.Zero)) append.Measure("back-to-back", 100);
        // At a bench seconds pass between two steps, and the index has written behind the one before.
        using (Append append = new(disk.In("two"), TimeSpan.FromMilliseconds(60))) append.Measure("with a rest before each", 30);
    }

    private void Measure(string how, int steps)
    {
        Pairs pairs = new($"a step, {how}", "bare append and fdatasync", "ms");
        List<double> sizes = [];
        for (int round = 0; round < Rounds; round++)
        {
            pairs.Begin();
            for (int i = 0; i < steps; i++)
            {
                // What the index writes behind a step is brought to the disk by the next sync: by the next step's, which is
                // ours to pay, and not by the floor's.
                if (_rest > TimeSpan.Zero) Step();
                (double step, int bytes) = Step();
                if (_rest > TimeSpan.Zero) Bare(bytes);
                pairs.Add(step, Bare(bytes));
                sizes.Add(bytes);
            }
        }
        pairs.Print(mostRatio: 1.5);
        Pairs.Line("bytes of a step (median)", Pairs.Figure(Pairs.Median(sizes)));
    }

    private (double Took, int Bytes) Step()
    {
        JobAction action = _repairer.Next();
        Thread.Sleep(_rest);
        double took = Pairs.Milliseconds(() => _bench.Act(_job, action));
        long end = Directory.EnumerateFiles(_folder, "journal-*.log").Sum(f => new FileInfo(f).Length), bytes = end - _journalEnd;
        _journalEnd = end;
        return (took, (int)Math.Min(bytes, 10_000));
    }

    private double Bare(int count)
    {
        byte[] bytes = new byte[count];
        bytes.AsSpan().Fill((byte)'x');
        Thread.Sleep(_rest);
        double took = Pairs.Milliseconds(() =>
        {
            RandomAccess.Write(_bare, bytes, _bareEnd);
            Disk.Sync(_bare);
        });
        _bareEnd += count;
        return took;
    }

    public void Dispose()
    {
        _bare.Dispose();
        _bench.Dispose();
    }
}
