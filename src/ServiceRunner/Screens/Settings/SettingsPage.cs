namespace ServiceRunner.Screens.Settings;

/// <summary>Draws settings one below the other: name and value, and in the line below where it comes from and how to change it.</summary>
internal static class SettingsPage
{
    private const int Left = 1, NameWidth = 24;

    /// <summary>Draws from a line on; returns the line from which it was drawn.</summary>
    public static int Draw(Sheet sheet, int top, int rows, IReadOnlyList<Setting> settings, int first)
    {
        List<(string Name, string Text, Ink Ink)> lines = [.. settings.SelectMany(s => Lines(s, sheet.Width - Left - NameWidth - 1))];
        first = Math.Clamp(first, 0, Math.Max(0, lines.Count - rows));
        for (int i = 0; i < Math.Min(rows, lines.Count - first); i++)
        {
            sheet.Write(Left, top + i, lines[first + i].Name);
            sheet.Write(Left + NameWidth, top + i, lines[first + i].Text, lines[first + i].Ink);
        }
        return first;
    }

    private static IEnumerable<(string Name, string Text, Ink Ink)> Lines(Setting setting, int width)
    {
        string name = setting.Name;
        foreach (string line in Paragraph.Wrap(setting.Value, width))
        {
            yield return (name, line, Ink.Strong);
            name = "";
        }
        foreach (string line in Paragraph.Wrap($"{setting.From}. {setting.Change}", width)) yield return ("", line, Ink.Faint);
    }
}
