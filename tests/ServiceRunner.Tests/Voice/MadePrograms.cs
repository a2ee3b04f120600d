using System.Diagnostics;
using ServiceRunner.Voice;
using VoiceSettings = ServiceRunner.Core.Workshops.Voice;

namespace ServiceRunner.Tests.Voice;

/// <summary>A folder with small real programs in it, and what they wrote down.</summary>
internal sealed class MadePrograms : IDisposable
{
    private int _bells;

    public MadePrograms() => Directory.CreateDirectory(Temporary);

    public string Folder { get; } = Directory.CreateTempSubdirectory("voice-test-").FullName;

    public string Log => Path.Combine(Folder, "log");

    public string Temporary => Path.Combine(Folder, "temporary");

    public int Bells => Volatile.Read(ref _bells);

    /// <summary>Makes a program of the lines of a shell script.</summary>
    public string Make(string name, string script)
    {
        string path = Path.Combine(Folder, name);
        // Written beside and moved in: a file that is still open for writing cannot be run.
        File.WriteAllText(path + ".part", $"#!/bin/sh\ncd '{Folder}'\n{script}\n");
        if (!OperatingSystem.IsWindows()) File.SetUnixFileMode(path + ".part", UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
        File.Move(path + ".part", path);
        return path;
    }

    /// <summary>Writes down what it is given, in one line with a mark before it.</summary>
    public string Speech(string before = "") => Make("speech", $"text=$(cat)\necho \"say $text\" >> log\n{before}");

    /// <summary>Writes down which tone it is given.</summary>
    public string Player() => Make("player", "echo \"tone $(basename \"$1\")\" >> log");

    public Speaker Start(VoiceSettings settings) =>
        new(settings, () => Interlocked.Increment(ref _bells), $"{Folder}{Path.PathSeparator}/usr/bin{Path.PathSeparator}/bin", Temporary);

    public string[] Lines => File.Exists(Log) ? File.ReadAllLines(Log) : [];

    /// <summary>Waits until what is wanted is so; fails with what was written down.</summary>
    public void Until(Func<bool> wanted, int seconds = 10)
    {
        long begun = Stopwatch.GetTimestamp();
        while (!wanted())
        {
            Assert.True(Stopwatch.GetElapsedTime(begun).TotalSeconds < seconds, $"waited in vain; {Bells} bells and:\n{string.Join('\n', Lines)}");
            Thread.Sleep(10);
        }
    }

    public void UntilLines(int count) => Until(() => Lines.Length >= count);

    public void Dispose() => Directory.Delete(Folder, recursive: true);
}
