using System.Diagnostics;
using System.Globalization;
using System.Text.RegularExpressions;
using Xunit.Sdk;

namespace ServiceRunner.Tests.Terminal;

/// <summary>
/// A real terminal with a shell in it: a tmux of our own with an empty configuration, an empty home and a pinned
/// environment, so that nothing of the machine gets into a test. Linux; needs tmux and bash.
/// </summary>
internal sealed class Tmux : IDisposable
{
    private static int _count;
    private int _runs;

    private readonly string _socket = $"servicerunner-{Environment.ProcessId}-{Interlocked.Increment(ref _count)}";

    /// <param name="environment">Set besides what is pinned; a null takes a variable away.</param>
    public Tmux(int width = 80, int height = 24, params (string Name, string? Value)[] environment)
    {
        Home = Directory.CreateTempSubdirectory("servicerunner-home-").FullName;
        Tell(environment, ["new-session", "-d", "-x", $"{width}", "-y", $"{height}", "env PS1='$ ' HISTFILE= bash --norc --noprofile -i"]);
        WaitFor("$");
    }

    /// <summary>The home of everything that runs in here, empty at first, deleted at the end.</summary>
    public string Home { get; }

    /// <summary>Runs a command line; <see cref="ExitCode"/> waits for its end.</summary>
    public void Run(string commandLine)
    {
        Text($"clear; {commandLine}; echo {++_runs}-ended:$?");
        Keys("Enter");
    }

    /// <summary>Waits until what was run has ended by itself.</summary>
    public int ExitCode(TimeSpan? timeout = null)
    {
        string mark = $"{_runs}-ended:";
        string screen = WaitUntil(s => Regex.IsMatch(s, mark + @"\d"), "the end of the command", timeout);
        return int.Parse(Regex.Match(screen, mark + @"(\d+)").Groups[1].Value, CultureInfo.InvariantCulture);
    }

    /// <summary>Presses keys by the names that tmux has for them: Enter, PageDown, Escape, F5, C-c, M-x, a.</summary>
    public void Keys(params string[] keys) => Tell("send-keys", [.. keys]);

    /// <summary>Sends characters as they are: text, or a sequence such as ESC [ 2 5 ~.</summary>
    public void Text(string characters) => Tell("send-keys", "-l", "--", characters);

    /// <summary>Pastes as a person does: between brackets where the program asked for that.</summary>
    public void Paste(string text)
    {
        Tell("set-buffer", "--", text);
        Tell("paste-buffer", "-p");
    }

    public void Resize(int width, int height) => Tell("resize-window", "-x", $"{width}", "-y", $"{height}");

    /// <summary>What stands on the screen, without the blanks at the ends of rows and below.</summary>
    public string Capture() => string.Join('\n', Tell("capture-pane", "-p").Split('\n').Select(row => row.TrimEnd())).TrimEnd('\n');

    public bool AlternateScreen => Flag("alternate_on");

    public bool CursorShown => Flag("cursor_flag");

    public bool MouseReported => Flag("mouse_any_flag");

    private bool Flag(string name) => Tell("display-message", "-p", $"#{{{name}}}").Trim() == "1";

    /// <summary>Waits until a text is on the screen; returns the screen.</summary>
    public string WaitFor(string text, TimeSpan? timeout = null) =>
        WaitUntil(screen => screen.Contains(text, StringComparison.Ordinal), $"\"{text}\"", timeout);

    /// <summary>Waits for a full-screen program to have drawn something.</summary>
    public string WaitForScreen(TimeSpan? timeout = null) =>
        WaitUntil(screen => AlternateScreen && screen.Trim().Length > 0, "a full screen", timeout);

    /// <summary>Waits for the shell to be back.</summary>
    public string WaitForShell(TimeSpan? timeout = null) => WaitUntil(_ => !AlternateScreen, "the shell", timeout);

    private string WaitUntil(Func<string, bool> condition, string what, TimeSpan? timeout)
    {
        TimeSpan patience = timeout ?? TimeSpan.FromSeconds(20);
        Stopwatch waited = Stopwatch.StartNew();
        while (true)
        {
            string screen = Capture();
            if (condition(screen)) return screen;
            if (waited.Elapsed > patience) throw new XunitException($"waited {patience.TotalSeconds} s for {what}; the screen is\n{screen}");
            Thread.Sleep(50);
        }
    }

    /// <summary>The process that the shell started last.</summary>
    public int Foreground
    {
        get
        {
            string shell = Tell("display-message", "-p", "#{pane_pid}").Trim();
            string children = File.ReadAllText($"/proc/{shell}/task/{shell}/children").Trim();
            return children.Length > 0 ? int.Parse(children.Split(' ')[^1], CultureInfo.InvariantCulture) : throw new XunitException($"the shell runs nothing; the screen is\n{Capture()}");
        }
    }

    /// <summary>Sends a signal (TERM, HUP, …) to what runs in the foreground.</summary>
    public void Signal(string name) => Start("kill", [], ["-" + name, $"{Foreground}"]);

    /// <summary>Throws when the terminal is not as a shell needs it. Only while the shell waits.</summary>
    public void AssertWhole()
    {
        Assert.False(AlternateScreen, "still on the alternate screen");
        Assert.True(CursorShown, "no cursor");
        Assert.False(MouseReported, "the mouse is still reported");
        Assert.False(Flag("keypad_flag") || Flag("keypad_cursor_flag"), "the keypad is in its other mode");
        Run("stty -a > ~/settings");
        Assert.Equal(0, ExitCode());
        string settings = File.ReadAllText(Path.Combine(Home, "settings"));
        foreach (string on in new[] { "icanon", "echo", "isig", "icrnl", "opost" })
            Assert.Matches($@"(^|\s){on}(\s|;|$)", settings);
    }

    /// <summary>Closes the terminal, as when its window is closed.</summary>
    public void Kill() => Start("tmux", [], ["-L", _socket, "kill-server"]);

    public void Dispose()
    {
        Kill();
        for (int tries = 0; ; tries++)
        {
            try
            {
                Directory.Delete(Home, recursive: true);
                return;
            }
            catch (IOException) when (tries < 50)
            {
                Thread.Sleep(100); // what ran in here is still writing its last
            }
        }
    }

    private string Tell(params string[] arguments) => Tell([], arguments);

    private string Tell(string command, string[] arguments) => Tell([], [command, .. arguments]);

    private string Tell((string Name, string? Value)[] environment, string[] arguments) =>
        Start("tmux", environment, ["-u", "-L", _socket, "-f", "/dev/null", .. arguments]);

    private string Start(string program, (string Name, string? Value)[] environment, string[] arguments)
    {
        ProcessStartInfo start = new(program, arguments) { RedirectStandardOutput = true, RedirectStandardError = true };
        string? path = Environment.GetEnvironmentVariable("PATH"), root = Environment.GetEnvironmentVariable("DOTNET_ROOT");
        start.Environment.Clear();
        start.Environment["PATH"] = path;
        if (root is not null) start.Environment["DOTNET_ROOT"] = root;
        start.Environment["HOME"] = Home;
        start.Environment["LANG"] = "C.UTF-8";
        start.Environment["TZ"] = "UTC";
        foreach ((string name, string? value) in environment)
        {
            if (value is null) start.Environment.Remove(name);
            else start.Environment[name] = value;
        }
        using Process process = Process.Start(start)!;
        Task<string> errors = process.StandardError.ReadToEndAsync();
        string output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        if (process.ExitCode != 0 && program == "tmux" && !arguments.Contains("kill-server"))
            throw new XunitException($"tmux {string.Join(' ', arguments)}: {errors.Result}");
        return output;
    }
}
