using System.Globalization;
using ServiceRunner.Files.Sentences;

namespace ServiceRunner.Screens;

/// <summary>What stands around every screen: the head, the line of messages, the open question, the foot with its keys.</summary>
internal static class Frame
{
    public static void Head(Sheet sheet, Shell shell)
    {
        string right = $"{Who(shell)}  {shell.Session.Now.Wall.ToString("ddd d MMM H:mm", CultureInfo.InvariantCulture)} ";
        sheet.Write(1, 0, Paragraph.Clip(shell.Screen.Head, sheet.Width - Sheet.Columns(right) - 3), Ink.Bar);
        sheet.Write(sheet.Width - Sheet.Columns(right), 0, right, Ink.Bar);
        sheet.Paint(0, 0, sheet.Width, Ink.Bar);
    }

    /// <summary>The most urgent alarm, on every screen, in words.</summary>
    public static void Alarm(Sheet sheet, string words, int count)
    {
        const int row = 1;
        sheet.Write(0, row, new string(' ', sheet.Width));
        sheet.Write(1, row, Paragraph.Clip($"▲ {words}{(count > 1 ? $" (and {count - 1} more)" : "")}. Space answers.", sheet.Width - 2), Ink.Alarm);
        sheet.Paint(0, row, sheet.Width, Ink.Alarm);
    }

    public static void Message(Sheet sheet, string message, bool refusal, bool overQuestion)
    {
        IReadOnlyList<string> lines = Paragraph.Wrap(message, sheet.Width - 2);
        int row = overQuestion ? sheet.Height - 4 : sheet.Height - 3;
        if (lines.Count > 1) row -= Math.Min(2, lines.Count - 1);
        for (int i = 0; i < Math.Min(3, lines.Count); i++)
        {
            sheet.Write(0, row + i, new string(' ', sheet.Width));
            sheet.Write(1, row + i, lines[i], refusal ? Ink.Caution : Ink.Good);
        }
    }

    public static Entry Question(Sheet sheet, Prompt prompt, int id)
    {
        int row = sheet.Height - 2;
        for (int r = sheet.Height - 3; r < sheet.Height; r++) sheet.Write(0, r, new string(' ', sheet.Width));
        sheet.Write(1, row - 1, Paragraph.Clip(prompt.Label, sheet.Width - 2), Ink.Strong);
        sheet.Write(1, row, "›", Ink.Key);
        sheet.Write(1, row + 1, Paragraph.Clip($"{prompt.Hint}{(prompt.Hint.Length > 0 ? "  " : "")}Enter takes it, Esc leaves it and keeps what was typed.", sheet.Width - 2), Ink.Faint);
        return new Entry(id, prompt.Label, prompt.Start, 3, row, Math.Max(1, sheet.Width - 4));
    }

    /// <summary>Two rows of keys, the most wanted first; what cannot be done now is left out here and explained by its key.</summary>
    public static void Foot(Sheet sheet, IReadOnlyList<ScreenAction> actions)
    {
        int x = 1, y = sheet.Height - 2;
        foreach (ScreenAction action in actions.Where(a => a.Weight < 100 && a.Name.Length > 0).OrderBy(a => a.Weight))
        {
            if (action.WhyNot().Length > 0) continue;
            string key = string.Join('/', action.Keys.Take(2).Select(KeyName));
            string name = Paragraph.Clip(action.Name, Math.Max(8, sheet.Width - 4 - Sheet.Columns(key)));
            int wide = Sheet.Columns(key) + 1 + Sheet.Columns(name);
            if (x + wide > sheet.Width - 1)
            {
                if (y == sheet.Height - 1) continue;
                (x, y) = (1, y + 1);
            }
            x = sheet.Write(x, y, key, Ink.Key);
            x = sheet.Write(x + 1, y, name) + 3;
        }
    }

    /// <summary>A key as it is called on the screen.</summary>
    public static string KeyName(string key) => key switch { "PageUp" => "PgUp", "PageDown" => "PgDn", _ => key };

    private static string Who(Shell shell)
    {
        string initials = shell.Session.Bench.Repairer;
        string name = shell.Session.Workshop.People.FirstOrDefault(p => p.Initials.Value == initials)?.Name ?? "";
        string who = initials.Length == 0 ? "nobody signed in" : name.Length > 0 ? name : initials;
        return shell.Session.ReadsOnly ? $"{who}, reading only" : who;
    }
}
