using Terminal.Gui.App;
using Terminal.Gui.Configuration;

namespace ServiceRunner.Terminal;

/// <summary>
/// The terminal library reads ~/.tui, ./.tui and $TUI_CONFIG while its assembly loads, and a file there, written for
/// another program, can give Space the meaning "quit". There is no switch for this; so its own defaults are put back
/// before it is used.
/// </summary>
internal static class LibraryDefaults
{
    public static void Pin()
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
        Application.MaximumIterationsPerSecond = 50; // a key is on the screen after 20 ms; more gains nothing
    }
}
