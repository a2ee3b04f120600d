using System.Globalization;
using ServiceRunner.Core.Quantities;
using ServiceRunner.Screens.Large;
using ServiceRunner.Tests.Shared;

namespace ServiceRunner.Tests.Screens.Large;

/// <summary>The figures of docs/large-view.md are computed, not typed.</summary>
public class LargeViewDocTests
{
    private static readonly string Page = File.ReadAllText(Path.Combine(Repository.Root, "docs", "large-view.md"));

    private static string Figure(double figure, int places) => figure.ToString($"F{places}", CultureInfo.InvariantCulture);

    [Theory]
    [InlineData(0.7)]
    [InlineData(1.5)]
    [InlineData(2)]
    [InlineData(3)]
    public void Heights_and_rows(double metres)
    {
        string name = string.Create(CultureInfo.InvariantCulture, $"| {metres} m | ");
        double least = Legibility.CapHeightMillimetres(metres, Legibility.LeastArcMinutes), preferred = Legibility.CapHeightMillimetres(metres, Legibility.PreferredArcMinutes);
        Assert.Contains(name + string.Join(" | ", Figure(least, 2), Figure(preferred, 2), Figure(Legibility.CapHeightMillimetres(metres, Legibility.AmplePreferredArcMinutes), 2), Figure(Legibility.ThumbMillimetres(metres), 1)) + " |\n", Page, StringComparison.Ordinal);
        double single = LargeLetters.CapitalRows(LetterSize.Single), twice = LargeLetters.CapitalRows(LetterSize.Double);
        Assert.Contains(name + string.Join(" | ", new[] { least / single, preferred / single, least / twice, preferred / twice }.Select(f => Figure(f, 2))) + " |\n", Page, StringComparison.Ordinal);
    }

    [Fact]
    public void The_rows_of_a_capital_are_those_that_are_drawn()
    {
        foreach (LetterSize size in Enum.GetValues<LetterSize>())
        {
            // An H has ink from its first row to the last half of its last one.
            double rows = LargeLetters.RowsOf("H", size).Sum(r => r.Contains('█', StringComparison.Ordinal) || (r.Contains('▀', StringComparison.Ordinal) && r.Contains('▄', StringComparison.Ordinal)) ? 1 : r.Trim().Length > 0 ? 0.5 : 0);
            Assert.Equal(LargeLetters.CapitalRows(size), rows);
            Assert.Contains($"{(size == LetterSize.Single ? "single" : "double")} | {rows.ToString(CultureInfo.InvariantCulture)} |", Page, StringComparison.Ordinal);
        }
        Assert.Contains($"| big figures of the clocks | {ServiceRunner.Screens.BigFigures.Rows} |", Page, StringComparison.Ordinal);
    }

    [Fact]
    public void The_example()
    {
        double[] heights = [300.0 / 40 * LargeLetters.CapitalRows(LetterSize.Single), 300.0 / 60 * LargeLetters.CapitalRows(LetterSize.Single)];
        Assert.Contains($"then {Figure(Math.Round(heights[0]), 0)} mm high, which is {Figure(Legibility.ArcMinutes(2, heights[0]), 0)}′", Page, StringComparison.Ordinal);
        Assert.Contains($"they are {Figure(heights[1], 1)} mm high, {Figure(Legibility.ArcMinutes(2, heights[1]), 0)}′", Page, StringComparison.Ordinal);
    }

    [Fact]
    public void The_smallest_sheet() => Assert.Contains($"Below {LargePage.LeastWidth} columns or {LargePage.LeastHeight} rows", Page, StringComparison.Ordinal);
}
