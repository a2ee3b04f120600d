using Terminal.Gui.Time;

namespace ServiceRunner.Terminal;

/// <summary>
/// The library's own clock is local wall-clock time, so its timers stall or jump when the clock is set or summer time
/// ends. This one counts from a timestamp that only goes forward, and lets a test turn it by hand.
/// </summary>
internal sealed class MonotonicTime(TimeProvider time) : ITimeProvider
{
    private readonly DateTime _base = time.GetUtcNow().UtcDateTime;
    private readonly long _start = time.GetTimestamp();

    public DateTime Now => _base + time.GetElapsedTime(_start);

    public Task Delay(TimeSpan delay, CancellationToken cancellationToken = default) => Task.Delay(delay, time, cancellationToken);

    public global::Terminal.Gui.Time.ITimer CreateTimer(TimeSpan interval, Action callback) => new Timer(time, interval, callback);

    private sealed class Timer(TimeProvider time, TimeSpan interval, Action callback) : global::Terminal.Gui.Time.ITimer
    {
        private System.Threading.ITimer? _timer;

        public bool IsRunning => _timer is not null;

        public void Start() => _timer ??= time.CreateTimer(_ => callback(), null, interval, interval);

        public void Stop()
        {
            _timer?.Dispose();
            _timer = null;
        }

        public void Dispose() => Stop();
    }
}
