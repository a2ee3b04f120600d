using ServiceRunner.Core.Jobs;
using ServiceRunner.Files.Sentences;
using ServiceRunner.Screens.Run;
using ServiceRunner.Session;

namespace ServiceRunner.Screens.Large;

/// <summary>
/// Draws a step to be read from two metres: the cautions, the act, what is asked or what going on does, the clocks.
/// What makes one of them larger never makes another one too small to be read: all are large before one is huge.
/// </summary>
internal static class LargePage
{
    /// <summary>The smallest sheet on which large letters say enough; below it Run is drawn as always.</summary>
    public const int LeastWidth = 60, LeastHeight = 18;

    private const int Margin = 2, MoreGap = 2;

    // A size of null is plain text.
    private readonly record struct Arrangement(bool LargeCaution, LetterSize? Act, LetterSize? Asked, int BigClocks);

    private const LetterSize Huge = LetterSize.Double, Large = LetterSize.Single;

    // The first that fits is taken. From two metres a running clock is worth more than the question: that is answered at the bench.
    private static readonly Arrangement[] Arrangements =
    [
        new(true, Huge, Huge, 2), new(true, Huge, Large, 2), new(true, Large, Large, 2),
        new(false, Huge, Huge, 2), new(false, Huge, Large, 2), new(false, Large, Large, 2), new(false, Large, Large, 1),
        new(false, Large, null, 2), new(false, Large, null, 1), new(false, Large, Large, 0), new(false, Large, null, 0),
        new(false, null, null, 2), new(false, null, null, 1), new(false, null, null, 0),
    ];

    public static void Draw(Sheet sheet, int top, int rows, RunModel model, Shell shell)
    {
        if (sheet.Width < LeastWidth || sheet.Height < LeastHeight)
        {
            RunPage.Draw(sheet, top, rows, model, shell);
            return;
        }
        LargeWords words = LargeWords.Of(model, shell);
        IReadOnlyList<(OpenJob Job, Soak Soak)> clocks = LargeClocks.ByUrgency(shell);
        List<LargeBlock> bands = Bands(sheet, words, rows);
        foreach (Arrangement arrangement in Arrangements)
            foreach (int leading in new[] { 1, 0 })
            {
                bool last = arrangement == Arrangements[^1] && leading == 0;
                if (Blocks(sheet, words, arrangement, leading) is not { } blocks) continue;
                // What is one stands closer together than what is two.
                int least = leading + (arrangement.Asked is null && !arrangement.LargeCaution ? 0 : 1);
                LargeBlock foot = LargeClocks.Block(sheet, clocks, arrangement.BigClocks, shell);
                int gaps = blocks.Count - (bands.Count > 0 ? 0 : 1) + (foot.Rows > 0 ? 1 : 0);
                int left = rows - bands.Sum(b => b.Rows) - blocks.Sum(b => b.Rows) - foot.Rows - gaps * least;
                if (left < 0 && !last) continue;
                bool defers = words.Cautions.Count > 0 && left > 0;
                int gap = least + Math.Clamp((left - (defers ? 1 : 0)) / Math.Max(1, gaps), 0, MoreGap);
                Draw(sheet, top, rows, defers ? [.. bands, LargeBlock.Plain(sheet, Cautions.Defer, Ink.Faint, Margin + 2)] : bands, blocks, foot, gap);
                return;
            }
    }

    // The cautions stand together at the top, the clocks at the foot.
    private static void Draw(Sheet sheet, int top, int rows, List<LargeBlock> bands, List<LargeBlock> blocks, LargeBlock foot, int gap)
    {
        int y = top, end = top + rows - foot.Rows;
        foreach (LargeBlock band in bands)
        {
            band.Draw(y);
            y += band.Rows;
        }
        if (bands.Count > 0) y += gap;
        foreach (LargeBlock block in blocks.TakeWhile(b => y < end))
        {
            block.Draw(y);
            y += block.Rows + gap;
        }
        // Where not even plain text fits, the clocks keep their rows.
        for (int r = end; r < sheet.Height; r++) sheet.Write(0, r, new string(' ', sheet.Width));
        foot.Draw(end);
    }

    private static List<LargeBlock> Bands(Sheet sheet, LargeWords words, int rows)
    {
        List<LargeBlock> against = [.. words.Before.Select(b => LargeBlock.Band(sheet, b, Margin))];
        List<LargeBlock> cautions = [.. words.Cautions.Select(c => LargeBlock.Band(sheet, Cautions.Sentence(c), Margin))];
        bool crowded = cautions.Sum(b => b.Rows) + against.Sum(b => b.Rows) > rows / 3;
        return [.. crowded && cautions.Count > 1 ? [LargeBlock.ShortBand(sheet, words.Cautions, Margin)] : cautions, .. against];
    }

    private static List<LargeBlock>? Blocks(Sheet sheet, LargeWords words, Arrangement at, int leading)
    {
        List<LargeBlock?> blocks = [];
        if (at.LargeCaution)
        {
            if (words.Cautions.Count == 0) return null;
            blocks.Add(LargeBlock.Letters(sheet, $"▲ {string.Join(", ", words.Cautions.Select(Cautions.Short))}", Large, leading, Ink.Caution, Margin));
        }
        blocks.Add(at.Act is { } act ? LargeBlock.Letters(sheet, words.Act, act, leading, Ink.Strong, Margin) : LargeBlock.Plain(sheet, words.Act, Ink.Title, Margin));
        if (words.Asked.Length > 0) blocks.Add(Text(sheet, words.Asked, at.Asked, leading, Ink.Strong));
        if (words.Choices.Count > 0)
            blocks.Add(at.Asked is { } size ? LargeBlock.LetterChoices(sheet, words.Choices, size, leading, Margin) : LargeBlock.PlainChoices(sheet, words.Choices, Margin));
        // Beside a question, what going on does is small: it is at hand with the key.
        if (words.Going.Length > 0) blocks.Add(Text(sheet, words.Going, words.Asked.Length > 0 ? null : at.Asked, leading, Ink.Strong));
        return blocks.Contains(null) ? null : [.. blocks.OfType<LargeBlock>()];
    }

    private static LargeBlock? Text(Sheet sheet, string text, LetterSize? size, int leading, Ink ink) =>
        size is { } large ? LargeBlock.Letters(sheet, text, large, leading, ink, Margin) : LargeBlock.Plain(sheet, text, ink, Margin);
}
