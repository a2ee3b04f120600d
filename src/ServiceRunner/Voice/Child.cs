using System.ComponentModel;
using System.Diagnostics;

namespace ServiceRunner.Voice;

/// <summary>How a started program came to its end.</summary>
internal enum ChildEnd
{
    /// <summary>It did its work.</summary>
    Done,

    /// <summary>It could not be started, or ended with a fault.</summary>
    Failed,

    /// <summary>It did not end in time and was killed.</summary>
    Hung,

    /// <summary>It was cut short by us.</summary>
    Cut,
}

/// <summary>
/// One run of a sound or speech program, from its start to its end, on the thread that calls. There is no shell: the
/// arguments are a list. All three of its streams are ours, so that it neither writes on the screen nor reads keys; the
/// runtime would otherwise also set the terminal's modes for it.
/// </summary>
internal static class Child
{
    private const int Look = 15;

    /// <summary>Runs a program.</summary>
    /// <param name="path">Where it is.</param>
    /// <param name="arguments">Its arguments.</param>
    /// <param name="input">What it reads, small enough for a pipe.</param>
    /// <param name="least">What its work takes at the very least: espeak-ng without a sound card complains, and ends at once as if all were well.</param>
    /// <param name="bound">When it is killed.</param>
    /// <param name="cut">True once it is to end at once.</param>
    public static ChildEnd Run(string path, IReadOnlyList<string> arguments, ReadOnlySpan<byte> input, TimeSpan least, TimeSpan bound, Func<bool> cut)
    {
        ProcessStartInfo start = new(path, arguments)
        {
            UseShellExecute = false,
            CreateNoWindow = true,
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        Process? started;
        try
        {
            started = Process.Start(start);
        }
        catch (Exception e) when (e is Win32Exception or IOException or InvalidOperationException or UnauthorizedAccessException)
        {
            return ChildEnd.Failed;
        }
        if (started is null) return ChildEnd.Failed;
        using Process process = started;
        using Stream output = process.StandardOutput.BaseStream, fault = process.StandardError.BaseStream;
        _ = Drain(output);
        Task<bool> complaint = Drain(fault);
        Give(process, input);
        long begun = Stopwatch.GetTimestamp();
        ChildEnd end = Wait(process, bound, cut);
        bool tooSoon = end == ChildEnd.Done && Stopwatch.GetElapsedTime(begun) < least;
        return tooSoon && complaint.Wait(Look) && complaint.Result ? ChildEnd.Failed : end;
    }

    // What is given fits a pipe, so that this returns even if nobody reads it.
    private static void Give(Process process, ReadOnlySpan<byte> input)
    {
        try
        {
            using Stream stream = process.StandardInput.BaseStream;
            stream.Write(input);
        }
        catch (IOException)
        {
            // It has ended, or reads nothing.
        }
    }

    private static ChildEnd Wait(Process process, TimeSpan bound, Func<bool> cut)
    {
        long begun = Stopwatch.GetTimestamp();
        while (!process.WaitForExit(Look))
        {
            bool isCut = cut();
            if (!isCut && Stopwatch.GetElapsedTime(begun) < bound) continue;
            Kill(process);
            return isCut ? ChildEnd.Cut : ChildEnd.Hung;
        }
        return process.ExitCode == 0 ? ChildEnd.Done : cut() ? ChildEnd.Cut : ChildEnd.Failed;
    }

    private static void Kill(Process process)
    {
        try
        {
            process.Kill(entireProcessTree: true);
            process.WaitForExit(200);
        }
        catch (Exception e) when (e is Win32Exception or InvalidOperationException or NotSupportedException or AggregateException)
        {
            // It ended by itself meanwhile.
        }
    }

    // Read and thrown away, whatever it writes: a full pipe would stop it. True if there was anything.
    private static async Task<bool> Drain(Stream stream)
    {
        byte[] waste = new byte[4096];
        bool any = false;
        try
        {
            while (await stream.ReadAsync(waste).ConfigureAwait(false) > 0) any = true;
        }
        catch (Exception e) when (e is IOException or ObjectDisposedException or OperationCanceledException)
        {
            // The run is over.
        }
        return any;
    }
}
