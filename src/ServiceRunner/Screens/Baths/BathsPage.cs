using ServiceRunner.Core.Benches;
using ServiceRunner.Core.Jobs;
using ServiceRunner.Core.Quantities;
using ServiceRunner.Core.Workshops;
using ServiceRunner.Files.Sentences;
using ServiceRunner.Session;

namespace ServiceRunner.Screens.Baths;

/// <summary>Draws the clocks as large as they fit: in big figures, or a line each where there are many.</summary>
internal static class BathsPage
{
    private const int Block = BigFigures.Rows + 4;

    /// <summary>Rows of a clock in big figures without the row of doubt.</summary>
    public const int BigRows = BigFigures.Rows + 2;

    public static void Draw(Sheet sheet, int top, int rows, BathsModel model, Shell shell)
    {
        IReadOnlyList<(OpenJob Job, Soak Soak)> clocks = model.Clocks;
        Moment now = shell.Session.Now;
        if (clocks.Count == 0)
        {
            sheet.Write(1, top + 1, "No clock runs.", Ink.Strong);
            sheet.Write(1, top + 2, "A step with a bath, a drying or a wait starts one when you go on.", Ink.Faint);
            Jars(sheet, top + 4, top + rows, shell);
            return;
        }
        int across = Math.Max(1, sheet.Width / 40), down = Math.Max(1, rows / Block);
        if (clocks.Count > across * down)
        {
            for (int i = 0; i < Math.Min(rows, clocks.Count); i++) Line(sheet, top + i, clocks[i], shell, now);
            return;
        }
        int wide = sheet.Width / across;
        for (int i = 0; i < clocks.Count; i++) Big(sheet, 1 + i % across * wide, top + i / across * Block, wide - 2, clocks[i], shell, now);
        Jars(sheet, top + (clocks.Count + across - 1) / across * Block, top + rows, shell);
    }

    /// <summary>A clock in one line, for this page and for the foot of Run.</summary>
    public static void Line(Sheet sheet, int y, (OpenJob Job, Soak Soak) clock, Shell shell, Moment now)
    {
        (OpenJob job, Soak soak) = clock;
        Elapsed length = soak.Length(now);
        Standing standing = soak.Standing(now);
        Ink ink = InkOf(standing);
        sheet.Write(1, y, Times.Clock(length.Length).PadLeft(9), ink);
        string text = $"{JobWords.Clock(soak.Begun, shell.Session.Workshop)}, {job.State.Number}: {JobWords.Of(standing, soak.Window, length.Length)}{(length.Certain ? "" : $"; {Doubt}")}";
        sheet.Write(11, y, Paragraph.Clip(text, sheet.Width - 12), ink);
    }

    /// <summary>A clock in big figures, with its words above and below; in the row under them, if it is so, the doubt of its length.</summary>
    public static void Big(Sheet sheet, int x, int y, int wide, (OpenJob Job, Soak Soak) clock, Shell shell, Moment now)
    {
        (OpenJob job, Soak soak) = clock;
        Elapsed length = soak.Length(now);
        Standing standing = soak.Standing(now);
        Ink ink = InkOf(standing);
        sheet.Write(x, y, Paragraph.Clip($"{JobWords.Clock(soak.Begun, shell.Session.Workshop)}, {job.State.Number}", wide), Ink.Strong);
        IReadOnlyList<string> figures = BigFigures.Of(Times.Clock(length.Length), Sheet.Columns(BigFigures.Of(Times.Clock(length.Length))[0]) <= wide ? 2 : 1);
        for (int r = 0; r < BigFigures.Rows; r++) sheet.Write(x, y + 1 + r, Paragraph.Clip(figures[r], wide), ink);
        sheet.Write(x, y + 1 + BigFigures.Rows, Paragraph.Clip(JobWords.Of(standing, soak.Window, length.Length), wide), ink);
        if (!length.Certain) sheet.Write(x, y + 2 + BigFigures.Rows, Paragraph.Clip(Doubt, wide), Ink.Caution);
    }

    private static void Jars(Sheet sheet, int y, int end, Shell shell)
    {
        if (shell.Session.Workshop.Jars.Count == 0 || y + 2 >= end) return;
        sheet.Write(1, y++, "Jars", Ink.Faint);
        // What is due to be renewed first, then what was used: the rest can wait below the edge.
        Bench bench = shell.Session.Bench;
        foreach (Jar jar in shell.Session.Workshop.Jars.OrderByDescending(j => bench.IsSpent(j, shell.Session.Now.Wall)).ThenByDescending(j => bench.JarOf(j.Id).Baskets > 0))
        {
            if (y >= end) return;
            bool spent = bench.IsSpent(jar, shell.Session.Now.Wall);
            sheet.Write(3, y, Paragraph.Clip(jar.Name, 28));
            sheet.Write(32, y++, Paragraph.Clip(JarLife(shell, jar), sheet.Width - 33), spent ? Ink.Caution : Ink.Faint);
        }
    }

    /// <summary>What is known of a jar's filling.</summary>
    public static string JarLife(Shell shell, Jar jar)
    {
        JarRecord record = shell.Session.Bench.JarOf(jar.Id);
        string filled = record.FilledAt is { } at ? $"filled {Times.When(at, shell.Session.Now.Wall)}" : "nobody said when it was filled";
        string baskets = jar.LifeBaskets is { } life ? $"{record.Baskets} of {life} baskets" : Times.Count(record.Baskets, "basket");
        return $"{filled}, {baskets}{(shell.Session.Bench.IsSpent(jar, shell.Session.Now.Wall) ? "; due to be renewed" : "")}";
    }

    /// <summary>That the jar that is wanted next asks to be renewed; empty if it does not.</summary>
    public static string Renewal(Offer offer, Shell shell) =>
        offer is Offer.Begin { Jar.Length: > 0 } begin && shell.Session.Workshop.Jars.FirstOrDefault(j => j.Id.Value == begin.Jar) is { } jar && shell.Session.Bench.IsSpent(jar, shell.Session.Now.Wall)
            ? $"{jar.Name} asks to be renewed: {JarLife(shell, jar)}." : "";

    private static Ink InkOf(Standing standing) => standing switch { Standing.Over => Ink.Alarm, Standing.AtAim => Ink.Good, _ => Ink.Clock };

    // The machine was started again meanwhile: the length rests on its wall clock alone.
    public const string Doubt = "restarted: by the wall clock";
}
