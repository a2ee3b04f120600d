using System.Globalization;
using ServiceRunner.Core.Jobs;

namespace ServiceRunner.Files.Sentences;

/// <summary>What stands on the sheet of a part to be made.</summary>
public static class SheetWords
{
    /// <summary>A size with its unit; where there is none, that it is missing or cannot be reckoned.</summary>
    public static string Size(MakingLine line) => line switch
    {
        { Size: { } size } => string.Create(CultureInfo.InvariantCulture, $"{size} {line.Unit}"),
        { Lacks: SheetLack.Figures } => "missing",
        _ => "not reckoned",
    };

    /// <summary>The figures that it came from, or why it did not.</summary>
    public static string Came(MakingLine line) => line.Lacks switch
    {
        SheetLack.Figures => $"not measured yet: {string.Join(" and ", line.Missing)}{Known(line)}",
        SheetLack.OneUnit => $"{Figures(line)}: two units, and nothing is converted",
        SheetLack.Sense => $"{Figures(line)}: nothing would be left, so that one of them cannot be right",
        _ => Figures(line),
    };

    /// <summary>Where the old part is.</summary>
    public static string Old(MakingSheet sheet) => sheet.Old switch
    {
        null => "not taken out yet",
        PartPlace.Replaced => "replaced; the old one is kept for the owner",
        PartPlace.Lost => "lost; what was not measured of it cannot be measured any more",
        var place => JobWords.Of(place),
    };

    /// <summary>How much of the sheet is known.</summary>
    public static string State(MakingSheet sheet)
    {
        int open = sheet.Lines.Count(l => l.Size is null);
        return open == 0
            ? "Every size follows from what was measured in this job."
            : $"{open} of {Times.Count(sheet.Lines.Count, "size")} {(open == 1 ? "is" : "are")} still open; nothing on this sheet is guessed.";
    }

    private static string Known(MakingLine line) =>
        new[] { line.From, line.Less }.Where(f => f is { Measured: not null }).Select(f => $"; {Figure(f!)} is there").FirstOrDefault() ?? "";

    private static string Figures(MakingLine line) => line.Less is { } less ? $"{Figure(line.From)} less {Figure(less)}" : Figure(line.From);

    private static string Figure(MakingFigure figure) => $"{figure.What} {figure.Measured!.Value} {figure.Measured.Unit}";
}
