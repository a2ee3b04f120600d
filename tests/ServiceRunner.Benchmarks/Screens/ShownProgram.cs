using System.Diagnostics;
using System.Runtime.InteropServices;
using System.Text;

namespace ServiceRunner.Benchmarks.Screens;

/// <summary>
/// A program on a terminal of 100 by 30 that util-linux's <c>script</c> lends it; what it writes is kept with the time at
/// which it came. script's own share is in every figure, the floor's too.
/// </summary>
internal sealed class ShownProgram : IDisposable
{
    private static readonly TimeSpan Quiet = TimeSpan.FromMilliseconds(50);

    private readonly Process _script;
    private readonly object _gate = new();
    private readonly StringBuilder _text = new();
    private readonly List<(long At, int End)> _pieces = [];

    public ShownProgram(string program, params string[] args)
    {
        string command = string.Join(' ', args.Prepend(program).Select(a => $"'{a}'"));
        ProcessStartInfo start = new("script", ["-qfec", $"stty rows 30 cols 100; exec {command}", "/dev/null"])
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            Environment = { ["TERM"] = "xterm-256color", ["COLORTERM"] = "truecolor", ["SHELL"] = "/bin/sh", ["DOTNET_ROOT"] = Runtime },
        };
        start.Environment.Remove("NO_COLOR");
        StartedAt = Stopwatch.GetTimestamp();
        _script = Process.Start(start)!;
        Stream written = _script.StandardOutput.BaseStream; // the process may be gone before the thread begins
        new Thread(() => Read(written)) { IsBackground = true }.Start();
    }

    /// <summary>Why no program can be shown here; empty if one can.</summary>
    public static string WhyNot => !OperatingSystem.IsLinux() ? "this needs Linux" : File.Exists("/usr/bin/script") || File.Exists("/bin/script") ? "" : "this needs 'script' of util-linux";

    private static string Runtime => Path.GetFullPath(Path.Combine(RuntimeEnvironment.GetRuntimeDirectory(), "..", "..", ".."));

    public long StartedAt { get; }

    /// <summary>The program's process: what script has become the parent of.</summary>
    public int Pid => int.Parse(File.ReadAllText($"/proc/{_script.Id}/task/{_script.Id}/children").Trim(), System.Globalization.CultureInfo.InvariantCulture);

    /// <summary>Resident memory in MiB.</summary>
    public double Memory => File.ReadLines($"/proc/{Pid}/status").Where(l => l.StartsWith("VmRSS:", StringComparison.Ordinal))
        .Select(l => double.Parse(l.Split(' ', StringSplitOptions.RemoveEmptyEntries)[1], System.Globalization.CultureInfo.InvariantCulture) / 1024).FirstOrDefault();

    /// <summary>Sends a key and gives the milliseconds to the first byte and to the last before it was quiet; null if nothing came.</summary>
    public (double First, double Last)? Press(string key)
    {
        int before;
        lock (_gate) before = _pieces.Count;
        byte[] bytes = Encoding.ASCII.GetBytes(key);
        long start = Stopwatch.GetTimestamp();
        _script.StandardInput.BaseStream.Write(bytes);
        _script.StandardInput.BaseStream.Flush();
        lock (_gate)
        {
            while (_pieces.Count == before)
                if (!Monitor.Wait(_gate, 1000)) return null;
            int seen;
            do
            {
                seen = _pieces.Count;
                Monitor.Wait(_gate, Quiet);
            }
            while (_pieces.Count > seen && Since(start, Stopwatch.GetTimestamp()) < 1000);
            return (Since(start, _pieces[before].At), Since(start, _pieces[^1].At));
        }
    }

    /// <summary>Milliseconds from the start until a text was written, or since then was; fails loudly if it never is.</summary>
    public double Until(string mark)
    {
        mark = Encoding.Latin1.GetString(Encoding.UTF8.GetBytes(mark));
        lock (_gate)
        {
            while (true)
            {
                int at = _text.ToString().IndexOf(mark, StringComparison.Ordinal);
                if (at >= 0) return Since(StartedAt, _pieces.First(p => p.End >= at + mark.Length).At);
                Monitor.Wait(_gate, 1000);
                if (Since(StartedAt, Stopwatch.GetTimestamp()) > 15_000) throw new InvalidOperationException($"'{mark}' never came; what came: {_text}");
            }
        }
    }

    /// <summary>What was written so far, as bytes.</summary>
    public int Written
    {
        get { lock (_gate) return _text.Length; }
    }

    private static double Since(long start, long at) => Stopwatch.GetElapsedTime(start, at).TotalMilliseconds;

    private void Read(Stream written)
    {
        byte[] block = new byte[65_536];
        while (written.Read(block) is > 0 and int count)
        {
            long now = Stopwatch.GetTimestamp();
            lock (_gate)
            {
                _text.Append(Encoding.Latin1.GetString(block, 0, count));
                _pieces.Add((now, _text.Length));
                Monitor.PulseAll(_gate);
            }
        }
    }

    /// <summary>Asks the program to end by its own key, then no longer.</summary>
    public void Dispose()
    {
        try
        {
            if (!_script.HasExited) _script.StandardInput.BaseStream.Write("q"u8);
            _script.StandardInput.BaseStream.Flush();
        }
        catch (IOException)
        {
            // It has ended.
        }
        if (!_script.WaitForExit(3000)) _script.Kill();
        _script.Dispose();
    }
}
