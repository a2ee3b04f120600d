using System.Globalization;
using System.Reflection;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Text;
using System.Text.RegularExpressions;

namespace ServiceRunner.Diagnosis;

/// <summary>
/// What the program itself went through, for whoever looks into a trouble: no names, no numbers of jobs, no text that
/// anybody typed. So an exception is written without its message, which may quote any of them. See docs/verbs.md.
/// </summary>
internal sealed partial class DiagnosticLog(TimeProvider time)
{
    /// <summary>The file in the data folder, and what it was before it was full.</summary>
    public const string Name = "diagnostic.log", Before = "diagnostic-before.log";

    /// <summary>How large either file may become, in bytes.</summary>
    public const long Most = 256 << 10;

    /// <summary>A disk that takes longer is worth a line.</summary>
    public static readonly TimeSpan SlowWrite = TimeSpan.FromMilliseconds(200);

    private readonly Lock _guard = new();
    private readonly long _begun = time.GetTimestamp();
    private string? _path;
    private bool _gaveUp;

    /// <summary>True with <c>--diagnose</c>: every write, every screen, every size.</summary>
    public bool Closely { get; set; }

    /// <summary>Where it is written; null if it is not.</summary>
    public string? Path => _gaveUp ? null : _path;

    /// <summary>Begins to write in a data folder.</summary>
    public void OpenIn(string folder, string verb)
    {
        _path = System.IO.Path.Combine(folder, Name);
        string version = typeof(DiagnosticLog).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()?.InformationalVersion ?? "";
        Note($"start {verb} version={version} native={(RuntimeFeature.IsDynamicCodeSupported ? "no" : "yes")} runtime={Environment.Version} os={RuntimeInformation.OSDescription.ReplaceLineEndings(" ")} arch={RuntimeInformation.ProcessArchitecture}"
            + $" closely={(Closely ? "yes" : "no")} TERM={Variable("TERM")} COLORTERM={Variable("COLORTERM")} NO_COLOR={(Variable("NO_COLOR").Length > 0 ? "set" : "")}");
    }

    /// <summary>The run ends.</summary>
    public void Stop(int exit) => Note(string.Create(CultureInfo.InvariantCulture, $"stop exit={exit} after={time.GetElapsedTime(_begun).TotalSeconds:0} s"));

    /// <summary>The journal was appended to, or was not.</summary>
    public void Wrote(TimeSpan length, Files.Data.DataFault? fault)
    {
        if (fault is not null) Note($"write refused: {fault.GetType().Name}");
        if (length >= SlowWrite || Closely) Note(string.Create(CultureInfo.InvariantCulture, $"{(length >= SlowWrite ? "slow write" : "write")} {length.TotalMilliseconds:0} ms"));
    }

    /// <summary>An exception: what it is and where it came from, and not what it says.</summary>
    public void Fault(Exception e)
    {
        StringBuilder text = new("fault");
        for (Exception? at = e; at is not null; at = at.InnerException)
        {
            text.Append(CultureInfo.InvariantCulture, $"{(at == e ? " " : "\n  caused by ")}{at.GetType().Name} 0x{at.HResult:X8}");
            foreach (string line in (at.StackTrace ?? "").Split('\n', StringSplitOptions.RemoveEmptyEntries)) text.Append("\n    ").Append(Folders().Replace(line.Trim(), " in "));
        }
        Note(text.ToString());
    }

    /// <summary>One line.</summary>
    public void Note(string what)
    {
        lock (_guard)
        {
            if (Path is not { } path) return;
            try
            {
                if (new FileInfo(path) is { Exists: true, Length: > Most }) File.Move(path, System.IO.Path.Combine(System.IO.Path.GetDirectoryName(path)!, Before), overwrite: true);
                File.AppendAllText(path, $"{time.GetUtcNow().UtcDateTime.ToString("yyyy-MM-dd'T'HH:mm:ss.fff'Z'", CultureInfo.InvariantCulture)} {what}\n");
            }
            catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentOutOfRangeException)
            {
                // A full disk is told elsewhere, and the work must not suffer from its diagnosis.
                _gaveUp = true;
            }
        }
    }

    private static string Variable(string name) => Environment.GetEnvironmentVariable(name) is { } value ? Odd().Replace(value, "?") : "";

    // Where the program was built is nobody's business; the file's name and the line are kept.
    [GeneratedRegex(@" in (?:.*[/\\])?(?=[^/\\]+:line \d+$)")]
    private static partial Regex Folders();

    [GeneratedRegex("[^A-Za-z0-9.+-]")]
    private static partial Regex Odd();
}
