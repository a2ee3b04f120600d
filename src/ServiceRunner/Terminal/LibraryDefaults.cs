using Terminal.Gui.App;
using Terminal.Gui.Configuration;
using Terminal.Gui.Drivers;

namespace ServiceRunner.Terminal;

/// <summary>
/// The terminal library reads ~/.tui, ./.tui and $TUI_CONFIG while its assembly loads, and a file there, written for
/// another program, can give Space the meaning "quit". There is no switch for this; so its own defaults are put back
/// before it is used.
/// </summary>
internal static class LibraryDefaults
{
    private const string Folder = ".tui";

    /// <summary>Puts the defaults back, if there was anything that could have changed them: it takes as long as their reading did.</summary>
    public static void Pin()
    {
        if (MayHaveRead()) PutBack();
        Application.MaximumIterationsPerSecond = 50; // a key is on the screen after 20 ms; more gains nothing
    }

    /// <summary>
    /// Lets the library begin without its clipboard, which it would look for by having bash look for xclip, and wait for both.
    /// A terminal pastes by itself, and no key of ours asks for a clipboard.
    /// </summary>
    public static void Begin(IApplication app)
    {
        string? path = Environment.GetEnvironmentVariable("PATH");
        try
        {
            if (OperatingSystem.IsLinux()) Environment.SetEnvironmentVariable("PATH", null);
            app.Init(DriverRegistry.Names.ANSI);
        }
        finally
        {
            Environment.SetEnvironmentVariable("PATH", path);
        }
    }

    // Wherever the library looks: without a home .NET answers "", and then it is ./.tui twice.
    private static bool MayHaveRead() => !string.IsNullOrEmpty(Environment.GetEnvironmentVariable("TUI_CONFIG"))
        || Path.Exists(Path.Combine(Environment.GetFolderPath(Environment.SpecialFolder.UserProfile), Folder)) || Path.Exists(Folder)
        || Path.Exists(Path.Combine(AppContext.BaseDirectory, Folder));

    private static void PutBack()
    {
        string? home = Environment.GetEnvironmentVariable("HOME");
        string? config = Environment.GetEnvironmentVariable("TUI_CONFIG");
        try
        {
            // The folder must exist: for a missing HOME .NET answers "", and then ./.tui is read.
            Environment.SetEnvironmentVariable("HOME", "/dev");
            Environment.SetEnvironmentVariable("TUI_CONFIG", null);
            ThemeSettings.Defaults = new();
            new TuiConfigurationBuilder("none", "/dev") { RuntimeConfig = "{}" }.ApplyToStaticFacades();
        }
        finally
        {
            Environment.SetEnvironmentVariable("HOME", home);
            Environment.SetEnvironmentVariable("TUI_CONFIG", config);
        }
    }
}
