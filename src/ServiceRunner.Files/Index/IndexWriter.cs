using System.Diagnostics;

namespace ServiceRunner.Files.Index;

/// <summary>
/// Brings the index up behind the journal, on a thread of its own: an append is acknowledged without waiting for it. A
/// question waits until the index has caught up. Without a question it lets a few lines gather: each of its own writes
/// makes the journal's next sync longer.
/// </summary>
internal sealed class IndexWriter : IDisposable
{
    private const int Enough = 500;
    private static readonly TimeSpan Gathering = TimeSpan.FromMilliseconds(25);

    private readonly JournalIndex _index;
    private Thread? _thread;
    private readonly object _gate = new();
    private List<IndexedLine> _waiting = [];
    private bool _busy, _asked, _ended;
    private Exception? _failure;

    public IndexWriter(JournalIndex index) => _index = index;

    public void Add(IEnumerable<IndexedLine> lines)
    {
        lock (_gate)
        {
            bool sleeps = _waiting.Count == 0;
            _waiting.AddRange(lines);
            if (_thread is null) Begin();
            // While it gathers it looks by itself when the time is over; to wake it would be a part of every step.
            else if (sleeps || _waiting.Count >= Enough) Monitor.PulseAll(_gate);
        }
    }

    // With the first line: whoever only looks at the board does not wait for a thread.
    private void Begin()
    {
        _thread = new Thread(Run) { IsBackground = true, Name = "index" };
        _thread.Start();
    }

    /// <summary>Waits until all that was given is in the index.</summary>
    public void CatchUp()
    {
        lock (_gate)
        {
            _asked = true;
            Monitor.PulseAll(_gate);
            while (_failure is null && (_busy || _waiting.Count > 0)) Monitor.Wait(_gate);
            _asked = false;
            if (_failure is not null) throw new IndexUnusableException($"the index took no more lines: {_failure.Message}");
        }
    }

    private void Run()
    {
        while (Take() is { } lines)
        {
            Exception? failure = null;
            try
            {
                _index.Add(lines);
            }
            catch (Exception e)
            {
                // Whatever it is, the journal has the lines: the next question makes the index anew.
                failure = e;
            }
            lock (_gate)
            {
                _busy = false;
                _failure = failure;
                Monitor.PulseAll(_gate);
                if (failure is not null) return;
            }
        }
    }

    private List<IndexedLine>? Take()
    {
        lock (_gate)
        {
            while (_waiting.Count == 0 && !_ended) Monitor.Wait(_gate);
            if (_waiting.Count == 0) return null;
            long start = Stopwatch.GetTimestamp();
            while (!_asked && !_ended && _waiting.Count < Enough && Gathering - Stopwatch.GetElapsedTime(start) is { Ticks: > 0 } left) Monitor.Wait(_gate, left);
            List<IndexedLine> lines = _waiting;
            _waiting = [];
            _busy = true;
            return lines;
        }
    }

    /// <summary>Ends the thread after what it was given; false if the index is not whole.</summary>
    public bool End()
    {
        lock (_gate)
        {
            _ended = true;
            Monitor.PulseAll(_gate);
        }
        _thread?.Join();
        return _failure is null;
    }

    public void Dispose() => End();
}
