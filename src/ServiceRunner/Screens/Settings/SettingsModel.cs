namespace ServiceRunner.Screens.Settings;

/// <summary>Every setting in force, where it comes from and how to change it. Nothing is changed here: people write the workshop file.</summary>
public sealed class SettingsModel(Shell shell) : ScreenModel(shell)
{
    private readonly InForce _settings = new(shell);
    private int _first;

    /// <inheritdoc/>
    public override string Name => "Settings";

    /// <inheritdoc/>
    public override IReadOnlyList<ScreenAction> Actions =>
    [
        ScreenAction.Always("Esc", "back", "Returns to the screen before.", () => Shell.GoBack(), 1),
        ScreenAction.Always("PageDown", "more", "Shows the next lines.", () => _first += 8, 2),
        ScreenAction.Always("PageUp", "less", "Shows the lines before.", () => _first = Math.Max(0, _first - 8), 3),
        ScreenAction.Always("Down", "", "Moves the lines by one.", () => _first++, 100),
        ScreenAction.Always("Up", "", "Moves the lines back by one.", () => _first = Math.Max(0, _first - 1), 100),
        ScreenAction.Always("Enter", "", "Returns to the screen before.", () => Shell.GoBack(), 100),
    ];

    /// <inheritdoc/>
    public override void Draw(Sheet sheet, int top, int rows) => _first = SettingsPage.Draw(sheet, top, rows, _settings.All(), _first);
}
